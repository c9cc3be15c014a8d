import { describe, expect, it } from "vitest";
import { checkQuantity, convertQuantity, currencyOf, fromSI, toSI, unitsOf } from "./index.ts";

const problem = (q: unknown, dimension: Parameters<typeof checkQuantity>[1]): string => {
  const checked = checkQuantity(q, dimension);
  return checked.ok ? "accepted" : checked.problem;
};

describe("quantities from files", () => {
  it("keeps the value as written and the unit in its canonical spelling", () => {
    expect(checkQuantity({ value: 25, unit: "inches" }, "length")).toEqual({
      ok: true,
      value: { value: 25, unit: "in" },
    });
  });

  it.each<[unknown, RegExp]>([
    [25, /25 has no unit.*"value": 25/],
    ["25 mm", /"25 mm" is not a length/],
    [null, /null is not a length/],
    [[25, "mm"], /a list is not a length/],
    [{}, /value is missing.*has no unit/],
    [{ value: 25 }, /25 has no unit; add one/],
    [{ value: Number.NaN, unit: "mm" }, /NaN \(in mm\) is not a finite number/],
    [{ value: Number.POSITIVE_INFINITY, unit: "mm" }, /Infinity \(in mm\) is not a finite number/],
    [{ value: "25", unit: "mm" }, /"25" \(in mm\) is text/],
    [{ value: 25, unit: 3 }, /unit 3 of 25 is not text/],
    [{ value: 25, unit: "milimeter" }, /did you mean "mm"/],
    [{ value: 25, unit: "kPa" }, /25 kPa is a head or a pressure, not a length/],
    [{ value: 25, unit: "parsnip" }, /unknown unit "parsnip".*accepted units: m, cm, mm, in, ft, ft-in/],
    [{ value: 1e307, unit: "in" }, /too large/],
  ])("refuses %j as a length and says what to do", (q, why) => {
    expect(problem(q, "length")).toMatch(why);
  });

  it("names a broken value and a broken unit together", () => {
    expect(problem({ value: Number.NaN, unit: "mmm" }, "length")).toMatch(/NaN.*mmm.*did you mean/);
  });

  it("does not take the names of object internals for units", () => {
    for (const unit of ["constructor", "__proto__", "toString"])
      expect(problem({ value: 1, unit }, "length")).toMatch(/unknown unit/);
  });

  it("throws where an unchecked unit, value or dimension reaches a conversion", () => {
    expect(() => toSI({ value: 1, unit: "L" }, "length")).toThrow(/"L" is not a unit of a length/);
    expect(() => fromSI(1, "L", "length")).toThrow(RangeError);
    expect(() => toSI({ value: 0.9, unit: "SG 25/25C" }, "salinity")).toThrow(RangeError);
    expect(() => toSI({ value: 1, unit: "m" }, "colour" as "length")).toThrow(/not a dimension/);
  });
});

describe("money", () => {
  it("never turns one currency into another", () => {
    const turned = convertQuantity({ value: 12, unit: "EUR" }, "USD", "money");
    expect(turned.ok ? "accepted" : turned.problem).toMatch(/12 EUR cannot be turned into USD/);
    expect(convertQuantity({ value: 310, unit: "EUR/MWh" }, "EUR/kWh", "tariff")).toEqual({
      ok: true,
      value: { value: 0.31, unit: "EUR/kWh" },
    });
    expect(convertQuantity({ value: 0.3, unit: "GBP/kWh" }, "EUR/kWh", "tariff").ok).toBe(false);
  });

  it("tells which currency a unit carries", () => {
    expect([currencyOf("EUR/kWh"), currencyOf("£"), currencyOf("kWh"), currencyOf("mm")]).toEqual([
      "EUR",
      "GBP",
      undefined,
      undefined,
    ]);
  });

  // ISO 4217 codes are three capital letters, each used once.
  it("knows each currency once, by three capital letters", () => {
    const codes = unitsOf("money").map((unit) => unit.symbol);
    expect(new Set(codes).size).toBe(codes.length);
    expect(codes.every((code) => /^[A-Z]{3}$/.test(code))).toBe(true);
    expect(codes.slice(0, 3)).toEqual(["EUR", "USD", "GBP"]);
  });
});
