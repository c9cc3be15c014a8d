import { type DecimalSign, parseNumber } from "./parseNumber.ts";
import type { Parsed } from "./quantity.ts";

const pattern =
  /^([-+]?)\s*([\d.,][^'"a-z]*?)\s*(?:'|ft\.?|feet|foot)\s*[-,]?\s*([\d.,][^'"a-z]*?)\s*(?:"|in\.?|inch|inches)?$/i;

/** Feet and inches in any marks -> ASCII marks, so that 3′ 4″, 3’ 4” and 3' 4'' read alike. */
export const plainMarks = (text: string): string => text.replace(/''|′′|[″”“]/g, '"').replace(/[′’‘]/g, "'");

/** Reads 3' 4 1/2", 3 ft 4.5 in and the like as a number of feet; undefined where the text has no such shape.
 *  text in plain ASCII   -> feet, or a problem where feet are broken or the inches reach a foot */
export function parseFeetAndInches(text: string, decimalSign: DecimalSign = "."): Parsed<number> | undefined {
  const match = pattern.exec(text);
  if (match === null) return undefined;
  const feet = parseNumber(match[2]!, decimalSign);
  if (!feet.ok) return feet;
  const inches = parseNumber(match[3]!, decimalSign);
  if (!inches.ok) return inches;
  if (feet.value.rest !== "" || inches.value.rest !== "")
    return { ok: false, problem: `"${text}" is not feet and inches; write them as 3' 4 1/2"` };
  if (!Number.isInteger(feet.value.value))
    return {
      ok: false,
      problem: `"${text}" has broken feet beside inches; write whole feet, as 3' 4 1/2", or feet alone, as 3.375 ft`,
    };
  if (inches.value.value >= 12)
    return {
      ok: false,
      problem: `"${text}" has ${inches.value.value} inches beside feet; inches there must be below 12`,
    };
  return { ok: true, value: (match[1] === "-" ? -1 : 1) * (feet.value.value + inches.value.value / 12) };
}
