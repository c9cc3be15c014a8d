import { expect, it } from "vitest";
import { readReader, writeReader } from "./reader.ts";

const spoken = ["en", "de"];

it("brings a reader's choices through a cookie, whatever is in them", () => {
  const chosen = { language: "de", system: "us" as const, own: { flow: "L/h", length: 'a;b,c "d" ü' } };
  // RFC 6265, 4.1.1: no control characters, spaces, quotation marks, commas, semicolons or backslashes in a value.
  expect(writeReader(chosen)).toMatch(/^[\x21\x23-\x2b\x2d-\x3a\x3c-\x5b\x5d-\x7e]*$/);
  expect(readReader(decodeURIComponent(writeReader(chosen)), "en", spoken)).toEqual(chosen);
});

it.each([
  // RFC 9110, 12.5.4, with its own example first.
  ["da, en-gb;q=0.8, en;q=0.7", "en"],
  ["da, de-AT;q=0.8, en;q=0.7", "de"],
  ["en;q=0.3, de-CH;q=0.9", "de"],
  ["de;q=0, en", "en"],
  ["*", "en"],
  ["", "en"],
  [undefined, "en"],
])("takes the language that %j asks for first", (accepted, language) => {
  expect(readReader(undefined, accepted, spoken)).toEqual({ language, system: "metric", own: {} });
});

it.each([
  "",
  "%",
  "null",
  "{}",
  '{"language":"de","system":"furlongs","own":{}}',
  '{"language":"xx","system":"us","own":{}}',
  "x".repeat(5000),
])("passes over a cookie that somebody has broken: %j", (value) => {
  expect(readReader(value, "de", spoken)).toEqual({ language: "de", system: "metric", own: {} });
});
