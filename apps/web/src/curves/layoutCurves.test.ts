import { readFileSync } from "node:fs";
import { assess } from "@tidewright/advice";
import { demoCatalogue } from "@tidewright/catalogue";
import { readDesign } from "@tidewright/design";
import { describe, expect, it } from "vitest";
import { layoutCurves } from "./layoutCurves.ts";

const jobs = ["waiting-room-reef", "school-corridor-soft", "hotel-lobby", "first-tank-110"];
const plain = (si: number) => si.toPrecision(3);

describe.each(jobs)("the curve picture of %s", (job) => {
  const reading = readDesign(readFileSync(new URL(`../../../../examples/${job}.json`, import.meta.url), "utf8"));
  if (!reading.ok) throw new Error("the demo job does not read");
  const state = assess(reading.design, demoCatalogue);
  const pictures = state.loops.map((loop, i) => {
    const pumps = state.pumps.filter((pump) => pump.loop === i);
    const parallel = pumps.length > 1;
    return {
      loop,
      layout: layoutCurves({ loop, pumps, wish: state.turnover.returnFlowWish, parallel }, plain, 420, 260),
    };
  });

  it("draws no number that is not one", () => {
    for (const { layout } of pictures) expect(JSON.stringify(layout)).not.toMatch(/NaN|null|Infinity/);
  });

  // Analytic: the operating point is where both curves meet.
  it("puts the operating point on the pump curve and on the system curve", () => {
    for (const { loop, layout } of pictures) {
      const read = layout.readAt(layout.xOf(loop.flow));
      expect(read.flow).toBeCloseTo(loop.flow, 9);
      expect(Math.abs((read.system ?? 0) - loop.totalHead)).toBeLessThan(0.02 * loop.totalHead);
      expect(Math.abs((read.pump ?? 0) - loop.totalHead)).toBeLessThan(0.02 * loop.totalHead);
    }
  });
});
