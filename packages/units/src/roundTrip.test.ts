import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dimensions, unitTable } from "./dimensions.ts";
import { checkQuantity, formatQuantity, fromSI, parseQuantity, siUnit, toSI, unitSystems, unitsOf } from "./index.ts";

const pairs = dimensions.flatMap((dimension) => unitTable[dimension].map((unit) => ({ dimension, unit })));
const anyPair = fc.constantFrom(...pairs);
// Most rows are currencies, all alike; four of them are enough where the other units must not drown.
const shopPair = fc.constantFrom(
  ...pairs.filter(({ unit }) => !/^(?!EUR|USD|GBP|JPY)[A-Z]{3}(\/|$)/.test(unit.symbol)),
);

/** Values that mean something in every unit, and for the bounded scales only those inside. */
const valueIn = (symbol: string): fc.Arbitrary<number> =>
  symbol.startsWith("SG")
    ? fc.double({ min: 1, max: 1.0315, noNaN: true })
    : symbol === "mS/cm"
      ? fc.double({ min: 4, max: 62, noNaN: true })
      : symbol === "K"
        ? fc.double({ min: 0, max: 1e6, noNaN: true })
        : symbol === "C" || symbol === "F"
          ? fc.double({ min: -273, max: 1e6, noNaN: true })
          : fc.double({ min: -1e9, max: 1e9, noNaN: true });

const pairWithValue = (pair: typeof anyPair) =>
  pair.chain(({ dimension, unit }) =>
    // Below 1e-290 a double has fewer digits than are compared here; so has a temperature near zero beside its offset.
    valueIn(unit.symbol).map((value) => ({
      dimension,
      unit,
      value: Math.abs(value) < (dimension === "temperature" ? 1 : 1e-290) ? 0 : value,
    })),
  );

describe("round trips", () => {
  it("brings every value in every unit back through SI unchanged", () => {
    fc.assert(
      fc.property(pairWithValue(anyPair), ({ dimension, unit, value }) => {
        const back = fromSI(toSI({ value, unit: unit.symbol }, dimension), unit.symbol, dimension);
        // Offsets of temperature scales and the salt equations lose what is small beside 273 and 35.
        expect(Math.abs(back - value)).toBeLessThanOrEqual(
          1e-14 * Math.abs(value) + (dimension === "temperature" || dimension === "salinity" ? 2e-12 : 1e-300),
        );
      }),
      { numRuns: 5000 },
    );
  });

  it("reads what it printed as the quantity it printed, to the printed digits, and prints it the same again", () => {
    fc.assert(
      fc.property(
        pairWithValue(shopPair),
        fc.option(fc.integer({ min: 1, max: 12 })),
        ({ dimension, unit, value }, digits) => {
          const options = digits === null ? {} : { digits };
          const text = formatQuantity(toSI({ value, unit: unit.symbol }, dimension), dimension, unit.symbol, options);
          const read = parseQuantity(text, dimension, unit.symbol === "1" ? "1" : undefined);
          if (!read.ok && unit.refuse !== undefined) return; // rounding can leave a bounded scale by its last digit
          if (!read.ok) throw new Error(`${text}: ${read.problem}`);
          const again = formatQuantity(toSI(read.value, dimension), dimension, unit.symbol, options);
          expect(again).toBe(text);
          // Below one foot "ft-in" prints inches alone, so the two lengths are compared in inches.
          if (unit.symbol === "ft-in")
            expect(Math.abs(toSI(read.value, dimension) / 0.0254 - value * 12)).toBeLessThan(1 / 32 + 1e-5);
          else if (digits !== null)
            expect(Math.abs(read.value.value - value)).toBeLessThan(
              0.501 * 10 ** (1 - digits) * Math.abs(value) + 1e-11,
            );
          expect(parseQuantity(again, dimension, unit.symbol)).toEqual(parseQuantity(text, dimension, unit.symbol));
        },
      ),
      { numRuns: 5000 },
    );
  });

  it("never prints a negative zero, a hyphen for a minus sign, or NaN", () => {
    fc.assert(
      fc.property(
        shopPair,
        fc.double(),
        fc.option(fc.integer({ min: 1, max: 12 })),
        ({ dimension, unit }, si, digits) => {
          const text = formatQuantity(si, dimension, unit.symbol, {
            withUnit: false,
            ...(digits === null ? {} : { digits }),
          });
          expect(text).not.toMatch(/^[-−]0?[.0]*$|NaN|Infinity|^-/);
          expect(text.length).toBeGreaterThan(0);
        },
      ),
      { numRuns: 5000 },
    );
  });

  it("finds every unit by each of its spellings, in capitals too unless the case counts", () => {
    for (const { dimension, unit } of pairs)
      for (const spelling of [unit.symbol, ...unit.aliases]) {
        expect(checkQuantity({ value: 30, unit: spelling }, dimension).ok || unit.refuse !== undefined).toBe(true);
        const probe = { value: unit.symbol.startsWith("SG") ? 1.02 : 50, unit: spelling };
        expect(checkQuantity(probe, dimension)).toEqual({ ok: true, value: { ...probe, unit: unit.symbol } });
        if (!unit.caseSensitive)
          expect(checkQuantity({ ...probe, unit: spelling.toUpperCase() }, dimension)).toEqual({
            ok: true,
            value: { ...probe, unit: unit.symbol },
          });
      }
  });

  it("names a known unit in every system and takes the base unit as it is", () => {
    for (const dimension of dimensions) {
      for (const system of Object.values(unitSystems))
        expect(unitsOf(dimension).map((unit) => unit.symbol)).toContain(system[dimension]);
      expect(toSI({ value: 7.25, unit: siUnit[dimension] }, dimension)).toBe(7.25);
    }
  });

  it("survives any text at all with a value or a problem", () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.stringMatching(/^[-+]?[0-9.,'"/ e]{0,12}[a-zA-Z/%"' ]{0,6}$/)),
        fc.constantFrom(...dimensions),
        (text, dimension) => {
          const read = parseQuantity(text, dimension);
          if (read.ok) expect(Number.isFinite(toSI(read.value, dimension))).toBe(true);
          else expect(read.problem).not.toBe("");
        },
      ),
      { numRuns: 5000 },
    );
  });

  it("survives any value at all in place of a quantity", () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.anything(), fc.record({ value: fc.anything(), unit: fc.anything() })),
        fc.constantFrom(...dimensions),
        (q, dimension) => {
          const checked = checkQuantity(q, dimension);
          if (checked.ok) expect(Number.isFinite(toSI(checked.value, dimension))).toBe(true);
        },
      ),
      { numRuns: 3000 },
    );
  });
});
