import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { hangOnSiphonFlow, hangOnSiphonHead, type SiphonTubes, siphonCrestPressure, timeToOverflow } from "./index.ts";

const g = 9.80665;
const water = { kinematicViscosity: 1e-6 };
/** Two smooth tubes of 25 mm and 0.9 m: projecting entrance 0.78, exit 1 (Crane TP-410), two bends of 0.32 together 0.64. */
const tubes: SiphonTubes = {
  count: 2,
  bore: 0.025,
  length: 0.9,
  roughness: 0,
  lossCoefficient: 0.78 + 0.64 + 1,
  laminarLoss: 0,
};

describe("the tubes of a hang-on overflow", () => {
  it("ask for the head that a hand calculation gives", () => {
    // By hand: 1.5 m3/h through two tubes of 4.9087e-4 m2 is V = 0.42441 m/s, V^2/2g = 9.1837 mm, Re = 10610.
    // Published: H. Blasius 1913, smooth pipes, f = 0.3164 Re^-0.25 = 0.031175; f L/D = 1.1223; sum 3.5423; head 32.53 mm.
    const head = hangOnSiphonHead(tubes, 1.5 / 3600, water);
    expect(Math.abs(head / 0.03253 - 1)).toBeLessThan(0.015);
  });

  it("lose in friction what another explicit formula gives for a pipe of that length", () => {
    // Published: P. K. Swamee and A. K. Jain 1976, f = 0.25 / log10(e/(3.7 D) + 5.74/Re^0.9)^2, to about 1 % from Re 5000 on.
    for (const flow of [3e-4, 6e-4, 1.2e-3]) {
      const velocity = flow / 2 / ((Math.PI / 4) * 0.025 ** 2);
      const reynolds = (velocity * 0.025) / 1e-6;
      const f = 0.25 / Math.log10(1.5e-6 / (3.7 * 0.025) + 5.74 / reynolds ** 0.9) ** 2;
      const expected = ((f * 0.9) / 0.025 + 2.42) * (velocity ** 2 / (2 * g));
      const ours = hangOnSiphonHead({ ...tubes, roughness: 1.5e-6 }, flow, water);
      expect(Math.abs(ours / expected - 1)).toBeLessThan(0.015);
    }
  });

  it("are slow and smooth at the least flow: Hagen and Poiseuille", () => {
    // Analytic: h = 128 nu L Q / (pi g D^4) per tube; the entrance and exit count for nothing at 1e-9 m3/s.
    const flow = 2e-9;
    const expected = (128 * 1e-6 * 0.9 * 1e-9) / (Math.PI * g * 0.025 ** 4);
    expect(Math.abs(hangOnSiphonHead(tubes, flow, water) / expected - 1)).toBeLessThan(0.001);
  });

  it("carry as many times the flow of one at one head as there are of them", () => {
    const one = hangOnSiphonFlow({ ...tubes, count: 1 }, 0.54, 0.5, water);
    for (const count of [2, 3, 5])
      expect(hangOnSiphonFlow({ ...tubes, count }, 0.54, 0.5, water)).toBeCloseTo(count * one, 12);
    expect(hangOnSiphonFlow({ ...tubes, count: 0 }, 0.54, 0.5, water)).toBe(0);
  });

  it("run either way, balance the energy to rounding, and are finite for whatever levels", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -2, max: 2, noNaN: true }),
        fc.double({ min: -2, max: 2, noNaN: true }),
        fc.integer({ min: 1, max: 8 }),
        fc.double({ min: 0.008, max: 0.1, noNaN: true }),
        (inside, outside, count, bore) => {
          const each = { ...tubes, count, bore };
          const flow = hangOnSiphonFlow(each, inside, outside, water);
          expect(Number.isFinite(flow)).toBe(true);
          expect(hangOnSiphonFlow(each, outside, inside, water) + flow).toBe(0);
          if (Math.abs(inside - outside) <= 1e-9) return;
          expect(Math.sign(flow)).toBe(Math.sign(inside - outside));
          expect(Math.abs(hangOnSiphonHead(each, flow, water) / (inside - outside) - 1)).toBeLessThan(1e-9);
        },
      ),
    );
  });

  it("have a crest whose vacuum is its height above the lower box, where the friction after it is left out", () => {
    const flow = 1.5 / 3600;
    const head = hangOnSiphonHead(tubes, flow, water);
    const velocity = flow / 2 / ((Math.PI / 4) * 0.025 ** 2);
    const pressure = siphonCrestPressure({
      surfacePressure: 101325,
      density: 1000,
      level: 1.3 + head,
      crestElevation: 1.5,
      velocity,
      headLoss: head - velocity ** 2 / (2 * g),
    });
    // Analytic: 101325 Pa less 0.2 m of water; the exit loses exactly the velocity head that the crest has.
    expect(pressure).toBeCloseTo(101325 - 1000 * g * 0.2, 6);
  });
});

describe("a display whose siphon is lost", () => {
  it("runs over after its free volume, or stops when the pump has no more", () => {
    // Analytic: 0.5 m2 by 40 mm is 20 L; 1800 L/h is 0.5 L/s.
    expect(timeToOverflow({ area: 0.5, room: 0.04, flow: 0.0005, pumpable: 0.05 })).toEqual({
      seconds: 40,
      overflows: true,
    });
    expect(timeToOverflow({ area: 0.5, room: 0.04, flow: 0.0005, pumpable: 0.015 })).toEqual({
      seconds: 30,
      overflows: false,
    });
    expect(timeToOverflow({ area: 0.5, room: 0.04, flow: 0, pumpable: 1 })).toEqual({
      seconds: Number.POSITIVE_INFINITY,
      overflows: false,
    });
    expect(timeToOverflow({ area: 0.5, room: -0.01, flow: 0.001, pumpable: 1 })).toEqual({
      seconds: 0,
      overflows: true,
    });
  });
});
