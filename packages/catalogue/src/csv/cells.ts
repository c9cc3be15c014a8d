import { type CellDimension, knownUnit, toInside, unitNames } from "./cellUnits.ts";

/** A cell read, or what is wrong with it and how to mend it. */
export type Read<Value> = { ok: true; value: Value } | { ok: false; problem: string; fix: string };

const plainNumber = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;
const decimalComma = /^[+-]?\d*,\d+(e[+-]?\d+)?$/i;
const numberWithUnit = /^([+-]?[\d.,]+(?:e[+-]?\d+)?)\s*([^\d\s.,].*)$/i;

/** Reads a bare number. A decimal comma is understood where the table's delimiter is not a comma. */
export function readNumber(text: string, commaIsDecimal: boolean): Read<number> {
  const bare = commaIsDecimal && decimalComma.test(text) ? text.replace(",", ".") : text;
  if (!plainNumber.test(bare)) {
    const fix = text.includes(",") ? "write 1234.5 without commas between the digits" : "write a number such as 12.5";
    return { ok: false, problem: "is not a number", fix };
  }
  const value = Number(bare);
  if (!Number.isFinite(value))
    return { ok: false, problem: "is too large to be a number", fix: "write a finite number" };
  return { ok: true, value };
}

/** Reads a number, with a unit of its own or in the heading's unit, into the catalogue's units. */
export function readQuantity(
  text: string,
  dimension: CellDimension,
  unit: string,
  commaIsDecimal: boolean,
): Read<number> {
  const bare = readNumber(text, commaIsDecimal);
  if (bare.ok) return { ok: true, value: toInside(bare.value, unit, dimension) };
  const parts = numberWithUnit.exec(text);
  if (parts === null) return bare;
  const number = readNumber(parts[1]!, commaIsDecimal);
  if (!number.ok) return number;
  const own = knownUnit(parts[2]!, dimension);
  if (own === undefined) {
    return { ok: false, problem: `has an unknown unit of ${dimension}`, fix: `use one of ${unitNames(dimension)}` };
  }
  return { ok: true, value: toInside(number.value, own, dimension) };
}

/** Reads one of a few words; case does not matter. */
export function readOneOf<Word extends string>(text: string, words: readonly Word[]): Read<Word> {
  const found = words.find((word) => word.toLowerCase() === text.toLowerCase());
  if (found !== undefined) return { ok: true, value: found };
  return { ok: false, problem: "is not one of the words known here", fix: `write one of: ${words.join(", ")}` };
}

/** Reads yes or no. */
export function readYesNo(text: string): Read<boolean> {
  const word = readOneOf(text, ["yes", "no", "true", "false", "1", "0"] as const);
  if (!word.ok) return { ok: false, problem: "is neither yes nor no", fix: "write yes or no" };
  return { ok: true, value: word.value === "yes" || word.value === "true" || word.value === "1" };
}

/** Reads placements: inSump, external, inTank, joined by + or blanks. */
export function readPlacements(text: string): Read<("inSump" | "external" | "inTank")[]> {
  const words = text.split(/[+\s/|]+/).filter((word) => word !== "");
  const value: ("inSump" | "external" | "inTank")[] = [];
  for (const word of words) {
    const one = readOneOf(word, ["inSump", "external", "inTank"] as const);
    if (!one.ok) return { ok: false, problem: "holds an unknown placement", fix: "join inSump, external, inTank by +" };
    value.push(one.value);
  }
  return { ok: true, value };
}
