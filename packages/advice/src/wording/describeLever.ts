import { englishWords, type Words } from "@tidewright/words";
import type { Lever } from "../levers.ts";

/** Returns what a lever changes, in a few words.
 *  lever Lever or SafetyLever   words of the reader's language, English where left out   -> text
 *  Source: own words.
 *  Example: describeLever({ label: "valve to full bore", told: { key: "levers.open-valve", values: {} } })  ->  "valve to full bore" */
export function describeLever({ label, told }: Pick<Lever, "label" | "told">, words: Words = englishWords): string {
  if (told === undefined || words.language === "en") return label;
  const values = Object.entries(told.values).map(([name, value]) => [
    name,
    // Labels of pipe series are said anew, and numbers take the language's decimal sign.
    typeof value === "string" ? words.decimal(words.known(value)) : value,
  ]);
  return words.say(told.key, Object.fromEntries(values));
}
