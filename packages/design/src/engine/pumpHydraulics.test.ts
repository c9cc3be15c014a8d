import { demoCatalogue, findPump, type PumpRow } from "@tidewright/catalogue";
import { electricalPower, pumpAtSpeed, pumpHeadAtSpeed } from "@tidewright/engine";
import { describe, expect, it } from "vitest";
import { pumpHydraulics } from "./pumpHydraulics.ts";

const litrePerHour = 1 / 3.6e6;

function row(id: string): PumpRow {
  const found = findPump(demoCatalogue, id);
  if (!found) throw new Error(`no pump ${id}`);
  return found;
}

describe("a catalogue pump's curves", () => {
  it("of two points are the parabola through both", () => {
    // Analytic: 1.2 m at rest, 0 m at 800 L/h; at 400 L/h 1.2 (1 - 1/4).
    const set = pumpAtSpeed(pumpHydraulics(row("brayne-k8")).head, 1);
    expect(pumpHeadAtSpeed(set, 400 * litrePerHour)).toBeCloseTo(0.9, 9);
  });

  it("go through every point that is printed, at every speed that is printed", () => {
    const pump = row("ferrow-c40");
    expect(pump.curves.map((curve) => curve.speedRatio)).toEqual([1, 0.8, 0.6, 0.4]);
    for (const curve of pump.curves) {
      const set = pumpAtSpeed(pumpHydraulics(pump).head, curve.speedRatio);
      for (const point of curve.points) expect(pumpHeadAtSpeed(set, point.flow)).toBeCloseTo(point.head, 9);
    }
    // As printed in the demonstration table: 1720 L/h at 3.12 m, full speed; 1820 L/h at 1.63 m, 0.8.
    expect(pumpHeadAtSpeed(pumpAtSpeed(pumpHydraulics(pump).head, 1), 1720 * litrePerHour)).toBeCloseTo(3.12, 9);
    expect(pumpHeadAtSpeed(pumpAtSpeed(pumpHydraulics(pump).head, 0.8), 1820 * litrePerHour)).toBeCloseTo(1.63, 9);
  });

  it("follow the affinity laws where only full speed is printed", () => {
    // ISO 9906:2012: Q ~ n, H ~ n2. Printed: 1720 L/h at 3.12 m; half of that flow at a quarter of that head.
    const pump = { ...row("ferrow-c40"), curves: row("ferrow-c40").curves.slice(0, 1) };
    const half = pumpAtSpeed(pumpHydraulics(pump).head, 0.5);
    expect(pumpHeadAtSpeed(half, 860 * litrePerHour)).toBeCloseTo(3.12 / 4, 9);
  });

  it("draw the printed power at the printed points", () => {
    const { power } = pumpHydraulics(row("ferrow-c40"));
    expect(electricalPower(power, 1, 2660 * litrePerHour)).toBeCloseTo(49, 9);
    expect(electricalPower(power, 0.6, 800 * litrePerHour)).toBeCloseTo(10, 9);
  });

  it("draw the rating, falling with the cube of speed, where no power is printed", () => {
    // Printed: 7 W; affinity P ~ n3.
    const { power } = pumpHydraulics(row("brayne-k8"));
    expect(electricalPower(power, 1, 300 * litrePerHour)).toBeCloseTo(7, 12);
    expect(electricalPower(power, 0.5, 300 * litrePerHour)).toBeCloseTo(7 / 8, 12);
  });

  it("are worked out once for a row", () => {
    const pump = row("brayne-k8");
    expect(pumpHydraulics(pump)).toBe(pumpHydraulics(pump));
    expect(pumpHydraulics({ ...pump })).not.toBe(pumpHydraulics(pump));
  });

  it("refuse points that make no curve", () => {
    const pump = row("brayne-k8");
    const rising = { ...pump, curves: [{ speedRatio: 1, points: [...(pump.curves[0]?.points ?? [])].reverse() }] };
    expect(() => pumpHydraulics(rising)).toThrow(RangeError);
  });
});
