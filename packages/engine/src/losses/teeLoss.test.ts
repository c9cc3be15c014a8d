import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { combiningTeeLoss, dividingTeeLoss } from "./teeLoss.ts";

describe("tees by flow split", () => {
  it("join as in Crane TP-410 example 7-35: 300 and 100 US gal/min give branch -0.042 and run 0.325", () => {
    const losses = combiningTeeLoss(0.25, 1);
    expect(losses.branch).toBeCloseTo(-0.042, 3);
    expect(losses.run).toBeCloseTo(0.325, 3);
  });

  it("divide as in Crane TP-410 example 7-36 along the run: 1515 and 950 L/min give -0.0681", () => {
    expect(dividingTeeLoss(950 / (1515 + 950), 1).run).toBeCloseTo(-0.0681, 4);
  });

  // fluids 1.0.22: K_branch_converging_Crane, K_run_converging_Crane, K_branch_diverging_Crane, K_run_diverging_Crane, 90 degrees.
  it.each([
    [0.1, 0.3, -0.508888888888889, 0.145, 1.1111111111111112, 0.004],
    [0.1, 0.5, -0.4698, 0.145, 1.012, -0.016],
    [0.1, 1, -0.4941, 0.145, 1.006009, -0.016],
    [0.25, 0.3, 0.5694444444444446, 0.325, 1.6944444444444446, 0.025],
    [0.25, 1, -0.0421875, 0.325, 1.0378515625, -0.0625],
    [0.4, 0.3, 2.057777777777779, 0.46, 2.7777777777777786, 0.064],
    [0.6, 0.3, 4.68, 0.57, 5, 0.144],
    [0.6, 0.5, 1.166, 0.57, 1.432, 0.0216],
    [0.6, 1, 0.572, 0.57, 1.227664, 0.0216],
    [0.9, 0.5, 2.321, 0.585, 1.972, 0.1944],
    [0.9, 1, 0.9845, 0.585, 1.545049, 0.1944],
  ])("repeat the reference library at flow ratio %d and area ratio %d", (y, a, cBranch, cRun, dBranch, dRun) => {
    const combining = combiningTeeLoss(y, a);
    const dividing = dividingTeeLoss(y, a);
    expect(combining.branch).toBeCloseTo(cBranch, 10);
    expect(combining.run).toBeCloseTo(cRun, 10);
    expect(dividing.branch).toBeCloseTo(dBranch, 10);
    expect(dividing.run).toBeCloseTo(dRun, 10);
  });

  it("stay within 2 % of Crane in the gap where his factor steps from 0.54 to 0.55", () => {
    expect(combiningTeeLoss(0.4, 1).branch / 0.2376).toBeCloseTo(1, 1);
    expect(Math.abs(combiningTeeLoss(0.4, 1).branch / 0.2376 - 1)).toBeLessThan(0.02);
  });

  it("have no step in the flow split, and the slopes they state", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        fc.double({ min: 0.05, max: 1, noNaN: true }),
        fc.constantFrom(combiningTeeLoss, dividingTeeLoss),
        (y, a, tee) => {
          const h = 1e-6;
          const below = tee(y - h, a);
          const above = tee(y + h, a);
          const here = tee(y, a);
          const scale = 10 / (a * a);
          expect(Math.abs(above.branch - below.branch)).toBeLessThan(2 * h * scale);
          expect(Math.abs(above.run - below.run)).toBeLessThan(2 * h * scale);
          // The corners of the published pieces have two slopes.
          if (Math.abs(y - 0.5) < 2 * h || Math.abs(y - (1 - 0.55 / 0.9)) < 2 * h) return;
          expect(Math.abs((above.branch - below.branch) / (2 * h) - here.branchSlope)).toBeLessThan(1e-7 * scale);
          expect(Math.abs((above.run - below.run) / (2 * h) - here.runSlope)).toBeLessThan(1e-7 * scale);
        },
      ),
    );
  });

  it("hold the split within 0 and 1", () => {
    expect(combiningTeeLoss(1.2, 1)).toEqual(combiningTeeLoss(1, 1));
    expect(dividingTeeLoss(-0.1, 1)).toEqual(dividingTeeLoss(0, 1));
  });
});
