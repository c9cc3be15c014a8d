import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fittingLoss } from "./fittingLoss.ts";
import type { FittingMethod } from "./fittingTable.ts";
import { valveLoss, valveOpeningFor } from "./valveLoss.ts";
import type { ValveKind } from "./valveTable.ts";

const kinds = fc.constantFrom<ValveKind>("ball", "gate", "globe", "butterfly", "diaphragm");
const methods = fc.constantFrom<FittingMethod>("crane", "hooper", "darby");
const bores = fc.double({ min: 0.01, max: 0.1, noNaN: true });
const openings = fc.double({ min: 0.02, max: 1, noNaN: true });

describe("part-open valves", () => {
  // Munson, Young, Okiishi, Huebsch, Fundamentals of Fluid Mechanics, table 8.2. The open valve's own K is on top there and
  // here, so 0.5 on a K of 5.5 is the reading of the table, not of the interpolation.
  it.each<[ValveKind, number, number]>([
    ["ball", 2 / 3, 5.5],
    ["ball", 1 / 3, 210],
    ["gate", 0.5, 2.1],
    ["gate", 0.25, 17],
  ])("lose as in Munson et al.: %s, %d open, K %d", (kind, opening, expected) => {
    const k = valveLoss(kind, opening, 0.02664, "crane").turbulent;
    expect(Math.abs(k / expected - 1)).toBeLessThan(0.1);
  });

  it("lose 0.26 more than open in a gate valve three quarters open (Munson et al., table 8.2, a quarter closed)", () => {
    const open = fittingLoss("gateValve", "crane", 0.02664).turbulent;
    expect(valveLoss("gate", 0.75, 0.02664, "crane").turbulent - open).toBeCloseTo(0.26, 2);
  });

  // Perry's Chemical Engineers' Handbook, additional losses of fittings and valves.
  it.each<[ValveKind, number, number]>([
    ["globe", 0.75, 13 / 9],
    ["globe", 0.5, 36 / 9],
    ["globe", 0.25, 112 / 9],
    ["diaphragm", 0.75, 2.6 / 2.3],
    ["diaphragm", 0.5, 4.3 / 2.3],
    ["diaphragm", 0.25, 21 / 2.3],
  ])("lose in Perry's proportion to the open valve: %s, %d open", (kind, opening, ratio) => {
    const open = valveLoss(kind, 1, 0.04).turbulent;
    expect(valveLoss(kind, opening, 0.04).turbulent / open).toBeCloseTo(ratio, 9);
  });

  // Perry, angle closed from open: plug cock and butterfly.
  it.each<[ValveKind, number, number]>([
    ["ball", 10, 0.29],
    ["ball", 20, 1.56],
    ["ball", 40, 17.3],
    ["ball", 60, 206],
    ["butterfly", 10, 0.52],
    ["butterfly", 20, 1.54],
    ["butterfly", 40, 10.8],
    ["butterfly", 60, 118],
  ])("add Perry's loss to that of the open valve: %s closed by %d degrees, %d", (kind, angle, added) => {
    const open = valveLoss(kind, 1, 0.05).turbulent;
    expect(valveLoss(kind, 1 - angle / 90, 0.05).turbulent - open).toBeCloseTo(added, 6);
  });

  it("lose what the open fitting loses at full opening, and everything shut", () => {
    for (const method of ["crane", "hooper", "darby"] as const) {
      expect(valveLoss("ball", 1, 0.03, method)).toEqual(fittingLoss("ballValve", method, 0.03));
      expect(valveLoss("diaphragm", 1, 0.03, method)).toEqual(fittingLoss("diaphragmValve", method, 0.03));
      expect(valveLoss("gate", 0, 0.03, method).turbulent).toBe(Number.POSITIVE_INFINITY);
    }
  });

  it("lose more the further they are closed, without a step", () => {
    fc.assert(
      fc.property(kinds, methods, bores, openings, (kind, method, bore, opening) => {
        const step = 1e-6 * opening;
        const closer = valveLoss(kind, opening - step, bore, method).turbulent;
        const here = valveLoss(kind, opening, bore, method).turbulent;
        expect(closer).toBeGreaterThanOrEqual(here);
        expect(closer / here).toBeLessThan(1.001);
      }),
    );
  });

  it("are set back to the opening that gives a loss, exactly", () => {
    fc.assert(
      fc.property(kinds, methods, bores, openings, (kind, method, bore, opening) => {
        const k = valveLoss(kind, opening, bore, method).turbulent;
        const found = valveOpeningFor(kind, bore, k, method);
        expect(Math.abs(valveLoss(kind, found, bore, method).turbulent / k - 1)).toBeLessThan(1e-12);
      }),
      { numRuns: 2000 },
    );
  });

  it("are wide open for a loss below their own and shut for an infinite one", () => {
    expect(valveOpeningFor("globe", 0.03, 0.1)).toBe(1);
    expect(valveOpeningFor("gate", 0.03, Number.POSITIVE_INFINITY)).toBe(0);
    expect(valveOpeningFor("gate", 0.03, 1e9)).toBeGreaterThan(0);
  });
});
