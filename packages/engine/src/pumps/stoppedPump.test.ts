import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { greatestPowerPoint, pumpCurve, pumpHead, standingPumpHead, stoppedPumpCoefficient } from "./index.ts";

/** Suter's WH of the pump of specific speed 25 at angles pi + atan(v/a) = 0, pi/44, ... pi/2, backward speed and flow, and the start
 *  of its torque WB: published, Wylie and Streeter 1993 as reprinted in the model library ThermoSysPro (EDF). */
const headCurve = [
  0.634, 0.643, 0.646, 0.64, 0.629, 0.613, 0.595, 0.575, 0.552, 0.533, 0.516, 0.505, 0.504, 0.51, 0.512, 0.522, 0.539,
  0.559, 0.58, 0.601, 0.63, 0.662, 0.692,
];
const torqueCurve = [-0.684, -0.547, -0.414, -0.292, -0.187, -0.105, -0.053, -0.012, 0.042];

describe("a standing pump", () => {
  it("resists by Suter's curve at no speed", () => {
    // Published: quarter turn of the curve.
    expect(standingPumpHead).toBe(headCurve[22]);
    const curve = pumpCurve([
      { flow: 0, head: 3 },
      { flow: 0.002, head: 0 },
    ]);
    // Analytic: greatest Q (3 - 3 (Q/0.002)^2) lies at Q = 0.002/sqrt 3, H = 2.
    expect(stoppedPumpCoefficient(curve) / ((0.692 * 2) / (0.002 ** 2 / 3))).toBeCloseTo(1, 7);
  });

  it("lets more water back than one whose wheel runs backwards freely", () => {
    // Published: no torque between the 8th and 9th angle; head there with a^2 + v^2 = 1 turned into head at v = 1.
    const share = 0.012 / (0.012 + 0.042);
    expect(torqueCurve[7]).toBe(-0.012);
    const angle = ((7 + share) * Math.PI) / 44;
    const free = (headCurve[7] + share * (headCurve[8] - headCurve[7])) / Math.sin(angle) ** 2;
    expect(free).toBeCloseTo(2.3, 1);
    expect(standingPumpHead).toBeLessThan(free);
  });

  it("has its greatest power where the power law says", () => {
    // Analytic: Q^c = H0/((c + 1) k), H = H0 c/(c + 1).
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 20, noNaN: true }),
        fc.double({ min: 1e-4, max: 0.01, noNaN: true }),
        fc.double({ min: 0.8, max: 4, noNaN: true }),
        (shutoff, last, exponent) => {
          const design = { flow: last / 2, head: shutoff * (1 - 0.5 ** exponent) };
          const curve = pumpCurve([{ flow: 0, head: shutoff }, design, { flow: last, head: 0 }]);
          const { flow, head } = greatestPowerPoint(curve);
          expect(flow / (last * (1 / (exponent + 1)) ** (1 / exponent))).toBeCloseTo(1, 6);
          expect(head / ((shutoff * exponent) / (exponent + 1))).toBeCloseTo(1, 6);
        },
      ),
    );
  });

  it("takes the last point where the chart ends before the greatest power, and the best of an uneven table", () => {
    const short = pumpCurve([
      { flow: 0, head: 10 },
      { flow: 0.001, head: 9 },
    ]);
    expect(greatestPowerPoint(short).flow).toBeCloseTo(0.001, 12);
    const points = [
      { flow: 0, head: 4 },
      { flow: 0.0005, head: 3.9 },
      { flow: 0.001, head: 3 },
      { flow: 0.0015, head: 1.2 },
      { flow: 0.002, head: 0 },
    ];
    const curve = pumpCurve(points);
    const best = greatestPowerPoint(curve);
    for (let flow = 0; flow <= 0.002; flow += 1e-5) {
      expect(best.flow * best.head).toBeGreaterThanOrEqual(flow * pumpHead(curve, flow) * (1 - 1e-12));
    }
  });
});
