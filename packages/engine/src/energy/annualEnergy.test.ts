import { describe, expect, it } from "vitest";
import { annualCost, annualEnergy, secondsPerYear } from "./index.ts";

describe("a year", () => {
  // Published: NIST Special Publication 811 (2008) appendix B.8, year (365 days) = 3.1536e7 s; definition of hour and day.
  it("has 365 days of 24 hours, 8760 in all", () => {
    expect(secondsPerYear).toBe(3.1536e7);
    expect(secondsPerYear / 3600).toBe(8760);
  });

  // Analytic: P t over five times the same year.
  it("costs a fifth of what five such years cost, to the last digit", () => {
    const watts = 37.3;
    const overFive = ((watts * 5 * secondsPerYear) / 3.6e6) * 0.31;
    expect(overFive / annualCost(watts, 0.31)).toBeCloseTo(5, 14);
    expect(annualEnergy(watts)).toBe(watts * 3.1536e7);
  });
});
