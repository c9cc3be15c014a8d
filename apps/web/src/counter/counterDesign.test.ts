import { assess } from "@tidewright/advice";
import { demoCatalogue } from "@tidewright/catalogue";
import { animalGroups, checkDesign } from "@tidewright/design";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type CounterAnswers, counterDesign } from "./counterDesign.ts";

const start: CounterAnswers = {
  name: "Walk-in",
  length: { value: 1200, unit: "mm" },
  width: { value: 500, unit: "mm" },
  height: { value: 550, unit: "mm" },
  standHeight: { value: 800, unit: "mm" },
  drainSeries: "pn16-32",
  drains: "three",
  animals: "mixedReef",
  mains: "230 V, 50 Hz",
  tariff: { value: 0.31, unit: "EUR/kWh" },
};

const answers = fc.record({
  name: fc.constant("Walk-in"),
  length: fc.integer({ min: 400, max: 3000 }).map((value) => ({ value, unit: "mm" })),
  width: fc.integer({ min: 250, max: 1200 }).map((value) => ({ value, unit: "mm" })),
  height: fc.integer({ min: 250, max: 1000 }).map((value) => ({ value, unit: "mm" })),
  standHeight: fc.integer({ min: 500, max: 1200 }).map((value) => ({ value, unit: "mm" })),
  drainSeries: fc.constantFrom("pn16-25", "pn16-32", "pn16-40", "sch40-1", "sch40-1.5", "pn10-110", "hose-32"),
  drains: fc.constantFrom("one" as const, "three" as const),
  animals: fc.constantFrom(...animalGroups),
  mains: fc.constantFrom("230 V, 50 Hz" as const, "120 V, 60 Hz" as const),
  tariff: fc.constant({ value: 0.31, unit: "EUR/kWh" }),
});

describe("a design begun at the counter", () => {
  it("is sound for every tank a shop sells, and solves to finite numbers", () => {
    fc.assert(
      fc.property(answers, (said) => {
        const design = counterDesign(said);
        const reading = checkDesign(design, demoCatalogue);
        expect(reading.ok ? [] : reading.problems).toEqual([]);
        const { overflow, sump } = assess(design, demoCatalogue);
        for (const number of [overflow.displayLevel, overflow.boxLevel, sump.margin, sump.powerCutLevel])
          expect(Number.isFinite(number)).toBe(true);
      }),
      { numRuns: 200 },
    );
  });

  it("keeps what was said in the unit it was said in, and writes its own lengths in that unit", () => {
    const design = counterDesign({ ...start, length: { value: 4, unit: "ft-in" } });
    expect(design.display.length).toEqual({ value: 4, unit: "ft-in" });
    expect(design.overflow.weir.length.unit).toBe("in");
  });

  it("asks for the turnover that is usual for the animals (common practice, no source: 20 to 30 for branching corals)", () => {
    const design = counterDesign({ ...start, animals: "branchingStony" });
    expect(design.wishes.totalTurnover?.map(({ value }) => value)).toEqual([20, 30]);
  });
});
