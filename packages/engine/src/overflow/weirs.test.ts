import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  drainDownTime,
  kindsvaterCarterWeirFlow,
  type OverflowWeir,
  orificeFlow,
  overflowWeirFlow,
  overflowWeirHead,
  poolLevel,
  rehbockWeirFlow,
  sumpChamberLevel,
  vNotchWeirFlow,
  weirHeadLimit,
  weirUncertainty,
} from "./index.ts";

const litre = 1e-3;
/** Relative difference. */
const off = (ours: number, expected: number): number => Math.abs(ours / expected - 1);

describe("thin-plate weirs", () => {
  it("Rehbock: 50 mm over a 0.40 m crest 0.30 m high passes 8.426 L/s", () => {
    // Published formula (ISO 1438) evaluated by hand; fluids 1.0.22 with 0.0832 and 1.25 mm gives 8.43862 L/s.
    expect(off(rehbockWeirFlow(0.05, 0.4, 0.3), 8.426 * litre)).toBeLessThan(1e-4);
    expect(off(rehbockWeirFlow(0.05, 0.4, 0.3), 0.008438622734959298)).toBeLessThan(0.01);
  });

  it("Kindsvater and Carter at full width pass 8.340 L/s over the same weir, contracted 2.900 L/s", () => {
    // Published coefficients (ISO 1438; USBR) evaluated by hand; fluids 1.0.22, full width: 8.33747 L/s.
    expect(off(kindsvaterCarterWeirFlow(0.05, 0.4, 0.4, 0.3), 8.34 * litre)).toBeLessThan(1e-3);
    expect(off(kindsvaterCarterWeirFlow(0.05, 0.4, 0.4, 0.3), 0.008337466916423479)).toBeLessThan(0.01);
    expect(off(kindsvaterCarterWeirFlow(0.03, 0.3, 0.6, 0.15), 2.9 * litre)).toBeLessThan(1e-3);
  });

  it("Kindsvater and Carter agree with Rehbock within 2 % on full-width weirs inside both limits", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.03, max: 0.2, noNaN: true }),
        fc.double({ min: 0.3, max: 2, noNaN: true }),
        (h, b) => {
          expect(off(kindsvaterCarterWeirFlow(h, b, b, 0.3), rehbockWeirFlow(h, b, 0.3))).toBeLessThan(0.02);
        },
      ),
    );
  });

  it("a 90 degree notch passes 4.410 L/s at 0.10 m, 4.447 L/s by Cone", () => {
    // Published: ISO 1438 coefficients by hand; Cone's formula 1.343 h^2.48 (USBR Water Measurement Manual).
    expect(off(vNotchWeirFlow(0.1, Math.PI / 2), 4.41 * litre)).toBeLessThan(5e-4);
    expect(off(vNotchWeirFlow(0.1, Math.PI / 2), 1.343 * 0.1 ** 2.48)).toBeLessThan(0.02);
  });

  it("a 60 degree notch follows Shen's coefficients", () => {
    // Other program: fluids 1.0.22 Q_weir_V_Shen(0.1, angle=60) is 3.38703 L/s with its C sqrt(g) in place of C (8/15) sqrt(2 g).
    const expected = 0.0033870283858734203 * (8 / 15) * Math.SQRT2;
    expect(off(vNotchWeirFlow(0.1, Math.PI / 3), expected)).toBeLessThan(1e-9);
  });

  it("pass nothing at or below the crest", () => {
    for (const head of [0, -0.1, Number.NaN]) {
      expect(rehbockWeirFlow(head, 1, 0.3)).toBe(0);
      expect(kindsvaterCarterWeirFlow(head, 1, 1, 0.3)).toBe(0);
      expect(vNotchWeirFlow(head, 1)).toBe(0);
    }
  });
});

describe("a display's overflow", () => {
  const plain: OverflowWeir = { length: 0.3, toothOpenShare: 1, toothHeight: 0, crestHeight: Number.POSITIVE_INFINITY };

  it("carries 4 m3/h over 0.30 m at 16.3 mm, and half closed at 25.9 mm", () => {
    // Analytic with Cd 0.602 (ISO 1438, no corrections).
    expect(overflowWeirHead(plain, 4 / 3600) * 1000).toBeCloseTo(16.3, 1);
    expect(overflowWeirHead({ ...plain, toothOpenShare: 0.5, toothHeight: 0.05 }, 4 / 3600) * 1000).toBeCloseTo(
      25.9,
      1,
    );
  });

  it("lies within its stated uncertainty of Rehbock's full formula at the 30 mm limit", () => {
    const weir = { ...plain, crestHeight: 0.3 };
    expect(off(overflowWeirFlow(weir, weirHeadLimit), rehbockWeirFlow(weirHeadLimit, 0.3, 0.3))).toBeLessThan(
      weirUncertainty,
    );
  });

  it("with drowned teeth passes what the slots pass plus a full-length weir above them", () => {
    // Analytic: slots carry b_open (h^1.5 - (h - t)^1.5), the layer above b (h - t)^1.5.
    const toothed = { ...plain, toothOpenShare: 0.4, toothHeight: 0.02 };
    const layer = (length: number, from: number): number => overflowWeirFlow({ ...plain, length }, 0.03 - from);
    const slots = layer(0.12, 0) - layer(0.12, 0.02);
    expect(overflowWeirFlow(toothed, 0.03)).toBeCloseTo(slots + layer(0.3, 0.02), 15);
  });

  const anyWeir = fc.record({
    length: fc.double({ min: 0.02, max: 3, noNaN: true }),
    toothOpenShare: fc.double({ min: 0, max: 1, noNaN: true }),
    toothHeight: fc.double({ min: 0, max: 0.1, noNaN: true }),
    crestHeight: fc.double({ min: 0.05, max: 1.5, noNaN: true }),
  });

  it("has a head that is the exact inverse of its flow", () => {
    fc.assert(
      fc.property(anyWeir, fc.double({ min: 1e-6, max: 0.02, noNaN: true }), (weir, flow) => {
        const head = overflowWeirHead(weir, flow);
        // The head is good to 1e-15 m; the flow follows through the weir's slope, at most 10 m2/s here.
        expect(Math.abs(overflowWeirFlow(weir, head) - flow)).toBeLessThan(1e-14 + 1e-12 * flow);
      }),
      { numRuns: 1000 },
    );
  });

  it("never passes less at a higher head, and has no step at the tooth tops", () => {
    fc.assert(
      fc.property(anyWeir, fc.double({ min: 0, max: 0.2, noNaN: true }), (weir, head) => {
        expect(overflowWeirFlow(weir, head + 1e-4)).toBeGreaterThanOrEqual(overflowWeirFlow(weir, head));
        const tops = weir.toothHeight;
        const step = overflowWeirFlow(weir, tops + 1e-9) - overflowWeirFlow(weir, tops);
        expect(step).toBeLessThan(1e-7);
      }),
    );
  });

  it("stands at its crest without flow, and nowhere finite without a crest", () => {
    expect(overflowWeirHead(plain, 0)).toBe(0);
    expect(overflowWeirHead({ ...plain, length: 0 }, 1e-4)).toBe(Number.POSITIVE_INFINITY);
  });

  it("behind a baffle stands higher than the baffle by the head of that weir", () => {
    const weir = { length: 0.3, toothOpenShare: 1, toothHeight: 0, crestHeight: 0.25 };
    const level = sumpChamberLevel({ baffleHeight: 0.25, baffleLength: 0.3, flow: 4 / 3600 });
    expect(overflowWeirFlow(weir, level - 0.25)).toBeCloseTo(4 / 3600, 14);
    // Analytic bound: without approach speed it is 16.3 mm.
    expect((level - 0.25) * 1000).toBeGreaterThan(16);
    expect((level - 0.25) * 1000).toBeLessThan(16.31);
    expect(poolLevel(0.09, 0.6, 0.5)).toBeCloseTo(0.3, 12);
  });
});

describe("holes", () => {
  it("a sharp 12 mm hole under 0.30 m passes 0.1701 L/s", () => {
    // Analytic: 0.62 A sqrt(2 g h).
    expect(off(orificeFlow(0.62, Math.PI * 0.006 ** 2, 0.3), 0.1701 * litre)).toBeLessThan(5e-4);
  });

  it("a 0.60 x 0.45 m pool falls from 0.40 to 0.10 m through 20 mm in 201.2 s and empties in 402.4 s", () => {
    // Analytic: Torricelli.
    const pool = { surfaceArea: 0.27, orificeArea: Math.PI * 0.01 ** 2, dischargeCoefficient: 0.61, startHead: 0.4 };
    expect(off(drainDownTime({ ...pool, endHead: 0.1 }), 201.2)).toBeLessThan(5e-4);
    expect(off(drainDownTime({ ...pool, endHead: 0 }), 402.4)).toBeLessThan(5e-4);
    expect(drainDownTime({ ...pool, endHead: 0.5 })).toBe(0);
  });

  it("a pool stepped in small times through orificeFlow takes the Torricelli time", () => {
    // Analytic against a midpoint integration of dh/dt = -Q(h)/A.
    const area = Math.PI * 0.01 ** 2;
    let head = 0.4;
    let time = 0;
    const step = 0.01;
    while (head > 0.1) {
      const half = head - (0.5 * step * orificeFlow(0.61, area, head)) / 0.27;
      head -= (step * orificeFlow(0.61, area, half)) / 0.27;
      time += step;
    }
    const pool = { surfaceArea: 0.27, orificeArea: area, dischargeCoefficient: 0.61, startHead: 0.4, endHead: 0.1 };
    expect(Math.abs(time - drainDownTime(pool))).toBeLessThan(2 * step);
  });
});
