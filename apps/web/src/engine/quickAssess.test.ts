import { readFileSync } from "node:fs";
import { assess } from "@tidewright/advice";
import { demoCatalogue } from "@tidewright/catalogue";
import { applyEdit, readDesign } from "@tidewright/design";
import { describe, expect, it } from "vitest";
import { quickAllowance, quickAssess, withCurvesOf } from "./quickAssess.ts";

const reading = readDesign(
  readFileSync(new URL("../../../../examples/waiting-room-reef.json", import.meta.url), "utf8"),
  demoCatalogue,
);
if (!reading.ok) throw new Error("the example does not read");
const { design } = reading;
const full = assess(design, demoCatalogue);
const slower = applyEdit(design, { op: "set", path: "/loops/0/pumps/0/speed", value: 0.8 }).design;

/** An assessment that takes a given time by a clock of its own [ms]. */
function clocked(times: readonly number[]) {
  let now = 0;
  let call = 0;
  return quickAssess(
    () => {
      now += times[Math.min(call, times.length - 1)]!;
      call += 1;
      return full;
    },
    () => now,
  );
}

describe("quickAssess", () => {
  it("gives the worker's own numbers, with the curves of before", () => {
    const quick = quickAssess(undefined, () => 0);
    quick.warm(design);
    const answer = quick.ask(slower, full)!.assessment;
    const worker = assess(slower, demoCatalogue);
    expect(answer.overflow).toEqual(worker.overflow);
    expect(answer.findings).toEqual(worker.findings);
    expect(answer.loops[0]!.flow).toBe(worker.loops[0]!.flow);
    expect(answer.loops[0]!.systemCurve).toBe(full.loops[0]!.systemCurve);
  });

  it("answers nothing before it was warmed, and nothing without curves to keep", () => {
    const quick = clocked([1]);
    expect(quick.ask(design, full)).toBeUndefined();
    quick.warm(design);
    expect(quick.ask(design, undefined)).toBeUndefined();
    expect(quick.ask(design, full)).toBeDefined();
  });

  it("leaves the work to the worker once it takes more than its share of a frame, and begins again when told it is quick", () => {
    const quick = clocked([...Array(12).fill(1), ...Array(20).fill(4 * quickAllowance)]);
    quick.warm(design);
    let answers = 0;
    for (let edit = 0; edit < 20; edit += 1) if (quick.ask(design, full)) answers += 1;
    expect(answers).toBeGreaterThan(0);
    expect(answers).toBeLessThan(5);
    quick.hear(4 * quickAllowance);
    expect(quick.ask(design, full)).toBeUndefined();
    quick.hear(quickAllowance / 2);
    expect(quick.ask(design, full)).toBeDefined();
  });

  it("leaves a broken invariant to the worker, which names it", () => {
    const quick = quickAssess(() => {
      throw new Error("broken");
    });
    quick.hear(1);
    expect(quick.ask(design, full)).toBeUndefined();
  });

  it("keeps no curves for other loops", () => {
    const fewer = { ...full, loops: [] };
    expect(withCurvesOf(fewer, full)).toBeUndefined();
  });
});
