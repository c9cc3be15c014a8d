import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { evaluateMonotoneCubic, monotoneCubic } from "./monotoneCubic.ts";
import { type PumpPoint, pumpCurve, pumpFlow, pumpHead, pumpHeadSlope, pumpPointProblems } from "./pumpCurve.ts";

/** Falling tables of 2 to 12 points, as a maker prints them. */
const tables = fc
  .array(
    fc.record({
      step: fc.double({ min: 1e-5, max: 1e-3, noNaN: true }),
      drop: fc.double({ min: 0.01, max: 1, noNaN: true }),
    }),
    {
      minLength: 2,
      maxLength: 12,
    },
  )
  .map((steps) => {
    let flow = 0;
    let head = steps.reduce((sum, { drop }) => sum + drop, 0);
    return steps.map(({ step, drop }, i): PumpPoint => {
      if (i > 0) {
        flow += step;
        head -= drop;
      }
      return { flow, head };
    });
  });

describe("a pump curve", () => {
  it("goes through every point of the maker's table", () => {
    fc.assert(
      fc.property(tables, (points) => {
        const curve = pumpCurve(points, "interpolated");
        for (const { flow, head } of points) expect(pumpHead(curve, flow)).toBeCloseTo(head, 9);
      }),
    );
  });

  it("never rises with flow, from backflow to beyond its last point", () => {
    fc.assert(
      fc.property(
        tables,
        fc.constantFrom("auto" as const, "interpolated" as const, "fitted" as const),
        (points, method) => {
          const curve = pumpCurve(points, method);
          const last = points[points.length - 1].flow;
          let before = Number.POSITIVE_INFINITY;
          for (let i = -20; i <= 240; i++) {
            const head = pumpHead(curve, (i * last) / 200);
            expect(head).toBeLessThanOrEqual(before + 1e-12);
            before = head;
          }
        },
      ),
    );
  });

  it("has the slope that its heads say", () => {
    fc.assert(
      fc.property(tables, fc.double({ min: 0.02, max: 1.2, noNaN: true }), (points, share) => {
        const curve = pumpCurve(points);
        const last = points[points.length - 1].flow;
        const flow = share * last;
        const step = 1e-6 * last;
        fc.pre(points.every((point) => Math.abs(point.flow - flow) > 2 * step));
        const numeric = (pumpHead(curve, flow + step) - pumpHead(curve, flow - step)) / (2 * step);
        const scale = points[0].head / last;
        expect(Math.abs(pumpHeadSlope(curve, flow) - numeric)).toBeLessThan(1e-4 * Math.max(scale, Math.abs(numeric)));
      }),
    );
  });

  it("gives back the flow of a head", () => {
    fc.assert(
      fc.property(tables, fc.double({ min: 0.05, max: 1, noNaN: true }), (points, share) => {
        const curve = pumpCurve(points);
        const flow = share * curve.lastFlow;
        expect(pumpHead(curve, pumpFlow(curve, pumpHead(curve, flow)))).toBeCloseTo(pumpHead(curve, flow), 9);
      }),
    );
  });

  // EPANET 2 Users Manual (EPA/600/R-00/057), section 3.1: h = A - B q^C through shut-off, design and last point; analytic.
  it("is the power function through three points, whose exponent is known", () => {
    const curve = pumpCurve([0, 1, 2].map((q) => ({ flow: q / 1000, head: 8 - q ** 3 })));
    expect(curve.law).toBe("power");
    expect(curve.exponent).toBeCloseTo(3, 12);
    expect(pumpHead(curve, 0.0015)).toBeCloseTo(8 - 1.5 ** 3, 12);
  });

  it("finds the law again that its points were taken from, by least squares", () => {
    const points = [0, 1, 2, 3, 4, 5].map((q) => ({ flow: q / 1000, head: 6 - 0.4 * q ** 1.6 }));
    const curve = pumpCurve(points, "fitted");
    expect(curve.exponent).toBeCloseTo(1.6, 6);
    expect(curve.shutoffHead).toBeCloseTo(6, 6);
  });

  it("goes straight on beyond its last point, with its last slope", () => {
    const curve = pumpCurve([
      { flow: 0, head: 4 },
      { flow: 0.002, head: 0 },
    ]);
    expect(pumpHead(curve, 0.003)).toBeCloseTo(-4, 12);
    expect(pumpHeadSlope(curve, 0.003)).toBeCloseTo(-4000, 9);
  });

  it("says that it was extended to no flow where the table begins later", () => {
    const points = [1, 2, 3].map((q) => ({ flow: q / 1000, head: 4 - 0.2 * q * q }));
    const curve = pumpCurve(points);
    expect(curve.shutoffExtended).toBe(true);
    expect(curve.shutoffHead).toBeGreaterThanOrEqual(points[0].head);
    expect(pumpHead(curve, 0)).toBeCloseTo(curve.shutoffHead, 12);
  });
});

describe("a pump's points", () => {
  it("are refused with every fault named", () => {
    const kinds = pumpPointProblems([
      { flow: 0, head: 3 },
      { flow: 0, head: 3.5 },
      { flow: -1, head: 1 },
      { flow: Number.NaN, head: 1 },
    ]).map((problem) => problem.kind);
    expect(kinds).toEqual(expect.arrayContaining(["flow-not-rising", "head-rising", "negative", "not-finite"]));
    expect(() => pumpCurve([{ flow: 0, head: 3 }])).toThrow(/at least 2 points/);
  });

  it("are refused where the head never falls", () => {
    expect(pumpPointProblems([1, 2].map((flow) => ({ flow, head: 3 })))).toHaveLength(1);
  });
});

describe("a monotone cubic", () => {
  it("stays between neighbouring points", () => {
    fc.assert(
      fc.property(tables, (points) => {
        const curve = monotoneCubic(
          points.map((point) => point.flow),
          points.map((point) => point.head),
        );
        for (let i = 1; i < points.length; i++)
          for (let s = 1; s < 8; s++) {
            const flow = points[i - 1].flow + (s / 8) * (points[i].flow - points[i - 1].flow);
            const head = evaluateMonotoneCubic(curve, flow);
            expect(head).toBeLessThanOrEqual(points[i - 1].head + 1e-12);
            expect(head).toBeGreaterThanOrEqual(points[i].head - 1e-12);
          }
      }),
    );
  });
});
