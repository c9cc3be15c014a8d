import {
  checkQuantity,
  type Dimension,
  formatFeetAndInches,
  parseQuantity,
  type Quantity,
  toSI,
  unitLabel,
  unitsOf,
} from "@tidewright/units";
import type { Words } from "@tidewright/words";
import { decimalSign } from "./decimalSign.ts";
import type { ScreenFormat } from "./screenFormat.ts";

/** Returns a quantity as it was typed: number and unit, no digit lost.
 *  quantity   dimension   sign the reader's before decimals, a point where left out   -> text */
export function typedText(quantity: Quantity, dimension: Dimension, sign: "." | "," = "."): string {
  const text = plainlyTyped(quantity, dimension);
  return sign === "." ? text : text.replace(/(\d)\.(?=\d)/, `$1${sign}`);
}

function plainlyTyped(quantity: Quantity, dimension: Dimension): string {
  if (quantity.unit === "ft-in") return feetText(quantity);
  const label = checkQuantity(quantity, dimension).ok ? unitLabel(quantity.unit, dimension) : quantity.unit;
  if (label === "") return String(quantity.value);
  return `${quantity.value}${label.startsWith("/") ? "" : " "}${label}`;
}

/** Feet and inches are printed to sixteenths; a value between them keeps its decimals instead of being rounded. */
function feetText(quantity: Quantity): string {
  const metres = toSI(quantity, "length");
  const text = formatFeetAndInches(metres);
  const back = parseQuantity(text.replace("−", "-"), "length");
  const same = back.ok && Math.abs(toSI(back.value, "length") - metres) < 1e-9;
  return same ? text : `${quantity.value} ft`;
}

/** A quantity read from text, or why it cannot be. */
export type QuantityReading =
  | { readonly ok: true; readonly quantity: Quantity }
  | { readonly ok: false; readonly problem: string };

/** Returns what a person typed as a quantity; a bare number takes the unit that stood there before. Numbers are read with the
 *  decimal sign of the language, and with the other one too where that cannot part thousands.
 *  text   dimension   unit of a bare number   words of the reader's language, English where left out   -> QuantityReading */
export function readQuantity(text: string, dimension: Dimension, unit: string, words?: Words): QuantityReading {
  const parsed = parseQuantity(text, dimension, unit, words === undefined ? "." : decimalSign(words.language));
  if (parsed.ok) return { ok: true, quantity: parsed.value };
  return words === undefined || words.language === "en"
    ? parsed
    : { ok: false, problem: unreadable(text, dimension, words) };
}

/** The units package speaks English: other languages tell what was typed and what can be read in its place. */
function unreadable(text: string, dimension: Dimension, { say, knows }: Words): string {
  const twofold = /^[\s−-]*([1-9]\d{0,2})[.,](\d{3})(?!\d)/.exec(text);
  if (twofold !== null) return say("fields.twofold", { text, whole: `${twofold[1]}${twofold[2]}` });
  const key = `fields.dimension.${dimension}`;
  const units = unitsOf(dimension).slice(0, 12);
  return say("fields.unreadable", {
    text: text.trim(),
    what: knows(key) ? say(key) : dimension,
    example: `25 ${units[0]?.symbol ?? ""}`.trim(),
    units: units.map(({ symbol }) => symbol).join(", "),
  });
}

/** Returns a quantity one step up or down in its own unit: a step is one in its last written digit, but never below 0.001. */
export function stepped(quantity: Quantity, by: number): Quantity {
  if (quantity.unit === "ft-in") return { ...quantity, value: Math.round((quantity.value + by / 12 / 4) * 48) / 48 };
  const decimals = Math.min(3, (String(quantity.value).split(".")[1] ?? "").length);
  const step = 10 ** -decimals;
  return { ...quantity, value: Number((quantity.value + by * step).toFixed(decimals)) };
}

/** Returns the same quantity in the unit of the screen, or undefined where it was typed in that unit. */
export function alsoInUnits(
  quantity: Quantity | undefined,
  dimension: Dimension,
  format: ScreenFormat,
): string | undefined {
  if (quantity === undefined || dimension === "money" || dimension === "tariff" || dimension === "time")
    return undefined;
  const checked = checkQuantity(quantity, dimension);
  if (!checked.ok || checked.value.unit === format.unitOf(dimension)) return undefined;
  return format(toSI(checked.value, dimension), dimension);
}
