import type { Dimension } from "@tidewright/units";
import { englishWords, type Words } from "@tidewright/words";
import type { Reason } from "../ranking.ts";
import { bareNumber, type Format } from "./format.ts";

/** Returns a reason as half a sentence whose subject is the pump; a flow below zero is told as water that runs back.
 *  reason Reason   format Format   words of the reader's language, English where left out   -> string
 *  Source: own words.
 *  Example: describeReason({ code: "cheapest" }, String)  ->  "costs least to buy"
 *  Example: describeReason({ code: "drain-cannot-carry", value: 2, limit: 1, dimension: "flow" }, String)  ->  "sends 2; the drains take 1" */
export function describeReason(reason: Reason, format: Format, words: Words = englishWords): string {
  const { code, dimension } = reason;
  const write = (value: number | undefined) => {
    if (value === undefined) return "—";
    if (dimension === "money") return `${value.toFixed(0)} EUR`;
    return dimension ? format(value, dimension as Dimension) : bareNumber(value, words);
  };
  // Where less than nothing reaches the display, the open branches draw water back down from it past the running pump.
  const backward = code === "below-wish" && reason.value !== undefined && reason.value < 0;
  return words.say(backward ? "reasons.below-wish.backward" : `reasons.${code}`, {
    value: write(backward ? -reason.value! : reason.value),
    limit: write(reason.limit),
  });
}
