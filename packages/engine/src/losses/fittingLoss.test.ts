import { describe, expect, it } from "vitest";
import { suddenContractionLoss, suddenExpansionLoss } from "./areaChange.ts";
import { craneFullyTurbulentFactor } from "./craneFullyTurbulentFactor.ts";
import { entranceLoss, exitLoss } from "./entranceLoss.ts";
import { fittingLoss, fittingLossSpread } from "./fittingLoss.ts";
import { type FittingKind, type FittingMethod, fittingTable } from "./fittingTable.ts";
import { nominalPipeSize } from "./nominalPipeSize.ts";
import { nozzleHeadLoss } from "./nozzleHeadLoss.ts";

const inchBore = 0.02664; // 1 in schedule 40, ASTM D1785

describe("Crane's fully turbulent factor", () => {
  // Crane TP-410, 2009 edition, by nominal size; bores of schedule 40.
  it.each([
    [0.0158, 0.026],
    [0.02093, 0.024],
    [0.02664, 0.022],
    [0.03505, 0.021],
    [0.04089, 0.02],
    [0.0525, 0.019],
    [0.07793, 0.017],
    [0.10226, 0.016],
  ])("rounds to the table at a bore of %d m", (bore, expected) => {
    expect(Math.round(craneFullyTurbulentFactor(bore) * 1000) / 1000).toBe(expected);
  });

  // fluids solves the same curve by a fast approximation, good to 5 to 8 decimals by its own documentation.
  it("equals ft_Crane of fluids 1.0.22 at 26.64 mm to 1e-7", () => {
    expect(Math.abs(craneFullyTurbulentFactor(inchBore) - 0.02225220600155991)).toBeLessThan(1e-7);
  });
});

describe("loss of fittings at 1 in and Re 3e4", () => {
  // Crane TP-410, Hooper 1981, Darby 1999, recomputed with fluids 1.0.22 (ft_Crane, Hooper2K, Darby3K).
  const rows: [FittingKind, number, number, number][] = [
    ["elbow90", 0.668, 0.808, 0.727],
    ["elbow90Bend", 0.445, 0.515, 0.482],
    ["elbow90Sweep", 0.313, 0.417, 0.396],
    ["elbow45", 0.356, 0.407, 0.386],
    ["teeRun", 0.445, 0.202, 0.462],
    ["teeBranch", 1.335, 1.384, 1.387],
    ["ballValve", 0.067, 0.205, 0.087],
    ["gateValve", 0.178, 0.205, 0.191],
    ["globeValve", 7.57, 7.86, 7.87],
    ["swingCheck", 2.23, 2.98, 2.35],
  ];
  it.each(rows)("of %s is %d by Crane, %d by Hooper, %d by Darby", (kind, crane, hooper, darby) => {
    const { byMethod, low, high } = fittingLossSpread(kind, inchBore, 3e4);
    // Printed to three digits, so half a unit of the last one counts beside 0.5 %.
    expect(Math.abs((byMethod.crane ?? 0) - crane)).toBeLessThan(0.005 * crane + 0.0005);
    expect(Math.abs((byMethod.hooper ?? 0) - hooper)).toBeLessThan(0.005 * hooper + 0.0005);
    expect(Math.abs((byMethod.darby ?? 0) - darby)).toBeLessThan(0.005 * darby + 0.0005);
    expect(low).toBe(Math.min(...Object.values(byMethod)));
    expect(high).toBe(Math.max(...Object.values(byMethod)));
  });

  it("of foot valves is 9.35 with a poppet and 1.67 hinged, by Crane alone", () => {
    const poppet = fittingLoss("footValve", "darby", inchBore);
    expect(poppet.methodUsed).toBe("crane");
    expect(poppet.turbulent).toBeCloseTo(9.35, 2);
    expect(fittingLoss("footValveHinged", "crane", inchBore).turbulent).toBeCloseTo(1.67, 2);
  });
});

describe("fitting methods", () => {
  const kinds = Object.keys(fittingTable) as FittingKind[];
  const methods: FittingMethod[] = ["crane", "hooper", "darby"];

  it("give every fitting a finite loss by every method and say which method it was", () => {
    for (const kind of kinds) {
      for (const method of methods) {
        for (const diameter of [0.009, 0.02, 0.05, 0.2]) {
          const loss = fittingLoss(kind, method, diameter);
          expect(loss.turbulent).toBeGreaterThan(0);
          expect(Number.isFinite(loss.laminar + loss.turbulent)).toBe(true);
          if (fittingTable[kind][method] !== undefined) expect(loss.methodUsed).toBe(method);
        }
      }
    }
  });

  it("never lose less in the smaller of two bores", () => {
    for (const kind of kinds) {
      for (const method of methods) {
        const small = fittingLoss(kind, method, 0.016).turbulent;
        const large = fittingLoss(kind, method, 0.1).turbulent;
        expect(small).toBeGreaterThanOrEqual(large);
      }
    }
  });

  it("differ on a ball valve by a factor of 3 and on a tee run by more than 2", () => {
    const ball = fittingLossSpread("ballValve", inchBore, 3e4);
    const run = fittingLossSpread("teeRun", inchBore, 3e4);
    expect(ball.high / ball.low).toBeGreaterThan(2.9);
    expect(run.high / run.low).toBeGreaterThan(2.1);
  });

  it("take schedule 40 bores back to their nominal sizes", () => {
    expect(nominalPipeSize(0.0158)).toBe(0.5);
    expect(nominalPipeSize(0.0525)).toBe(2);
    expect(nominalPipeSize(0.10226)).toBe(4);
  });
});

describe("entrances, exits and area changes", () => {
  it("lose 0.5 at a sharp edge, 0.78 projecting, 1 at the exit (Crane TP-410)", () => {
    expect(entranceLoss("sharp")).toBe(0.5);
    expect(entranceLoss("projecting")).toBe(0.78);
    expect(exitLoss).toBe(1);
    expect(fittingLoss("entranceSharp", "crane", 0.03)).toEqual({ laminar: 0, turbulent: 0.5, methodUsed: "crane" });
  });

  it("range from Crane's 0.5 to Rennels' 0.57 at a sharp entrance", () => {
    expect(fittingLossSpread("entranceSharp", 0.03, 1e5)).toEqual({ low: 0.5, high: 0.57, byMethod: { crane: 0.5 } });
  });

  // Crane's table as in fluids 1.0.22 entrance_rounded.
  it.each([
    [0, 0.5],
    [0.04, 0.24],
    [0.1, 0.09],
    [0.15, 0.04],
    [0.3, 0.04],
  ])("lose less with a rounder lip: r/D %d gives %d", (radiusRatio, expected) => {
    expect(entranceLoss("rounded", radiusRatio)).toBeCloseTo(expected, 12);
  });

  // fluids 1.0.22: diffuser_sharp, contraction_sharp (Crane and Rennels).
  it("match the reference library from 26.6 to 40.9 mm and back", () => {
    expect(suddenExpansionLoss(0.0266, 0.0409)).toBeCloseTo(0.33295564971639213, 12);
    expect(suddenContractionLoss(0.0409, 0.0266)).toBeCloseTo(0.2885115464398228, 12);
    expect(suddenContractionLoss(0.0409, 0.0266, "rennels")).toBeCloseTo(0.3986699761295864, 12);
    expect(suddenContractionLoss(0.05, 0.02)).toBeCloseTo(0.42, 12);
    expect(suddenContractionLoss(0.05, 0.02, "rennels")).toBeCloseTo(0.5301269161591805, 12);
  });

  it("vanish where the bore does not change, and become exit and sharp entrance against a tank (analytic)", () => {
    expect(suddenExpansionLoss(0.03, 0.03)).toBe(0);
    expect(suddenContractionLoss(0.03, 0.03, "rennels")).toBe(0);
    expect(suddenExpansionLoss(0.03, 300)).toBeCloseTo(exitLoss, 6);
    expect(suddenContractionLoss(300, 0.03)).toBeCloseTo(0.5, 6);
    expect(suddenContractionLoss(300, 0.03, "rennels")).toBeCloseTo(0.57, 2);
  });

  it("make a nozzle of the pipe's own bore lose just the velocity head (analytic)", () => {
    const velocity = 0.0004 / ((Math.PI / 4) * 0.02 ** 2);
    expect(nozzleHeadLoss(0.02, 0.02, 0.0004)).toBeCloseTo(velocity ** 2 / (2 * 9.80665), 12);
    expect(nozzleHeadLoss(0.03, 0.02, -0.0004)).toBe(-nozzleHeadLoss(0.03, 0.02, 0.0004));
  });
});
