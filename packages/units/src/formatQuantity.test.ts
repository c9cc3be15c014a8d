import { describe, expect, it } from "vitest";
import { type Dimension, formatFeetAndInches, formatQuantity, toSI } from "./index.ts";

const s = "\u202f";

// Rounding of exactly converted numbers: analytic.
describe("printed quantities", () => {
  it.each<[number, string, Dimension, string]>([
    [25, "mm", "length", `25${s}mm`],
    [26.64, "mm", "length", `26.6${s}mm`],
    [1500, "mm", "length", `1500${s}mm`],
    [3141.59, "L/h", "flow", `3142${s}L/h`],
    [24.96, "C", "temperature", `25${s}°C`],
    [-1.86, "C", "temperature", `−1.9${s}°C`],
    [-0.04, "C", "temperature", `0${s}°C`],
    [1.02637, "SG 25/25C", "salinity", `1.0264${s}SG 25/25C`],
    [35, "ppt", "salinity", `35${s}ppt`],
    [12.5, "EUR", "money", `12.50${s}EUR`],
    [1250, "JPY", "money", `1250${s}JPY`],
    [0.31, "EUR/kWh", "tariff", `0.31${s}EUR/kWh`],
    [3, "m3/h", "flow", `3${s}m³/h`],
    [1023.343, "kg/m3", "density", `1023.3${s}kg/m³`],
    [9.3696e-7, "m2/s", "kinematicViscosity", `9.37×10⁻⁷${s}m²/s`],
    [8.24, "1/h", "turnover", `8.2${s}/h`],
    [0.75, "1", "speedFraction", "0.75"],
    [75, "%", "speedFraction", `75${s}%`],
    [3.375, "ft-in", "length", "3' 4 1/2\""],
  ])("prints %d %s of %s as %s", (value, unit, dimension, text) => {
    expect(formatQuantity(toSI({ value, unit }, dimension), dimension, unit)).toBe(text);
  });

  it("keeps zeros where digits are asked for, and never rounds away digits before the point", () => {
    expect(formatQuantity(3, "length", "m", { digits: 3 })).toBe(`3.00${s}m`);
    expect(formatQuantity(9.996, "length", "m", { digits: 3 })).toBe(`10.0${s}m`);
    expect(formatQuantity(1234, "length", "m", { digits: 2 })).toBe(`1234${s}m`);
    expect(formatQuantity(0, "length", "m", { digits: 3, withUnit: false })).toBe("0.00");
  });

  it("prints a dash where there is no number", () => {
    for (const si of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])
      expect([formatQuantity(si, "flow", "L/h"), formatFeetAndInches(si)]).toEqual(["—", "—"]);
  });

  it("prints a head as pressure with the density it is told", () => {
    expect(formatQuantity(1, "head", "kPa", { density: 1000, digits: 6 })).toBe(`9.80665${s}kPa`);
  });
});

describe("feet and inches", () => {
  it.each<[number, number, string]>([
    [40.5, 16, "3' 4 1/2\""],
    [0, 16, '0"'],
    [0.5, 16, '1/2"'],
    [11.99, 16, "1' 0\""],
    [36, 16, "3' 0\""],
    [36.0625, 16, "3' 1/16\""],
    [36.0625, 8, "3' 1/8\""],
    [36.0624, 8, "3' 0\""],
    [-40.5, 16, "−3' 4 1/2\""],
    [-0.01, 16, '0"'],
    [23.97, 1, "2' 0\""],
  ])("prints %d in at 1/%d as %s", (inches, denominator, text) => {
    expect(formatFeetAndInches(inches * 0.0254, denominator)).toBe(text);
  });

  it("refuses a broken denominator", () => {
    for (const denominator of [0, -8, 2.5, Number.NaN])
      expect(() => formatFeetAndInches(1, denominator)).toThrow(RangeError);
  });
});
