import type { Format } from "./scene.ts";

/** A scale bar: where its fields change [m], and what is written over them. */
export interface ScaleBar {
  readonly ticks: readonly number[];
  readonly labels: readonly { readonly at: number; readonly text: string }[];
}

const metricLengths = [0.1, 0.2, 0.5, 1, 2, 5, 10];
const foot = 0.3048;
const feetLengths = [0.5, 1, 2, 4, 8, 16, 32].map((feet) => feet * foot);

/** Returns the longest scale bar of a round length that stays within a width.
 *  scale of the view [px/m]   format the user's units   most width [px]   -> ticks [m] and labels
 *  Findings: none. Throws: never.
 *  Valid: any scale; feet and inches get round feet.
 *  Source: common practice, no source. */
export function niceScaleBar(scale: number, format: Format, most: number): ScaleBar {
  const imperial = /in|ft|′|″|'|"/.test(format(foot, "length"));
  const lengths = imperial ? feetLengths : metricLengths;
  const length = lengths.filter((one) => one * scale <= most).at(-1) ?? lengths[0]!;
  const fields = 5;
  return {
    ticks: Array.from({ length: fields + 1 }, (_, i) => (length * i) / fields),
    labels: [
      { at: 0, text: "0" },
      { at: length, text: format(length, "length") },
    ],
  };
}
