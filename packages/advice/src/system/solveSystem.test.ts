import { readFileSync } from "node:fs";
import { demoCatalogue } from "@tidewright/catalogue";
import { type Design, readDesign } from "@tidewright/design";
import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";

const text = readFileSync(new URL("../../../../examples/first-tank-110.json", import.meta.url), "utf8");

/** The first tank with one drain pipe so long that its drain is at its limit: the box lifts the display, the display slows the pump. */
function longDrain(millimetres: number): Design {
  const draft = JSON.parse(text);
  draft.drains[0].run[2].length = { value: millimetres, unit: "mm" };
  const reading = readDesign(JSON.stringify(draft), demoCatalogue);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.design;
}

describe("solveSystem", () => {
  it("settles where a drain at its limit lifts the display and slows the pump", () => {
    let before = 0;
    for (let length = 4000; length <= 6000; length += 50) {
      const state = assess(longDrain(length), demoCatalogue, { curves: false });
      expect(state.solve.converged, `${length} mm`).toBe(true);
      // Continuity: what goes over the weir comes down the drain, unless the box runs over.
      const down = state.drains.reduce((sum, drain) => sum + drain.flow, 0);
      if (state.overflow.boxFreeboard > 1e-6) expect(down / state.overflow.flow).toBeCloseTo(1, 7);
      // A longer drain never stands lower.
      expect(state.overflow.boxLevel).toBeGreaterThanOrEqual(before - 1e-7);
      before = state.overflow.boxLevel;
    }
  });
});
