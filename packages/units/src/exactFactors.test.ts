import { describe, expect, it } from "vitest";
import { type Dimension, toSI } from "./index.ts";

/** Factors to SI as printed in NIST Special Publication 811 (2008), appendix B.8 and B.9; values from memory of that
 *  table unless the definition itself is given. `exact` rows are printed bold there or follow from a definition. */
const exact: readonly [Dimension, string, number, string][] = [
  ["length", "in", 0.0254, "1 in = 25.4 mm"],
  ["length", "ft", 0.3048, "12 in"],
  ["area", "in2", 6.4516e-4, "(25.4 mm)^2"],
  ["area", "ft2", 9.290304e-2, "144 in2"],
  ["volume", "US gal", 3.785411784e-3, "231 in3"],
  ["volume", "imp gal", 4.54609e-3, "UK Units of Measurement Regulations 1995"],
  ["volume", "ft3", 2.8316846592e-2, "1728 in3"],
  ["volume", "in3", 1.6387064e-5, "(25.4 mm)^3"],
  ["mass", "lb", 0.45359237, "definition"],
  ["mass", "oz", 0.028349523125, "lb / 16"],
  ["pressure", "atm", 101_325, "definition"],
  ["pressure", "mbar", 100, "definition"],
  ["pressure", "bar", 1e5, "definition"],
  ["pressure", "mH2O", 9806.65, "conventional water column"],
  ["energy", "kWh", 3.6e6, "definition"],
  ["energy", "BTU", 1055.05585262, "International Table Btu, definition"],
  ["power", "PS", 735.49875, "horsepower, metric"],
  ["kinematicViscosity", "cSt", 1e-6, "definition"],
  ["angle", "deg", Math.PI / 180, "definition"],
];

const printed: readonly [Dimension, string, number][] = [
  ["pressure", "psi", 6.894757e3],
  ["pressure", "inHg", 3.386389e3],
  ["pressure", "mmHg", 1.333224e2],
  ["pressure", "inH2O", 2.490889e2],
  ["power", "hp", 7.456999e2],
  ["power", "BTU/h", 2.930711e-1],
  ["density", "lb/ft3", 1.601846e1],
  ["flow", "US gal/min", 6.30902e-5],
  ["flow", "ft3/s", 2.831685e-2],
  ["velocity", "ft/s", 3.048e-1],
];

describe("conversion factors", () => {
  it.each(exact)("makes one %s in %s exactly %d SI (%s)", (dimension, unit, factor) => {
    expect(Math.abs(toSI({ value: 1, unit }, dimension) / factor - 1)).toBeLessThan(3e-16);
  });

  it.each(printed)("makes one %s in %s the %d printed by NIST to seven digits", (dimension, unit, factor) => {
    expect(Math.abs(toSI({ value: 1, unit }, dimension) / factor - 1)).toBeLessThan(6e-7);
  });

  it("takes 231 cubic inches for a US gallon", () => {
    expect(toSI({ value: 231, unit: "in3" }, "volume")).toBeCloseTo(toSI({ value: 1, unit: "US gal" }, "volume"), 17);
  });

  // Fixed points of the scales by definition; 98.6 F = 37 C is their arithmetic.
  it.each([
    [32, "F", 0],
    [212, "F", 100],
    [98.6, "F", 37],
    [-40, "F", -40],
    [273.15, "K", 0],
  ])("reads %d %s as %d C", (value, unit, celsius) => {
    expect(toSI({ value, unit }, "temperature")).toBeCloseTo(celsius, 12);
  });

  it("stands one psi up as 2.3067 ft of fresh water (2.31 ft in every pump handbook) and less of sea water", () => {
    const fresh = toSI({ value: 1, unit: "psi" }, "head", { density: 1000 });
    expect(fresh / 0.3048).toBeCloseTo(2.3067, 4); // analytic: 6894.757 / (9806.65 * 0.3048)
    expect(toSI({ value: 1, unit: "psi" }, "head")).toBeCloseTo(fresh / 1.025, 12);
  });

  it("refuses a density that holds nothing up", () => {
    expect(() => toSI({ value: 1, unit: "psi" }, "head", { density: 0 })).toThrow(RangeError);
    expect(() => toSI({ value: 1, unit: "psi" }, "head", { density: Number.NaN })).toThrow(/density/);
  });
});
