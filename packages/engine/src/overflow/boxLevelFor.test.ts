import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type BoxDrain, boxLevelFor, type DrainKind, type DrainLine, siphonFlow, siphonValveLossFor } from "./index.ts";

const water = { kinematicViscosity: 9.37e-7 };
const limits = { floor: 0.8, rim: 1.3 };

function drain(bore: number, inletElevation: number): DrainLine {
  const segment = { length: 1.5, diameter: bore, roughness: 1.5e-6, lossCoefficient: 2.8, laminarLoss: 800 };
  return { bore, inletDiameter: bore, segments: [segment], valveLoss: 0, inletElevation, outletElevation: 0.2 };
}

describe("the level of an overflow box", () => {
  it("stands at the lowest inlet without flow, or on the floor", () => {
    const box = [{ kind: "ventedStandpipe", line: drain(0.04, 1) }] as const;
    expect(boxLevelFor(box, 0, water, limits).level).toBe(1);
    expect(boxLevelFor([{ kind: "ventedStandpipe", line: drain(0.04, 0.7) }], 0, water, limits).level).toBe(0.8);
  });

  it("rises to the rim and spills the rest where there is no drain, or too small a one", () => {
    const none = boxLevelFor([], 0.001, water, limits);
    expect(none).toEqual({ level: 1.3, flows: [], regimes: [], overflows: true, spilled: 0.001 });
    const siphon = { kind: "throttledSiphon", line: drain(0.02, 1) } as const;
    const small = boxLevelFor([siphon], 0.003, water, limits);
    expect(small.overflows).toBe(true);
    expect(small.regimes).toEqual(["beyondSiphon"]);
    expect(small.flows[0] / siphonFlow(siphon.line, 1.3, water)).toBeCloseTo(1, 12);
    expect(small.spilled).toBeCloseTo(0.003 - small.flows[0], 15);
  });

  it("with a siphon throttled for 90 % leaves 10 % to the open channel at the level that was chosen", () => {
    const total = 4 / 3600;
    // The open channel carries a tenth as a rim weir: H = (0.1 Q / (0.602 (2/3) sqrt(2 g) pi D))^(2/3), analytic.
    const head = ((0.1 * total) / (0.602 * (2 / 3) * Math.sqrt(2 * 9.80665) * Math.PI * 0.04)) ** (2 / 3);
    const level = 1.1 + head;
    const line = drain(0.04, 0.9);
    const valveLoss = siphonValveLossFor(line, 0.9 * total, level, water);
    expect(valveLoss).toBeDefined();
    const main: BoxDrain = { kind: "throttledSiphon", line: { ...line, valveLoss: valveLoss ?? 0 } };
    const open: BoxDrain = { kind: "openChannel", line: drain(0.04, 1.1) };
    const dry: BoxDrain = { kind: "dryStandpipe", line: drain(0.04, 1.2) };
    const box = boxLevelFor([main, open, dry], total, water, limits);
    expect(box.level).toBeCloseTo(level, 11);
    expect(box.flows[0] / total).toBeCloseTo(0.9, 9);
    expect(box.flows[1] / total).toBeCloseTo(0.1, 9);
    expect(box.regimes).toEqual(["siphon", "quiet", "dry"]);
  });

  it("says that a flow which is not a number cannot be carried", () => {
    expect(() => boxLevelFor([], Number.NaN, water, limits)).toThrow("totalFlow must be a number of m3/s, not NaN");
  });

  const kind = fc.constantFrom<DrainKind>("ventedStandpipe", "throttledSiphon", "openChannel", "dryStandpipe");
  const anyDrain = fc
    .tuple(
      kind,
      fc.double({ min: 0.015, max: 0.08, noNaN: true }),
      fc.double({ min: 0.7, max: 1.4, noNaN: true }),
      fc.double({ min: 0, max: 500, noNaN: true }),
    )
    .map(([kind, bore, inlet, valveLoss]): BoxDrain => ({ kind, line: { ...drain(bore, inlet), valveLoss } }));
  const someDrains = fc.array(anyDrain, { minLength: 1, maxLength: 4 });
  const someFlow = fc.double({ min: 0, max: 0.01, noNaN: true });

  it("shares out the whole flow, drains and spill together", () => {
    fc.assert(
      fc.property(someDrains, someFlow, (drains, flow) => {
        const box = boxLevelFor(drains, flow, water, limits);
        const sum = box.flows.reduce((total, part) => total + part, box.spilled);
        expect(Math.abs(sum - flow)).toBeLessThan(1e-12 + 1e-9 * flow);
        expect(box.level).toBeGreaterThanOrEqual(limits.floor);
        expect(box.level).toBeLessThanOrEqual(limits.rim);
      }),
      { numRuns: 1000 },
    );
  });

  it("never falls when more water comes, nor depends on the order of the drains", () => {
    fc.assert(
      fc.property(someDrains, someFlow, (drains, flow) => {
        const level = boxLevelFor(drains, flow, water, limits).level;
        expect(boxLevelFor(drains, flow * 1.01, water, limits).level).toBeGreaterThanOrEqual(level - 1e-12);
        expect(boxLevelFor([...drains].reverse(), flow, water, limits).level).toBeCloseTo(level, 11);
      }),
      { numRuns: 500 },
    );
  });
});
