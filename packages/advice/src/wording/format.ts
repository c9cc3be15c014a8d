import type { Dimension } from "@tidewright/units";
import type { Words } from "@tidewright/words";

/** How the edge writes an SI number in the user's units. */
export type Format = (si: number, dimension: Dimension) => string;

/** The sentence a person reads: what it is, what was found, what to do, and where it matters a caution. */
export interface Description {
  readonly title: string;
  readonly sentence: string;
  readonly fix: string;
  readonly caution?: string;
}

/** Returns a number without a unit for a sentence: whole from 100 on, to two significant digits below 1, else to three.
 *  value any finite number [-]   words of the reader's language   -> text
 *  Source: own choice.
 *  Example: bareNumber(3133.4, { decimal: (text) => text })  ->  "3133"
 *  Example: bareNumber(0.7249, { decimal: (text) => text.replace(".", ",") })  ->  "0,72" */
export function bareNumber(value: number, words: Pick<Words, "decimal">): string {
  const size = Math.abs(value);
  if (size >= 100) return String(Math.round(value));
  return words.decimal(String(Number(value.toPrecision(size < 1 ? 2 : 3))));
}
