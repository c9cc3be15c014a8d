import { describe, expect, it } from "vitest";
import { readShare } from "./readShare.ts";

describe("a share typed in per cent", () => {
  it.each([
    ["75", 0.75],
    ["75 %", 0.75],
    ["3,5", 0.035],
    ["0", 0],
    ["100", 1],
  ])("%s is taken", (text, value) => {
    expect(readShare(text)).toEqual({ ok: true, value });
  });

  it.each([
    ["150", "150 lies outside 0 to 100 %; give per cent from 0 to 100"],
    ["-5 %", "-5 lies outside 0 to 100 %; give per cent from 0 to 100"],
    ["1,500", '"1,500" can be read in two ways; write it without a separator, as 1500, or with other decimals'],
    ["abc", '"abc" is no number; give per cent from 0 to 100'],
  ])("%s is refused in the numbers that were typed", (text, problem) => {
    expect(readShare(text)).toEqual({ ok: false, problem });
  });
});
