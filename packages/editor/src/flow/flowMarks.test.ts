import { readFileSync } from "node:fs";
import type { Design } from "@tidewright/design";
import { describe, expect, it } from "vitest";
import { layoutElevation } from "../elevation/layoutElevation.ts";
import { testAssessment } from "../elevation/testAssessment.ts";
import { type FlowLine, flowLines } from "./flowLines.ts";
import { flowMarks, flowSlowing } from "./flowMarks.ts";

const straight = (velocity: number, backward = false): FlowLine => ({
  path: "/loops/0/run",
  pieces: [
    {
      points: [
        { x: 0, y: 0 },
        { x: 10, y: 0 },
      ],
      length: 10,
      velocity,
      bore: 0.03,
    },
  ],
  backward,
  after: 0,
});

describe("marks on the water", () => {
  it("move on the sheet in proportion to the water's speed", () => {
    for (const velocity of [0.3, 0.6, 1.8]) {
      const before = flowMarks(straight(velocity), 0, 0);
      const after = flowMarks(straight(velocity), 0.1, 0);
      // x = v t, analytic; the first mark after entering may be a new one, so the second is followed.
      const moved = after.map(({ x }) => x).find((x) => x > before[1]!.x - 1e-9)! - before[1]!.x;
      expect(moved).toBeCloseTo((velocity / flowSlowing) * 0.1, 9);
    }
  });

  it("move backward where the water does, and point that way", () => {
    const before = flowMarks(straight(1, true), 0, 0);
    const after = flowMarks(straight(1, true), 0.1, 0);
    const at = before[3]!.x;
    const nearest = after.map(({ x }) => x).sort((a, b) => Math.abs(a - at) - Math.abs(b - at))[0]!;
    expect(nearest - at).toBeCloseTo(-0.1 / flowSlowing, 9);
    expect(Math.cos(after[0]!.angle)).toBeCloseTo(-1, 9);
  });

  it("come closer where the pipe is wider and the water slower", () => {
    const line: FlowLine = {
      ...straight(1),
      pieces: [
        {
          points: [
            { x: 0, y: 0 },
            { x: 2, y: 0 },
          ],
          length: 2,
          velocity: 2,
          bore: 0.02,
        },
        {
          points: [
            { x: 2, y: 0 },
            { x: 4, y: 0 },
          ],
          length: 2,
          velocity: 0.5,
          bore: 0.04,
        },
      ],
    };
    const xs = flowMarks(line, 0.123, 0).map(({ x }) => x);
    const fast = xs.filter((x) => x < 2);
    const slow = xs.filter((x) => x > 2);
    // Continuity: a quarter of the speed, a quarter of the distance, analytic.
    expect((slow[1]! - slow[0]!) / (fast[1]! - fast[0]!)).toBeCloseTo(0.25, 6);
  });

  it("never stand closer than asked, and are the same at the same time", () => {
    const marks = flowMarks(straight(0.02), 3.3, 0.05);
    for (let i = 1; i < marks.length; i += 1) expect(marks[i]!.x - marks[i - 1]!.x).toBeGreaterThanOrEqual(0.05 - 1e-9);
    expect(flowMarks(straight(0.02), 3.3, 0.05)).toEqual(marks);
  });

  it("lie in every wet run of the waiting room and in no dry one", () => {
    const file = new URL("../../../../examples/waiting-room-reef.json", import.meta.url);
    const design: Design = JSON.parse(readFileSync(file, "utf8"));
    const assessment = testAssessment(design);
    const lines = flowLines(layoutElevation(design, assessment), assessment);
    const paths = lines.map(({ path }) => path);
    expect(paths).toContain("/loops/0/run");
    expect(paths).toContain("/loops/0/run/4/branches/0");
    expect(paths).toContain("/drains/0/run");
    expect(paths).not.toContain("/drains/2/run");
    for (const line of lines)
      for (const mark of flowMarks(line, 1.7, 0.02)) expect(Number.isFinite(mark.x + mark.y)).toBe(true);
  });
});
