import { englishWords, loadWords } from "@tidewright/words";
import { scaleLinear } from "d3-scale";
import { expect, it } from "vitest";
import { roundTicks, scaleOf } from "./scale.ts";

// d3-scale, which the papers draw with, is the outside judge of places, ticks and their texts.
const ranges = [
  [12_345, 6],
  [4.2, 5],
  [0.73, 4],
  [0.0123, 7],
  [1, 10],
  [2900, 3],
] as const;

it.each(ranges)("marks 0 to %d as d3-scale does", (most, count) => {
  const axis = scaleLinear([0, most], [40, 700]);
  const own = scaleOf([0, most], [40, 700]);
  const text = axis.tickFormat(count);
  expect(roundTicks(most, count, englishWords)).toEqual(
    axis.ticks(count).map((value) => ({ value, text: text(value).replace(/,/g, "") })),
  );
  for (const value of axis.ticks(count)) {
    expect(own(value)).toBeCloseTo(axis(value), 9);
    expect(own.invert(own(value))).toBeCloseTo(axis.invert(axis(value)), 9);
  }
});

it("writes as the reader does", async () => {
  const german = await loadWords("de");
  expect(roundTicks(2, 4, german).map(({ text }) => text)).toEqual(["0,0", "0,5", "1,0", "1,5", "2,0"]);
});
