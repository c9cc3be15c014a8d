import { demoCatalogue } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import { rank } from "../rank.ts";
import { example } from "../testing/examples.ts";

/** The reef of the waiting room with its crest so high above the display's floor and its pump so fast. Its drains open at 430 and 515 mm: a
 *  crest below them is drowned by the box, even where no water runs. */
function withCrest(crest: number, speed: number): Design {
  const design = example("waiting-room-reef.json");
  const pump = design.loops[0]?.pumps[0];
  if (!("weir" in design.overflow) || !pump) throw new Error("the example has a weir and a pump");
  const { weir } = design.overflow;
  Object.assign(weir, { crest: { value: crest, unit: "mm" } });
  Object.assign(pump, { speed });
  return design;
}

const catalogue = { ...demoCatalogue, pumps: demoCatalogue.pumps.filter((_, i) => i % 4 === 0) };

describe("ranking where the box drowns the weir", () => {
  it("answers for every pump, with points and reasons in numbers", () => {
    const crest = fc.integer({ min: 30, max: 568 });
    const speed = fc.integer({ min: 60, max: 100 });
    fc.assert(
      fc.property(crest, speed, (height, percent) => {
        const design = withCrest(height, percent / 100);
        const { candidates, rejections, considered, aim } = rank(design, catalogue);
        expect(Number.isFinite(aim)).toBe(true);
        expect(candidates.length + rejections.length).toBe(considered);
        for (const { flow, head, flowToDisplay, score } of candidates)
          expect([flow, head, flowToDisplay, score].every(Number.isFinite)).toBe(true);
        for (const { causes } of rejections) {
          expect(causes.length).toBeGreaterThan(0);
          for (const { value = 0, limit = 0 } of causes) expect(Number.isNaN(value) || Number.isNaN(limit)).toBe(false);
        }
      }),
      {
        numRuns: 16,
        examples: [
          [418, 75],
          [341, 100],
          [57, 100],
          [341, 75],
          [170, 70],
          [57, 70],
        ],
      },
    );
  });

  it("gives the flows and heads that an assessment finds with that pump in it", () => {
    for (const crest of [454, 341, 57]) {
      const design = withCrest(crest, 1);
      const { candidates } = rank(design, catalogue, { pairs: false });
      expect(candidates.length).toBeGreaterThan(0);
      for (const candidate of candidates.slice(0, 3)) {
        const loop = design.loops[0];
        const pump = loop?.pumps[0];
        if (!loop || !pump) throw new Error("the example has a pump");
        loop.pumps = [{ ...pump, ref: candidate.pumpIds[0] ?? "", speed: candidate.speed }];
        const again = assess(design, demoCatalogue, { curves: false }).loops[0];
        expect(Math.abs((again?.flow ?? 0) / candidate.flow - 1)).toBeLessThan(1e-8);
      }
    }
  });
});
