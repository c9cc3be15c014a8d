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
});
