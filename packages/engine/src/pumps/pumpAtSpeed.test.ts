import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parallelFlow, seriesHead } from "./combinedPumps.ts";
import { lastFlowAtSpeed, pumpAtSpeed, pumpHeadAtSpeed, pumpHeadSlopeAtSpeed } from "./pumpAtSpeed.ts";
import { pumpCurve, pumpHead } from "./pumpCurve.ts";
import { electricalPower, powerCurve } from "./pumpPower.ts";

/** H = 4 - 1e6 Q^2 [m, m3/s]. */
const parabola = pumpCurve([
  { flow: 0, head: 4 },
  { flow: 0.002, head: 0 },
]);
const single = [{ speedRatio: 1, curve: parabola }];

/** Curves of three speeds that do not follow affinity. */
const measured = [
  { speedRatio: 1, curve: parabola },
  { speedRatio: 0.4, curve: pumpCurve([0, 1, 2, 3].map((q) => ({ flow: q * 2e-4, head: 0.5 - 0.04 * q * q }))) },
  { speedRatio: 0.7, curve: pumpCurve([0, 1, 2, 3, 4].map((q) => ({ flow: q * 3e-4, head: 1.8 - 0.1 * q * q }))) },
];

describe("a pump at a speed", () => {
  // ISO 9906:2012, 6.1.2; analytic on the parabola.
  it("follows affinity from one curve: flow with speed, head with its square", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 1.2, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (n, share) => {
          const pump = pumpAtSpeed(single, n);
          const flow = share * 0.002 * n;
          expect(pumpHeadAtSpeed(pump, flow)).toBeCloseTo(4 * n * n - 1e6 * flow * flow, 9);
          expect(pumpHeadSlopeAtSpeed(pump, flow)).toBeCloseTo(-2e6 * flow, 6);
          expect(lastFlowAtSpeed(pump)).toBeCloseTo(0.002 * n, 12);
        },
      ),
    );
  });

  it("gives each of the maker's speeds back exactly", () => {
    for (const { speedRatio, curve } of measured)
      for (let i = 0; i <= 10; i++) {
        const flow = (i / 10) * curve.lastFlow;
        expect(pumpHeadAtSpeed(pumpAtSpeed(measured, speedRatio), flow)).toBeCloseTo(pumpHead(curve, flow), 12);
      }
  });

  it("lies between the two neighbouring speeds, at equal flow coefficient", () => {
    const n = 0.85;
    const phi = 0.001;
    const upper = pumpHeadAtSpeed(pumpAtSpeed(measured, 1), phi);
    const lower = pumpHeadAtSpeed(pumpAtSpeed(measured, 0.7), 0.7 * phi) / 0.49;
    expect(pumpHeadAtSpeed(pumpAtSpeed(measured, n), n * phi) / n ** 2).toBeCloseTo((upper + lower) / 2, 12);
  });

  it("gives no head when it stands still, and refuses a negative speed", () => {
    expect(pumpHeadAtSpeed(pumpAtSpeed(single, 0), 0.001)).toBe(0);
    expect(() => pumpAtSpeed(single, -0.1)).toThrow(/zero or more/);
    expect(() => pumpAtSpeed([], 1)).toThrow(/at least one curve/);
  });
});

describe("pumps together", () => {
  const full = pumpAtSpeed(single, 1);
  const slow = pumpAtSpeed(single, 0.7);

  // Analytic: two of H = 4 - 1e6 Q^2 are H = 4 - 2.5e5 Q^2 side by side, 8 - 2e6 Q^2 one behind the other.
  it("add their flows in parallel and their heads in series", () => {
    for (const head of [0.5, 1, 2, 3, 3.9])
      expect(parallelFlow([full, full], head)).toBeCloseTo(Math.sqrt((4 - head) / 2.5e5), 12);
    for (const flow of [0, 0.0005, 0.001, 0.0019])
      expect(seriesHead([full, full], flow)).toBeCloseTo(8 - 2e6 * flow * flow, 9);
  });

  it("leave the weaker one shut above its shut-off head", () => {
    expect(parallelFlow([full, slow], 3)).toBeCloseTo(0.001, 12);
    expect(parallelFlow([full, slow], 5)).toBe(0);
  });
});

describe("a pump's power", () => {
  // ISO 9906:2012, 6.1.2: P ~ n^3; analytic.
  it("falls with the cube of speed", () => {
    const curve = [
      powerCurve(
        [0, 1, 2].map((q) => ({ flow: q / 1000, power: 20 + 10 * q })),
        40,
        1,
      ),
    ];
    expect(electricalPower(curve, 0.5, 0.0005)).toBeCloseTo(30 / 8, 12);
    expect(electricalPower(curve, 1, 0.005)).toBeCloseTo(40, 12);
    expect(electricalPower(curve, 0, 0)).toBe(0);
  });
});
