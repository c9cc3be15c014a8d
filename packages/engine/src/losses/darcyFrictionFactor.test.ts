import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { colebrook } from "./colebrook.ts";
import { darcyFrictionFactor, darcyFrictionFactorSlope } from "./darcyFrictionFactor.ts";
import { darcyWeisbachHeadLoss, pipeHeadLoss } from "./pipeHeadLoss.ts";
import { roughness } from "./roughness.ts";

const relativeRoughnesses = fc.double({ min: 0, max: 0.05, noNaN: true });

describe("friction factor over all flow", () => {
  it("is 64/Re in laminar flow (Hagen-Poiseuille, analytic)", () => {
    expect(darcyFrictionFactor(64, 0.01)).toBe(1);
    expect(darcyFrictionFactor(2000, 0)).toBe(0.032);
  });

  it("is Colebrook's from Re 4000 on", () => {
    expect(darcyFrictionFactor(4000, 1e-4)).toBe(colebrook(4000, 1e-4));
    expect(darcyFrictionFactor(1e6, 1e-4)).toBe(colebrook(1e6, 1e-4));
  });

  // EPANET's cubic (Dunlop 1991) ends on Swamee-Jain, 1.6 % above Colebrook at Re 4000, and blends f over Re; smooth pipe.
  it.each([
    [2300, 0.02917],
    [3000, 0.03307],
    [3500, 0.03861],
    [4000, 0.04055],
  ])("lies within 3 %% of EPANET's cubic at Re %d", (reynolds, expected) => {
    expect(Math.abs(darcyFrictionFactor(reynolds, 0) / expected - 1)).toBeLessThan(0.03);
  });

  it("has no step and no kink at Re 2000 and 4000, whatever the roughness", () => {
    fc.assert(
      fc.property(relativeRoughnesses, fc.constantFrom(2000, 4000), (e, at) => {
        const h = 0.01;
        const f = (reynolds: number) => darcyFrictionFactor(reynolds, e);
        // Second-order one-sided differences: truncation about 1e-12, rounding about 1e-14/h.
        const fromBelow = (3 * f(at) - 4 * f(at - h) + f(at - 2 * h)) / (2 * h);
        const fromAbove = (-3 * f(at) + 4 * f(at + h) - f(at + 2 * h)) / (2 * h);
        expect(Math.abs(f(at - 1e-9) - f(at + 1e-9))).toBeLessThan(1e-12);
        expect(Math.abs(fromBelow - fromAbove)).toBeLessThan(1e-10);
        expect(Math.abs(darcyFrictionFactorSlope(at, e) - fromBelow)).toBeLessThan(1e-10);
      }),
      { numRuns: 1000 },
    );
  });

  it("has the slope it says it has", () => {
    fc.assert(
      fc.property(relativeRoughnesses, fc.double({ min: 6, max: 16, noNaN: true }), (e, logarithm) => {
        const reynolds = Math.exp(logarithm);
        const h = reynolds * 1e-4;
        fc.pre(Math.abs(reynolds - 2000) > h && Math.abs(reynolds - 4000) > h);
        const numeric = (darcyFrictionFactor(reynolds + h, e) - darcyFrictionFactor(reynolds - h, e)) / (2 * h);
        // Rounding of f over 2 h, and truncation of second order.
        const tolerance = 1e-16 / h + 1e-5 * (darcyFrictionFactor(reynolds, e) / reynolds);
        expect(Math.abs(darcyFrictionFactorSlope(reynolds, e) - numeric)).toBeLessThan(tolerance);
      }),
      { numRuns: 2000 },
    );
  });

  it("never lets more flow lose less head: f Re^2 rises through the transition", () => {
    fc.assert(
      fc.property(relativeRoughnesses, fc.double({ min: 1500, max: 4500, noNaN: true }), (e, reynolds) => {
        const f = darcyFrictionFactor(reynolds, e);
        expect(2 * f + reynolds * darcyFrictionFactorSlope(reynolds, e)).toBeGreaterThan(0);
      }),
      { numRuns: 2000 },
    );
  });
});

describe("head loss of a pipe", () => {
  it("is f L/D V2/2g: 0.10197 m for f 0.02, 3 m of 30 mm bore at 1 m/s (analytic)", () => {
    expect(darcyWeisbachHeadLoss(0.02, 3, 0.03, 1)).toBeCloseTo(2 / (2 * 9.80665), 12);
  });

  it("is Hagen-Poiseuille's 128 nu L Q / (pi g D4) in laminar flow (analytic)", () => {
    const pipe = { length: 2, diameter: 0.012, roughness: 1.5e-6, flow: 1.2e-5, kinematicViscosity: 9.37e-7 };
    const expected = (128 * 9.37e-7 * 2 * 1.2e-5) / (Math.PI * 9.80665 * 0.012 ** 4);
    const found = pipeHeadLoss(pipe);
    expect(found.reynolds).toBeLessThan(2000);
    expect(found.headLoss / expected).toBeCloseTo(1, 12);
    expect((found.slope * 1.2e-5) / expected).toBeCloseTo(1, 12);
  });

  it("meets Crane TP-410 example 7-1 in friction factor and Reynolds number: 200 L/min in smooth 50 mm pipe at Re 1.006e5", () => {
    const found = pipeHeadLoss({
      length: 1,
      diameter: 0.05,
      roughness: 0,
      flow: 0.2 / 60,
      kinematicViscosity: (4 * (0.2 / 60)) / (Math.PI * 0.05 * 1.006e5),
    });
    expect(Math.abs(found.darcyFrictionFactor / 0.0179 - 1)).toBeLessThan(0.015);
  });

  it("is nothing without flow, with a finite slope", () => {
    const still = pipeHeadLoss({ length: 1, diameter: 0.02, roughness: 0, flow: 0, kinematicViscosity: 1e-6 });
    expect(still.headLoss).toBe(0);
    expect(still.slope).toBeCloseTo((128 * 1e-6) / (Math.PI * 9.80665 * 0.02 ** 4), 9);
  });

  it("turns its sign with the flow, and its slope is its derivative", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -12, max: -5, noNaN: true }),
        fc.double({ min: 0.01, max: 0.1, noNaN: true }),
        fc.double({ min: 0, max: 1e-4, noNaN: true }),
        (logarithm, diameter, rough) => {
          const at = (flow: number) =>
            pipeHeadLoss({ length: 3, diameter, roughness: rough, flow, kinematicViscosity: 9.4e-7 });
          const flow = Math.exp(logarithm);
          expect(at(-flow).headLoss).toBe(-at(flow).headLoss);
          expect(at(-flow).slope).toBe(at(flow).slope);
          const h = flow * 1e-5;
          const numeric = (at(flow + h).headLoss - at(flow - h).headLoss) / (2 * h);
          expect(Math.abs(numeric / at(flow).slope - 1)).toBeLessThan(1e-4);
        },
      ),
    );
  });

  it("rises by 40 % when a biofilm of 1e-4 m grows in clean 25 mm pipe at Re 4e4 (recomputed with fluids 1.0.22)", () => {
    const clean = darcyFrictionFactor(4e4, roughness.pvc.value / 0.025);
    const furred = darcyFrictionFactor(4e4, roughness.biofilm.value / 0.025);
    expect(furred / clean).toBeCloseTo(1.4, 1);
  });
});
