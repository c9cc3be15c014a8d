import { describe, expect, it } from "vitest";
import { type Dimension, parseQuantity } from "./index.ts";

// What a person means by each text is the definition of the notation: analytic.
const readings: readonly [string, Dimension, string | undefined, number, string][] = [
  ["3' 4 1/2\"", "length", undefined, 3.375, "ft-in"],
  ["3′ 4½″", "length", undefined, 3.375, "ft-in"],
  ["3’4.5”", "length", undefined, 3.375, "ft-in"],
  ["-3 ft 4 1/2 in", "length", undefined, -3.375, "ft-in"],
  ["3 feet 6 inches", "head", undefined, 3.5, "ft-in"],
  ["3'6", "length", undefined, 3.5, "ft-in"],
  ["3' 1/2''", "length", undefined, 3 + 1 / 24, "ft-in"],
  ["3.375 ft-in", "length", undefined, 3.375, "ft-in"],
  ["1.5 in", "length", undefined, 1.5, "in"],
  ['1 1/2"', "length", undefined, 1.5, "in"],
  ["1-1/2 in.", "length", undefined, 1.5, "in"],
  ["¾ inch", "length", undefined, 0.75, "in"],
  ["4'", "length", undefined, 4, "ft"],
  ["25,4 mm", "length", undefined, 25.4, "mm"],
  ["0,125 in", "length", undefined, 0.125, "in"],
  ["1234,567 mm", "length", undefined, 1234.567, "mm"],
  ["1,234.5 L/h", "flow", undefined, 1234.5, "L/h"],
  ["1.234,5 l/h", "flow", undefined, 1234.5, "L/h"],
  ["1,234,567 L/h", "flow", undefined, 1_234_567, "L/h"],
  ["12 500 L/h", "flow", undefined, 12_500, "L/h"],
  ["800 US gal/h", "flow", undefined, 800, "US gal/h"],
  ["800 gph", "flow", undefined, 800, "US gal/h"],
  ["800 GPH", "flow", undefined, 800, "US gal/h"],
  ["12 gallons per minute", "flow", undefined, 12, "US gal/min"],
  ["3000 lph", "flow", undefined, 3000, "L/h"],
  ["3 m³/h", "flow", undefined, 3, "m3/h"],
  ["4 ft", "head", undefined, 4, "ft"],
  ["5 psi", "head", undefined, 5, "psi"],
  ["120 gal", "volume", undefined, 120, "US gal"],
  ["35 ppt", "salinity", undefined, 35, "ppt"],
  ["1.026", "salinity", "SG 25/25C", 1.026, "SG 25/25C"],
  ["1.026 sg 77/77F", "salinity", undefined, 1.026, "SG 25/25C"],
  ["53 mS/cm", "salinity", undefined, 53, "mS/cm"],
  ["78 °F", "temperature", undefined, 78, "F"],
  ["−2 C", "temperature", undefined, -2, "C"],
  ["€0.31/kWh", "tariff", undefined, 0.31, "EUR/kWh"],
  ["0,31 EUR/kWh", "tariff", undefined, 0.31, "EUR/kWh"],
  ["0.28 chf/kWh", "tariff", undefined, 0.28, "CHF/kWh"],
  ["$ 249.90", "money", undefined, 249.9, "USD"],
  ["NOK 1200", "money", undefined, 1200, "NOK"],
  ["42 dBA", "soundLevel", undefined, 42, "dB(A)"],
  ["80 %", "speedFraction", undefined, 80, "%"],
  ["0.8", "speedFraction", undefined, 0.8, "1"],
  ["5 1/h", "turnover", undefined, 5, "1/h"],
  ["10x/h", "turnover", undefined, 10, "1/h"],
  ["1.05×10⁻⁶ m²/s", "kinematicViscosity", undefined, 1.05e-6, "m2/s"],
  ["1e-6 m2/s", "kinematicViscosity", undefined, 1e-6, "m2/s"],
  ["5 years", "time", undefined, 5, "a"],
];

describe("typed quantities", () => {
  it.each(readings)("reads %s as a %s", (text, dimension, defaultUnit, value, unit) => {
    const read = parseQuantity(text, dimension, defaultUnit);
    if (!read.ok) throw new Error(read.problem);
    expect(read.value.unit).toBe(unit);
    expect(read.value.value).toBeCloseTo(value, 14);
  });

  it.each<[string, Dimension, RegExp]>([
    ["1,250 L/h", "flow", /1\.250 or as 1250/],
    ["25", "length", /"25" has no unit.*mm/],
    ["", "length", /nothing was entered/],
    ["mm", "length", /does not begin with a number/],
    ["1/0 in", "length", /divides by zero/],
    ["25 mmm", "length", /25 mmm.*did you mean "mm"\?.*accepted units: m, cm, mm/],
    ["25 L", "length", /25 L is a volume, not a length/],
    ["3.5' 4\"", "length", /whole feet/],
    ["3' 14\"", "length", /below 12/],
    ["1.026 SG", "salinity", /at which temperature/],
    ["0.99 SG 25/25C", "salinity", /lighter than fresh water/],
    ["1.2 SG 25/25C", "salinity", /beyond 1\.03/],
    ["500 mS/cm", "salinity", /outside 3\.\d to 6\d\.\d mS\/cm/],
    ["53 MS/cm", "salinity", /did you mean "mS\/cm"/],
    ["-300 C", "temperature", /absolute zero/],
    ["5 mPa", "pressure", /unknown unit "mPa"/],
    ["1.2.3 m", "length", /"1\.2\.3" is not a number/],
    ["25, mm", "length", /ends in a comma/],
    ["1e999 m", "length", /too large/],
    ["0.3 kWh", "tariff", /is an energy, not a tariff/],
    ["0.3 XQZ/kWh", "tariff", /ISO 4217/],
  ])("refuses %s as a %s and says why", (text, dimension, why) => {
    const read = parseQuantity(text, dimension);
    expect(read.ok ? `accepted ${read.value.value} ${read.value.unit}` : read.problem).toMatch(why);
  });
});

// The rule itself is our own; how Germany and Britain write decimals: CLDR 48, numbers/symbols.
describe("quantities of a writer with a decimal comma", () => {
  it.each([
    ["1,026 m", 1.026],
    ["25,4 mm", 25.4],
    ["25.4 mm", 25.4],
    ["0.125 m", 0.125],
    ["1.234,5 mm", 1234.5],
    ["1.234.567 mm", 1_234_567],
    ["12 500 mm", 12_500],
  ])("reads %s", (text, value) => {
    const read = parseQuantity(text, "length", undefined, ",");
    expect(read.ok && read.value.value).toBe(value);
  });

  it("refuses a point that could part thousands, and says both readings", () => {
    const read = parseQuantity("1.234 mm", "length", undefined, ",");
    expect(read.ok ? "" : read.problem).toMatch(/1,234 or as 1234; write it without a point/);
  });
});
