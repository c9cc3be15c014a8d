import { type Dimension, fromSI, toSI } from "@tidewright/units";
import type { Words } from "@tidewright/words";
import { readQuantity } from "../../format/quantityText.ts";

/** A number as it stands in a field. `kept` is what an untouched text stands for, to the last bit: what is shown is
 *  rounded, and a sheet that is opened and saved must not change a pump. */
export interface Figure {
  readonly text: string;
  readonly kept?: { readonly text: string; readonly value: number };
}

/** What a field's bare numbers are in. */
export interface Measure {
  readonly dimension: Dimension;
  readonly unit: string;
}

/** A field read: left empty, a number [SI], or why it is none. */
export type FigureReading =
  | { readonly state: "empty" }
  | { readonly state: "read"; readonly value: number }
  | { readonly state: "wrong"; readonly problem: string };

export const emptyFigure: Figure = { text: "" };

/** Returns a number as a field shows it: the shortest text that reads back exactly, up to nine digits, else six of them.
 *  value [SI]; undefined gives an empty field   measure   sign the reader's before decimals   -> Figure
 *  Example: figureOf(0.001, { dimension: "flow", unit: "L/h" }, ".").text  ->  "3600" */
export function figureOf(value: number | undefined, { dimension, unit }: Measure, sign: "." | ","): Figure {
  if (value === undefined || !Number.isFinite(value)) return emptyFigure;
  const there = fromSI(value, unit, dimension);
  let shown = Number(there.toPrecision(6));
  for (let digits = 1; digits <= 9; digits += 1) {
    const candidate = Number(there.toPrecision(digits));
    if (toSI({ value: candidate, unit }, dimension) !== value) continue;
    shown = candidate;
    break;
  }
  const text = String(shown).replace(".", sign);
  return { text, kept: { text, value } };
}

/** Returns what a field says.
 *  figure   measure   words of the reader   -> FigureReading */
export function readFigure({ text, kept }: Figure, { dimension, unit }: Measure, words: Words): FigureReading {
  if (kept !== undefined && kept.text === text) return { state: "read", value: kept.value };
  if (text.trim() === "") return { state: "empty" };
  const reading = readQuantity(text, dimension, unit, words);
  if (!reading.ok) return { state: "wrong", problem: reading.problem };
  // There is no conversion between currencies, so another one would be kept as if it were this one.
  if (dimension === "money" && reading.quantity.unit !== unit)
    return { state: "wrong", problem: words.say("pumps.onlyCurrency", { currency: unit }) };
  return { state: "read", value: toSI(reading.quantity, dimension) };
}
