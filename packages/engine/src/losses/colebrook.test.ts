import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { colebrook } from "./colebrook.ts";
import { churchill, haaland, swameeJain } from "./explicitFrictionFactors.ts";

function residual(f: number, reynolds: number, relativeRoughness: number): number {
  const x = 1 / Math.sqrt(f);
  return x + 2 * Math.log10(relativeRoughness / 3.7 + (2.51 * x) / reynolds);
}

describe("Colebrook's turbulent friction factor", () => {
  // fluids 1.0.22 Colebrook, an exact solution by the Lambert W function.
  it.each([
    [4e3, 0, 0.0399070140556349],
    [1e4, 0, 0.03088295035348769],
    [1e5, 0, 0.01798977308427384],
    [1e5, 1e-4, 0.018513866077471648],
    [1e5, 1e-3, 0.022174535944515097],
    [1e6, 1e-4, 0.013441437692508489],
    [1e7, 1e-2, 0.0379098257518066],
    [3e4, 6e-5, 0.023645789707011377],
    [5e3, 0.05, 0.07594779848272605],
    [1e8, 1e-6, 0.00643255651969228],
  ])("equals the exact solution at Re %d and e/D %d", (reynolds, relativeRoughness, expected) => {
    expect(Math.abs(colebrook(reynolds, relativeRoughness) / expected - 1)).toBeLessThan(1e-12);
  });

  it("reads 0.022 on the Moody chart at Re 1e5 and e/D 0.001 (Moody 1944, from memory)", () => {
    expect(colebrook(1e5, 1e-3)).toBeCloseTo(0.022, 3);
  });

  it("is within 1.5 % of 0.0179 in Crane TP-410 example 7-1, smooth pipe at Re 1.006e5", () => {
    expect(Math.abs(colebrook(1.006e5, 0) / 0.0179 - 1)).toBeLessThan(0.015);
  });

  it("satisfies the implicit formula to 1e-12 from Re 4e3 to 1e8 and smooth to e/D 0.05", () => {
    fc.assert(
      fc.property(
        fc.double({ min: Math.log(4e3), max: Math.log(1e8), noNaN: true }),
        fc.double({ min: 0, max: 0.05, noNaN: true }),
        (logarithm, relativeRoughness) => {
          const reynolds = Math.exp(logarithm);
          const f = colebrook(reynolds, relativeRoughness);
          expect(Math.abs(residual(f, reynolds, relativeRoughness))).toBeLessThan(1e-12);
        },
      ),
      { numRuns: 20_000 },
    );
  });

  it("satisfies it too where walls are nearly smooth", () => {
    fc.assert(
      fc.property(
        fc.double({ min: Math.log(4e3), max: Math.log(1e8), noNaN: true }),
        fc.double({ min: -9, max: -2, noNaN: true }),
        (logarithm, exponent) => {
          const reynolds = Math.exp(logarithm);
          const f = colebrook(reynolds, 10 ** exponent);
          expect(Math.abs(residual(f, reynolds, 10 ** exponent))).toBeLessThan(1e-12);
        },
      ),
      { numRuns: 20_000 },
    );
  });

  it("still solves the formula outside its physical range, down to Re 1e-3 and up to e/D 3", () => {
    for (const reynolds of [1e-3, 0.1, 1, 10, 99, 101, 1e3]) {
      for (const relativeRoughness of [0, 1e-3, 0.05, 1, 3]) {
        const x = 1 / Math.sqrt(colebrook(reynolds, relativeRoughness));
        expect(relativeRoughness / 3.7 + (2.51 * x) / reynolds).toBeCloseTo(10 ** (-x / 2), 11);
      }
    }
  });

  it("has no finite value where the roughness is 3.7 bores or more", () => {
    expect(colebrook(1e5, 4)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe("explicit friction factors", () => {
  // fluids 1.0.22: Haaland, Swamee_Jain_1976 (which writes 5.74 as 6.97^0.9, hence 2e-6), Churchill_1977.
  it.each([
    [1e5, 0, 0.017824939200764653, 0.017862555049240728, 0.01787482162819732],
    [1e5, 1e-3, 0.021966214014076613, 0.022342399325420106, 0.0223432355077068],
    [1e7, 1e-2, 0.03798529437641113, 0.037917353461131405, 0.03789658684342646],
    [5e3, 0.05, 0.07647750082847692, 0.07799218989431017, 0.07788833421581576],
  ])("repeat the reference library at Re %d and e/D %d", (reynolds, e, byHaaland, bySwameeJain, byChurchill) => {
    expect(haaland(reynolds, e)).toBeCloseTo(byHaaland, 12);
    expect(Math.abs(swameeJain(reynolds, e) / bySwameeJain - 1)).toBeLessThan(2e-6);
    expect(churchill(reynolds, e)).toBeCloseTo(byChurchill, 12);
  });

  // Churchill 1977, recomputed with fluids 1.0.22.
  it.each([
    [1000, 0.064],
    [2000, 0.03204],
    [2300, 0.03084],
    [3000, 0.04297],
    [4000, 0.04059],
    [1e5, 0.01787],
  ])("give Churchill's curve for smooth pipe at Re %d", (reynolds, expected) => {
    expect(Math.abs(churchill(reynolds, 0) - expected)).toBeLessThan(1e-5);
  });

  // Deviations recomputed with fluids 1.0.22.
  it.each([
    [4e3, 0, 0.016],
    [1e5, 0, -0.007],
    [1e5, 1e-3, 0.008],
  ])("put Swamee-Jain off Colebrook at Re %d and e/D %d by the known share %d", (reynolds, e, share) => {
    expect(swameeJain(reynolds, e) / colebrook(reynolds, e) - 1).toBeCloseTo(share, 3);
  });

  it("keep Haaland within 1.5 % of Colebrook from Re 4000 on", () => {
    fc.assert(
      fc.property(
        fc.double({ min: Math.log(4e3), max: Math.log(1e8), noNaN: true }),
        fc.double({ min: -6, max: Math.log10(0.05), noNaN: true }),
        (logarithm, exponent) => {
          const reynolds = Math.exp(logarithm);
          const e = 10 ** exponent;
          expect(Math.abs(haaland(reynolds, e) / colebrook(reynolds, e) - 1)).toBeLessThan(0.0151);
        },
      ),
    );
  });
});
