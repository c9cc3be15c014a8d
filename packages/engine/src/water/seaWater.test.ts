import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  seaWater,
  seaWaterDensity,
  seaWaterDynamicViscosity,
  seaWaterSpecificHeat,
  seaWaterVapourPressure,
} from "./index.ts";

/** Largest relative difference allowed, as a closeness check. */
function expectWithin(actual: number, expected: number, relative: number): void {
  expect(Math.abs(actual / expected - 1)).toBeLessThan(relative);
}

describe("density of sea water", () => {
  // UNESCO Technical Papers in Marine Science 44 (1983), check values of the one-atmosphere equation.
  it.each([
    [0, 5, 999.96675],
    [0, 25, 997.04796],
    [35, 5, 1027.67547],
    [35, 25, 1023.34306],
  ])("meets the UNESCO check value at %d g/kg and %d C", (salinity, temperature, expected) => {
    expect(Math.abs(seaWaterDensity(salinity, temperature) - expected)).toBeLessThan(1e-4);
  });

  // TEOS-10 (IOC 2010), gsw 3.6.16 rho_t_exact at absolute salinity 35.16504 g/kg, which is practical salinity 35.
  it.each([
    [35, 15, 1025.976],
    [35, 25, 1023.3436],
    [35, 30, 1021.7261],
    [0, 25, 997.0476],
  ])("is within 0.01 kg/m3 of TEOS-10 at %d g/kg and %d C", (salinity, temperature, expected) => {
    expect(Math.abs(seaWaterDensity(salinity, temperature) - expected)).toBeLessThan(0.01);
  });
});

describe("viscosity of sea water", () => {
  // Sharqawy, Lienhard, Zubair 2010, eq. 22-23, recomputed outside this project.
  it.each([
    [0, 20, 1.00176e-3],
    [0, 25, 8.9015e-4],
    [35, 15, 1.21987e-3],
    [35, 20, 1.07663e-3],
    [35, 25, 9.5883e-4],
    [35, 30, 8.6065e-4],
  ])("follows Sharqawy et al. at %d g/kg and %d C", (salinity, temperature, expected) => {
    expectWithin(seaWaterDynamicViscosity(salinity, temperature), expected, 1e-5);
  });

  it("stays within 1 % of the older Landolt-Boernstein V/3a values at 15 and 25 C", () => {
    expectWithin(seaWaterDynamicViscosity(35, 15), 1.2125e-3, 0.01);
    expectWithin(seaWaterDynamicViscosity(35, 25), 9.5615e-4, 0.01);
  });

  // Introduction to Naval Architecture, table 5.1; last: ITTC 7.5-02-01-03 (value from memory).
  it.each([
    [10, 1.354e-6],
    [20, 1.054e-6],
    [30, 0.849e-6],
    [15, 1.1892e-6],
  ])("gives the kinematic viscosity of naval tables at %d C within 0.8 %%", (temperature, expected) => {
    expectWithin(seaWater(35, temperature).kinematicViscosity, expected, 0.008);
  });
});

describe("specific heat of sea water", () => {
  // gsw 3.6.16 cp_t_exact; pure water likewise.
  it.each([
    [35, 15, 3993.1],
    [35, 25, 3999.0],
    [35, 30, 4001.5],
    [0, 25, 4181.3],
  ])("is within 0.1 %% of TEOS-10 at %d g/kg and %d C", (salinity, temperature, expected) => {
    expectWithin(seaWaterSpecificHeat(salinity, temperature), expected, 1e-3);
  });

  it("gives the UNESCO 44 figure of 3997.7 J/(kg K) at 35 g/kg and 25 C, recomputed outside this project", () => {
    expect(seaWaterSpecificHeat(35, 25)).toBeCloseTo(3997.7, 1);
  });

  it("is within 0.1 % of Jamieson et al. 1969, 4000.8 J/(kg K) at 35 g/kg and 25 C", () => {
    expectWithin(seaWaterSpecificHeat(35, 25), 4000.8, 1e-3);
  });
});

describe("vapour pressure of sea water", () => {
  // IAPWS saturation with Raoult's law, recomputed outside this project; last: Weiss and Price 1980.
  it.each([
    [0, 25, 3169.8, 2e-5],
    [35, 15, 1670.9, 5e-5],
    [35, 25, 3105.2, 5e-5],
    [35, 30, 4160.4, 5e-5],
    [35, 25, 3106.2, 5e-4],
  ])("at %d g/kg and %d C is %d Pa", (salinity, temperature, expected, tolerance) => {
    expectWithin(seaWaterVapourPressure(salinity, temperature), expected, tolerance);
  });
});

describe("sea water as a whole", () => {
  const salinities = fc.double({ min: 0, max: 40, noNaN: true });
  const temperatures = fc.double({ min: 5, max: 34, noNaN: true });

  it("gets denser, stickier and less volatile with salt, and holds less heat", () => {
    fc.assert(
      fc.property(salinities, temperatures, (salinity, temperature) => {
        const less = seaWater(salinity, temperature);
        const more = seaWater(salinity + 1, temperature);
        expect(more.density).toBeGreaterThan(less.density);
        expect(more.dynamicViscosity).toBeGreaterThan(less.dynamicViscosity);
        expect(more.vapourPressure).toBeLessThan(less.vapourPressure);
        expect(more.specificHeat).toBeLessThan(less.specificHeat);
      }),
    );
  });

  it("gets thinner and lighter on warming above 5 C", () => {
    fc.assert(
      fc.property(salinities, temperatures, (salinity, temperature) => {
        const cold = seaWater(salinity, temperature);
        const warm = seaWater(salinity, temperature + 1);
        expect(warm.density).toBeLessThan(cold.density);
        expect(warm.kinematicViscosity).toBeLessThan(cold.kinematicViscosity);
        expect(warm.vapourPressure).toBeGreaterThan(cold.vapourPressure);
      }),
    );
  });
});
