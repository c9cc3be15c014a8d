import { demoCatalogue } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import { describe, expect, it } from "vitest";
import { assess } from "./assess.ts";
import { rank } from "./rank.ts";
import { example } from "./testing/examples.ts";

function demo(horizon: { value: number; unit: string } | undefined): Design {
  const design = example("waiting-room-reef.json");
  if (horizon) design.wishes.horizon = horizon;
  else delete design.wishes.horizon;
  return design;
}

describe("cost over the years", () => {
  // Analytic: a year has 365 days in every place, so n years cost n times one.
  it.each([
    [{ value: 5, unit: "a" }, 5],
    [{ value: 3, unit: "a" }, 3],
    [{ value: 1825, unit: "d" }, 5],
    [undefined, 5],
  ])("over %j is the purchase and %d times the yearly bill", (horizon, years) => {
    const design = demo(horizon);
    const { cost, power } = assess(design, demoCatalogue, { curves: false });
    expect(cost.total).toBeCloseTo(cost.purchase + years * power.annualCost, 9);
    const best = rank(design, demoCatalogue, { pairs: false }).candidates[0];
    if (!best) throw new Error("no candidate");
    expect(best.horizonCost).toBeCloseTo(best.price + years * best.annualCost, 9);
  });

  describe("with prices in euros and electricity in dollars", () => {
    const design = demo(undefined);
    design.power.tariff = { value: 0.17, unit: "USD/kWh" };

    it("is added nowhere: what is bought and what it costs to run stay apart", () => {
      const { cost, power } = assess(design, demoCatalogue, { curves: false });
      expect([cost.currency, power.tariffCurrency]).toEqual(["EUR", "USD"]);
      expect(cost).not.toHaveProperty("total");
      const ranking = rank(design, demoCatalogue);
      expect(ranking.currencies).toEqual({ prices: "EUR", running: "USD" });
      for (const candidate of ranking.candidates) {
        expect(candidate).not.toHaveProperty("horizonCost");
        expect(candidate.reasons.map(({ code }) => code)).not.toContain("lowest-cost-over-horizon");
      }
    });

    it("leaves the order to the prices: what the dollars come to moves nothing", () => {
      const order = () => rank(design, demoCatalogue).candidates.map(({ label }) => label);
      const before = order();
      design.power.tariff = { value: 17, unit: "USD/kWh" };
      expect(order()).toEqual(before);
    });
  });

  it("takes a tariff by the megawatt hour for what it is", () => {
    const design = demo(undefined);
    const year = () => assess(design, demoCatalogue, { curves: false }).power.annualCost;
    design.power.tariff = { value: 0.31, unit: "EUR/kWh" };
    const before = year();
    design.power.tariff = { value: 310, unit: "EUR/MWh" };
    expect(year()).toBeCloseTo(before, 9);
    expect(rank(design, demoCatalogue).candidates[0]?.annualCost).toBeLessThan(before);
  });
});
