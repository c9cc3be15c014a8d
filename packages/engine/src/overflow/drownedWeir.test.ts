import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { drownedWeirFlow, drownedWeirLevel, type OverflowWeir, overflowWeirFlow, overflowWeirHead } from "./index.ts";

const plain: OverflowWeir = { length: 0.3, toothOpenShare: 1, toothHeight: 0, crestHeight: Number.POSITIVE_INFINITY };
const anyWeir = fc.record({
  length: fc.double({ min: 0.02, max: 3, noNaN: true }),
  toothOpenShare: fc.double({ min: 0, max: 1, noNaN: true }),
  toothHeight: fc.double({ min: 0, max: 0.05, noNaN: true }),
  crestHeight: fc.double({ min: 0.05, max: 1.5, noNaN: true }),
});
const head = fc.double({ min: 0, max: 0.15, noNaN: true });

describe("a drowned weir", () => {
  it("passes Villemonte's share of its free flow", () => {
    // Analytic: (1 - r^1.5)^0.385, evaluated apart from the project.
    const free = overflowWeirFlow(plain, 0.04);
    for (const [ratio, share] of [
      [0.25, 0.9498895],
      [0.5, 0.845386],
      [0.8, 0.616307],
      [0.9, 0.4769662],
    ]) {
      expect(drownedWeirFlow(plain, 0.2, 0.24, 0.2 + 0.04 * ratio) / free).toBeCloseTo(share, 6);
    }
  });

  it("is the free weir while the water below lies under the crest, and dry under it on both sides", () => {
    expect(drownedWeirFlow(plain, 0.2, 0.23, 0.19)).toBe(overflowWeirFlow(plain, 0.23 - 0.2));
    expect(drownedWeirFlow(plain, 0.2, 0.2, 0.1)).toBe(0);
    expect(drownedWeirFlow(plain, 0.2, 0.15, 0.1)).toBe(0);
    expect(drownedWeirFlow(plain, 0.2, 0.23, 0.23)).toBe(0);
  });

  it("runs backwards with the levels exchanged", () => {
    fc.assert(
      fc.property(anyWeir, head, head, (weir, a, b) => {
        expect(drownedWeirFlow(weir, 0, a, b) + drownedWeirFlow(weir, 0, b, a)).toBeCloseTo(0, 20);
      }),
    );
  });

  it("never falls with the upstream level nor rises with the downstream level", () => {
    fc.assert(
      fc.property(anyWeir, head, head, fc.double({ min: 1e-9, max: 0.01, noNaN: true }), (weir, up, down, rise) => {
        const flow = drownedWeirFlow(weir, 0, up, down);
        const slack = 1e-15 + 1e-12 * Math.abs(flow);
        expect(drownedWeirFlow(weir, 0, up + rise, down)).toBeGreaterThanOrEqual(flow - slack);
        expect(drownedWeirFlow(weir, 0, up, down + rise)).toBeLessThanOrEqual(flow + slack);
      }),
      { numRuns: 2000 },
    );
  });

  it("has neither a step nor a kink where the parabola takes over, and a finite slope at level water", () => {
    const lower = 0.02;
    const over = lower / 0.995;
    const slope = (upstream: number, step: number): number =>
      (drownedWeirFlow(plain, 0, upstream + step, lower) - drownedWeirFlow(plain, 0, upstream, lower)) / step;
    expect(slope(over, 1e-9) / slope(over, -1e-9)).toBeCloseTo(1, 3);
    // Villemonte's own curve would end vertically: ten times closer, four times as steep.
    expect(slope(lower, 1e-9) / slope(lower, 1e-7)).toBeCloseTo(1, 2);
    expect(slope(lower, 1e-9) / slope(lower, -1e-9)).toBeCloseTo(1, 2);
  });

  it("stands at the level that drives its flow", () => {
    fc.assert(
      fc.property(anyWeir, head, fc.double({ min: -0.05, max: 0.15, noNaN: true }), (weir, gap, down) => {
        const up = Math.max(0, down) + gap;
        const flow = drownedWeirFlow(weir, 0, up, down);
        fc.pre(flow > 1e-12);
        const level = drownedWeirLevel(weir, 0, flow, down);
        // A flow holds 16 figures; where the weir is flat that is all its level can hold.
        const slope = (drownedWeirFlow(weir, 0, up + 1e-7, down) - flow) / 1e-7;
        expect(Math.abs(level - up)).toBeLessThan(1e-13 + (4e-16 * flow) / slope);
      }),
      { numRuns: 2000 },
    );
  });

  it("without flow stands at the crest or at the water below, and with the free weir agrees where nothing drowns it", () => {
    expect(drownedWeirLevel(plain, 0.2, 0, 0.1)).toBe(0.2);
    expect(drownedWeirLevel(plain, 0.2, 0, 0.25)).toBe(0.25);
    expect(drownedWeirLevel({ ...plain, length: 0 }, 0.2, 1e-4, 0.25)).toBe(Number.POSITIVE_INFINITY);
    expect(drownedWeirLevel(plain, 0.2, 1e-3, 0.1)).toBeCloseTo(0.2 + overflowWeirHead(plain, 1e-3), 14);
  });
});
