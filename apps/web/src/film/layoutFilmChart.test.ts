import type { WhatIf } from "@tidewright/advice";
import { describe, expect, it } from "vitest";
import { layoutFilmChart } from "./layoutFilmChart.ts";
import { evenScale } from "./timeScale.ts";

const result = {
  film: {
    times: [0, 50, 100],
    levels: [
      [0.4, 0.52, 0.41],
      [0.1, 0.1, 0.2],
      [0.3, 0.3, 0.3],
    ],
  },
  vessels: [
    { place: "display", rim: 0.5, start: 0.4, lowest: 0.4, highest: 0.52, highestAt: 50 },
    { place: "sump.return", rim: 0.4, start: 0.1, lowest: 0.1, highest: 0.2, highestAt: 100 },
    { place: "topOff", start: 0.3, lowest: 0.3, highest: 0.3, highestAt: 0 },
  ],
  events: [
    { t: 10, code: "action" },
    { t: 10.1, code: "rim/over" },
    { t: 90, code: "drain/stops" },
  ],
} as unknown as WhatIf;

// Expected values are analytic: straight scales.
describe("the chart under a film", () => {
  const scene = layoutFilmChart({ result, scale: evenScale(100), width: 1000 });

  it("draws a level over its rim above the rim's line, and says which part of it is over", () => {
    const [display, sump] = scene.bands;
    expect(display?.highest.y).toBeLessThan(display?.rim ?? 0);
    expect(display?.over).not.toBe("");
    expect(sump?.highest.y).toBeGreaterThan(sump?.rim ?? 0);
    expect(sump?.over).toBe("");
  });

  it("keeps true proportion between rim, level and foot of a band", () => {
    const { yOf } = scene.bands[1]!;
    expect((yOf(0.1) - yOf(0.2)) / (yOf(0.2) - yOf(0.4))).toBeCloseTo(0.5, 9);
  });

  it("leaves out a reservoir that never moves", () => {
    expect(scene.bands.map(({ name }) => name)).toEqual(["Display", "Sump, return"]);
  });

  it("gathers events that would stand on each other, as bad as the worst of them", () => {
    expect(scene.events).toHaveLength(2);
    expect(scene.events[0]).toMatchObject({ bad: true, count: 2 });
    expect(scene.events[1]).toMatchObject({ bad: false, count: 1 });
  });

  it("finds the moment under a pointer again, also beside the bar", () => {
    for (const t of [0, 12.5, 99]) expect(scene.timeAt(scene.xOf(t))).toBeCloseTo(t, 9);
    expect(scene.timeAt(-50)).toBe(0);
    expect(scene.timeAt(5000)).toBe(100);
  });
});
