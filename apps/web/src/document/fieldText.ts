import type { Quantity } from "@tidewright/units";
import type { Words } from "@tidewright/words";
import { decimalSign } from "../format/decimalSign.ts";
import { typedText } from "../format/quantityText.ts";
import type { Field } from "./fields.ts";
import { valueWords } from "./partName.ts";

/** Returns the value of a field for a reader who cannot type into it, in the unit in which it was typed.
 *  field   value as the document keeps it   words of the reader's language
 *    -> text; undefined where there is no value or the field asks whether the part itself is there
 *  Findings: none. Throws: never.
 *  Source: own construction.
 *  Example: the yaw of a stream pump, { value: 175, unit: "deg" }  ->  "175°"
 *  Example: the opening of a valve, 0.4  ->  "40 %" */
export function fieldText(field: Field, value: unknown, words: Words): string | undefined {
  if (value === undefined) return undefined;
  const sign = decimalSign(words.language);
  const quantity = (typed: unknown, dimension: Parameters<typeof typedText>[1]) =>
    // The minus is a printer's; an angle's sign stands close to its number, and no line ends between a number and its unit.
    typedText(typed as Quantity, dimension, sign)
      .replace(/^-/, "−")
      .replace(/ °$/, "°")
      .replaceAll(" ", "\u00a0");
  switch (field.kind) {
    case "quantity":
      return quantity(value, field.dimension);
    case "range": {
      const [low, high] = value as readonly [Quantity, Quantity];
      return `${quantity(low, field.dimension)} ${words.say("fields.to")} ${quantity(high, field.dimension)}`;
    }
    case "share":
      return `${words.decimal(String(Math.round((value as number) * 1000) / 10))}\u00a0%`;
    case "count":
    case "number":
      return words.decimal(String(value)).replace(/^-/, "−");
    case "text":
      return value as string;
    case "choice":
      return field.choices.find((choice) => choice.value === value)?.label ?? valueWords(String(value));
    case "check":
      return value === true ? "✓" : "–";
    case "presence":
      return undefined;
  }
}
