import type { Words } from "@tidewright/words";
import { tickStep, ticks } from "d3-array";

/** Where a value stands along a straight scale, and what stands at a place. */
export interface Scale {
  (value: number): number;
  invert(at: number): number;
}

/** Returns the straight scale from one range to another.
 *  from values of its ends, not the same   to where they stand   -> Scale */
export function scaleOf([a, b]: readonly [number, number], [p, q]: readonly [number, number]): Scale {
  const slope = (q - p) / (b - a);
  return Object.assign((value: number) => p + (value - a) * slope, { invert: (at: number) => a + (at - p) / slope });
}

/** Returns round values from nought to `most`, about `count` of them, with as many places as their step asks for. */
export function roundTicks(
  most: number,
  count: number,
  words: Words,
): { readonly value: number; readonly text: string }[] {
  const places = Math.min(20, Math.max(0, -Math.floor(Math.log10(tickStep(0, most, count)) + 1e-9)));
  const options = { minimumFractionDigits: places, maximumFractionDigits: places, useGrouping: false };
  return ticks(0, most, count).map((value) => ({ value, text: words.number(value, options) }));
}
