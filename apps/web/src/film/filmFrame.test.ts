import type { Film } from "@tidewright/advice";
import { describe, expect, it } from "vitest";
import { readFrame, rowAt, startFrame } from "./filmFrame.ts";

const film: Film = {
  times: [0, 10, 10, 20],
  levels: [
    [1, 2, 2, 4],
    [0.5, 0.5, 0.4, 0.4],
  ],
  weirFlow: [1e-3, 1e-3, 0, 0],
  drainFlow: [[2e-3, 1e-3, 1e-3, 0]],
  drainFill: [[1, 1, 0.5, 0]],
  outletFlow: [[[3e-3, 3e-3, -1e-3, 0]], []],
  lineFill: [[1, 1, 1, 0.2], []],
};

// Expected values are analytic: straight lines between rows.
describe("a film read at a moment", () => {
  const frame = startFrame(film);

  it("lies on the straight line between two rows", () => {
    readFrame(film, 15, frame);
    expect(frame.levels[0]).toBeCloseTo(3, 12);
    expect(frame.drainFill[0]).toBeCloseTo(0.25, 12);
    expect(frame.outletFlow[0]?.[0]).toBeCloseTo(-0.5e-3, 12);
  });

  it("shows how things are after a sudden change at its very moment", () => {
    readFrame(film, 10, frame);
    expect(frame.weirFlow).toBe(0);
    expect(frame.levels[1]).toBe(0.4);
    expect(frame.outletFlow[0]?.[0]).toBe(-1e-3);
  });

  it("shows how things were right before it", () => {
    readFrame(film, 10 - 1e-9, frame);
    expect(frame.weirFlow).toBeCloseTo(1e-3, 9);
    expect(frame.levels[1]).toBeCloseTo(0.5, 9);
  });

  it("stands still before the first and after the last row", () => {
    readFrame(film, -5, frame);
    expect(frame.levels[0]).toBe(1);
    readFrame(film, 99, frame);
    expect(frame.levels[0]).toBe(4);
  });

  it("counts a line that the film leaves out as full", () => {
    readFrame(film, 20, frame);
    expect(frame.lineFill[1]).toBe(1);
  });

  it("finds the row in a long film as a walk through it does", () => {
    const times = Array.from({ length: 500 }, (_, i) => Math.floor(i / 2) * 1.5);
    for (const t of [0, 0.7, 1.5, 100.2, 373.5, 1000]) {
      const walked = times.reduce((last, time, i) => (time <= t ? i : last), 0);
      expect(rowAt(times, t)).toBe(walked);
    }
  });
});
