import type { Language } from "@tidewright/words";

/** Returns what readers of a language put between the whole and the broken part of a number.
 *  Source: Unicode CLDR, numbers/symbols, through Intl. */
export function decimalSign(language: Language): "." | "," {
  const part = new Intl.NumberFormat(language).formatToParts(1.5).find(({ type }) => type === "decimal");
  return part?.value === "," ? "," : ".";
}
