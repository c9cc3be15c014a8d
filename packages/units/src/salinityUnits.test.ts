import { describe, expect, it } from "vitest";
import {
  conductivityRatio,
  fromSI,
  practicalSalinity,
  pureWaterDensity,
  salinityFromDensity,
  seaWaterDensity,
  toSI,
} from "./index.ts";

describe("sea-water density", () => {
  // UNESCO Technical Papers in Marine Science 44 (1983), density check values, temperatures on the 1968 scale.
  it.each([
    [0, 5, 999.96675],
    [0, 25, 997.04796],
    [35, 5, 1027.67547],
    [35, 25, 1023.34306],
  ])("is EOS-80's at salinity %d and %d C: %d kg/m3", (salinity, temperature, density) => {
    expect(seaWaterDensity(salinity, temperature)).toBeCloseTo(density, 5);
  });

  it("is inverted to rounding over the whole range", () => {
    for (let t = 0; t <= 40; t += 5)
      for (let s = 0; s <= 42; s += 0.7)
        expect(Math.abs(salinityFromDensity(seaWaterDensity(s, t), t) - s)).toBeLessThan(1e-11);
  });

  it("has no salinity below that of pure water", () => {
    expect(salinityFromDensity(pureWaterDensity(20) - 1, 20)).toBeNaN();
  });
});

describe("specific gravity", () => {
  // Published densities divided: UNESCO 44 at 25 C, and TEOS-10 (IOC 2010; 1023.3436 over 997.0476 kg/m3), which is independent.
  it.each([
    ["EOS-80 check values", 1023.34306 / 997.04796, 5e-4],
    ["TEOS-10", 1023.3436 / 997.0476, 2e-3],
  ])("of salinity 35 at 25 C over water at 25 C agrees with %s", (_, gravity, tolerance) => {
    expect(Math.abs(toSI({ value: gravity, unit: "SG 25/25C" }, "salinity") - 35)).toBeLessThan(tolerance);
  });

  // TEOS-10 sea water at 15 C 1025.9760 kg/m3; pure water 999.1026 kg/m3 at 15 C (IAPWS-95, from memory). The 60 F reference is 0.56 C warmer.
  it("of salinity 35 at 60 F lies within 0.0001 of TEOS-10's at 15 C", () => {
    expect(Math.abs(fromSI(35, "SG 15.56/15.56C", "salinity") - 1025.976 / 999.1026)).toBeLessThan(1e-4);
  });

  it("falls as the reference temperature rises, because salt water expands more", () => {
    const at = (unit: string) => fromSI(35, unit, "salinity");
    expect(at("SG 15.56/15.56C")).toBeGreaterThan(at("SG 20/20C"));
    expect(at("SG 20/20C")).toBeGreaterThan(at("SG 25/25C"));
  });

  it("is one for fresh water at every reference", () => {
    for (const unit of ["SG 25/25C", "SG 20/20C", "SG 60/60F"]) expect(fromSI(0, unit, "salinity")).toBe(1);
  });

  it("means different salinities at different references", () => {
    const cold = toSI({ value: 1.026, unit: "SG 60/60F" }, "salinity");
    const warm = toSI({ value: 1.026, unit: "SG 77/77F" }, "salinity");
    expect(warm - cold).toBeGreaterThan(0.5);
  });
});

describe("practical salinity", () => {
  // UNESCO Technical Papers in Marine Science 44 (1983), page 9.
  it.each([
    [1, 15, 0, 35],
    [1.2, 20, 2000, 37.245628],
    [0.65, 5, 1500, 27.995347],
  ])("at ratio %d, %d C, %d dbar is %d", (ratio, t, p, salinity) => {
    expect(practicalSalinity(ratio, t, p)).toBeCloseTo(salinity, 6);
  });

  // Same paper and page, the ratio already reduced to one temperature and pressure (Rt); rt of eq. 3 multiplies it back.
  it.each([
    [1.0568875, 20, 37.245628],
    [0.81705885, 5, 27.995347],
  ])("at the reduced ratio %d and %d C is %d", (reduced, t, salinity) => {
    const rt = conductivityRatio(35, t);
    expect(practicalSalinity(reduced * rt, t)).toBeCloseTo(salinity, 5);
  });

  it("is inverted to rounding from 2 to 42", () => {
    for (const t of [5, 15, 25, 30])
      for (let s = 2; s <= 42; s += 0.5)
        expect(Math.abs(practicalSalinity(conductivityRatio(s, t), t) - s)).toBeLessThan(1e-11);
  });

  // Conductivity of standard sea water at 25 C is given as about 53 mS/cm in oceanographic handbooks (from memory).
  it("makes sea water of 35 read 53 mS/cm at 25 C", () => {
    expect(Math.abs(fromSI(35, "mS/cm", "salinity") - 53)).toBeLessThan(0.15);
  });

  it("reads no salt as no conductivity", () => {
    expect(fromSI(0, "mS/cm", "salinity")).toBe(0);
  });
});
