import type { Parsed } from "./quantity.ts";

/** What the writer puts between whole and broken part of a number. */
export type DecimalSign = "." | ",";

/** A number at the start of a text, and what follows it. */
export interface LeadingNumber {
  readonly value: number;
  /** The text after the number, trimmed. */
  readonly rest: string;
}

const vulgar: Readonly<Record<string, string>> = {
  "¼": "1/4",
  "½": "1/2",
  "¾": "3/4",
  "⅓": "1/3",
  "⅔": "2/3",
  "⅕": "1/5",
  "⅖": "2/5",
  "⅗": "3/5",
  "⅘": "4/5",
  "⅙": "1/6",
  "⅚": "5/6",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};
const raised = "⁰¹²³⁴⁵⁶⁷⁸⁹";

/** The same text with every typographic variant written in ASCII: minus signs, spaces, fractions, powers of ten. */
export function plainText(text: string): string {
  return text
    .replace(/[−–‒﹣－]/g, "-")
    .replace(/[\s\u200b\ufeff]+/g, " ")
    .replace(/(\d?)\s*([¼½¾⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])/g, (_, digit: string, sign: string) =>
      digit === "" ? vulgar[sign]! : `${digit} ${vulgar[sign]!}`,
    )
    .replace(/⁄/g, "/")
    .replace(/\s*[×x·*]\s*10\^?([⁻-]?)([⁰¹²³⁴⁵⁶⁷⁸⁹\d]+)/g, (_, sign: string, digits: string) => {
      const power = [...digits].map((digit) => (raised.includes(digit) ? raised.indexOf(digit) : digit)).join("");
      return `e${sign === "" ? "" : "-"}${power}`;
    })
    .trim();
}

const mixed = /^(\d+)\s*[- ]\s*(\d+)\s*\/\s*(\d+)(?![\d.,])/;
const fraction = /^(\d+)\s*\/\s*(\d+)(?![\d.,])/;
const decimal = /^((?:\d{1,3}(?: \d{3})+(?![\d/])(?:[.,]\d+)?)|(?:[\d.,]*\d[\d.,]*))(e[-+]?\d+)?/i;

/** Reads the number at the start of a text already in plain ASCII: 12, -1.5, 25,4, 1,234.5, 1 1/2, 3/4, 1e-6, 12 500.
 *  The sign that is not the writer's decimal sign, followed by exactly three digits, is refused: it could be a decimal sign or a
 *  thousands separator. */
export function parseNumber(text: string, decimalSign: DecimalSign = "."): Parsed<LeadingNumber> {
  const sign = /^[-+]\s*/.exec(text)?.[0] ?? "";
  const factor = sign.startsWith("-") ? -1 : 1;
  const body = text.slice(sign.length);
  const done = (value: number, length: number): Parsed<LeadingNumber> =>
    Number.isFinite(value)
      ? { ok: true, value: { value: factor * value, rest: body.slice(length).trim() } }
      : { ok: false, problem: `"${text}" is too large to compute with; write a smaller number` };

  const split = mixed.exec(body) ?? fraction.exec(body);
  if (split !== null) {
    const [whole, top, bottom] = split.length === 4 ? [split[1], split[2], split[3]] : ["0", split[1], split[2]];
    if (Number(bottom) === 0)
      return { ok: false, problem: `"${split[0]}" divides by zero; write a fraction such as 1/2` };
    return done(Number(whole) + Number(top) / Number(bottom), split[0].length);
  }
  const match = decimal.exec(body);
  if (match === null)
    return { ok: false, problem: `"${text}" does not begin with a number; write one such as 25 or 1 1/2` };
  const read = readDecimal(match[1]!, decimalSign);
  if (!read.ok) return read;
  return done(Number(`${read.value}${match[2] ?? ""}`), match[0].length);
}

/** Digits with whatever separators -> digits with one point. */
function readDecimal(token: string, decimalSign: DecimalSign): Parsed<string> {
  const spaced = token.includes(" ");
  const digits = token.replaceAll(" ", "");
  const commas = digits.split(",").length - 1;
  const points = digits.split(".").length - 1;
  const ungrouped = (group: string, point: string): Parsed<string> => {
    const [whole = "", ...decimals] = digits.split(point);
    const grouped = new RegExp(`^\\d{1,3}(\\${group}\\d{3})+$`).test(whole);
    return grouped && decimals.length <= 1 && !(decimals[0] ?? "").includes(group)
      ? { ok: true, value: `${whole.replaceAll(group, "")}.${decimals[0] ?? ""}` }
      : { ok: false, problem: `"${token}" is not a number; write it with one decimal point, such as 1234.5` };
  };
  if (commas === 0 && points === 0) return { ok: true, value: digits };
  if (commas > 0 && points > 0)
    return digits.lastIndexOf(",") > digits.lastIndexOf(".") ? ungrouped(".", ",") : ungrouped(",", ".");
  if (points > 1) return ungrouped(".", ",");
  if (commas > 1) return ungrouped(",", ".");

  const sign = commas === 1 ? "," : ".";
  const [before = "", after = ""] = digits.split(sign);
  if (sign === decimalSign) return { ok: true, value: `${before}.${after}` };
  if (sign === "." && (spaced || after.length !== 3)) return { ok: true, value: digits };
  if (after === "") return { ok: false, problem: `"${token}" ends in a comma; write ${before} or ${before}.0` };
  if (!spaced && after.length === 3 && /^[1-9]\d{0,2}$/.test(before))
    return {
      ok: false,
      problem: `"${token}" can be read as ${before}${decimalSign}${after} or as ${before}${after}; write it without a ${sign === "," ? "comma" : "point"}, as ${before}${decimalSign}${after} or ${before}${after}`,
    };
  return { ok: true, value: `${before}.${after}` };
}
