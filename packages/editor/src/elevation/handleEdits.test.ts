import { describe, expect, it } from "vitest";
import { editsFor, nudgeOf } from "./handleEdits.ts";
import type { LineHandle } from "./scene.ts";
import { angleShare, shareAngle } from "./speedArc.ts";

const handle = (over: Partial<LineHandle>): LineHandle => ({
  part: "/overflow/weir",
  label: "weir crest",
  axis: "y",
  at: { x: 0, y: 0 },
  targets: [{ path: "/overflow/weir/crest", unit: "mm", value: 568, sign: 1 }],
  min: 0.01,
  max: 0.6,
  ...over,
});

describe("edits of a drag", () => {
  it("raise the weir crest by what the pointer rises, in whole millimetres", () => {
    expect(editsFor(handle({}), 0.0123)).toEqual([
      { op: "set", path: "/overflow/weir/crest", value: { value: 580, unit: "mm" } },
    ]);
  });

  it("stay in the unit that was typed", () => {
    const inches = handle({ targets: [{ path: "/display/standHeight", unit: "in", value: 36, sign: 1 }], max: 10 });
    // 1 in is 25.4 mm exactly (international yard and pound agreement, 1959); steps are 1/8 in.
    expect(editsFor(inches, 0.0254)).toEqual([
      { op: "set", path: "/display/standHeight", value: { value: 37, unit: "in" } },
    ]);
    expect(editsFor(inches, 0.0032)[0]!.value).toEqual({ value: 36.125, unit: "in" });
  });

  it("stop at the rim and at the floor", () => {
    expect(editsFor(handle({}), 9)[0]!.value).toEqual({ value: 600, unit: "mm" });
    expect(editsFor(handle({}), -9)[0]!.value).toEqual({ value: 10, unit: "mm" });
  });

  it("lengthen a falling pipe downward and let its rise fall by as much", () => {
    const fall = handle({
      targets: [
        { path: "/drains/0/run/0/length", unit: "mm", value: 430, sign: -1 },
        { path: "/drains/0/run/0/rise", unit: "cm", value: -40, sign: 1 },
      ],
      max: 50,
    });
    expect(editsFor(fall, -0.02)).toEqual([
      { op: "set", path: "/drains/0/run/0/length", value: { value: 450, unit: "mm" } },
      { op: "set", path: "/drains/0/run/0/rise", value: { value: -42, unit: "cm" } },
    ]);
  });

  it("set a pump's speed as a bare share in whole per cent", () => {
    const speed = handle({
      axis: "arc",
      targets: [{ path: "/loops/0/pumps/0/speed", value: 0.8, sign: 1 }],
      min: 0.1,
      max: 1,
    });
    expect(editsFor(speed, -0.123)).toEqual([{ op: "set", path: "/loops/0/pumps/0/speed", value: 0.68 }]);
    expect(editsFor(speed, nudgeOf(speed, true))[0]!.value).toBe(0.9);
  });

  it("find on the arc the share that was drawn there", () => {
    for (const share of [0, 0.1, 0.5, 0.77, 1]) {
      const angle = shareAngle(share);
      expect(angleShare(Math.cos(angle), Math.sin(angle))).toBeCloseTo(share, 9);
    }
    expect(angleShare(0.1, -1)).toBe(1);
    expect(angleShare(-0.1, -1)).toBe(0);
  });
});
