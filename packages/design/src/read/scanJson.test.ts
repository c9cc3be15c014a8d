import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { scanJson } from "./scanJson.ts";

const parses = (text: string): boolean => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};

describe("the walk over JSON text", () => {
  it.each([
    ['{"a": 1,}', 8, "a comma before the closing }"],
    ["[1, 2,]", 6, "a value is missing before the closing ]"],
    ["{'a': 1}", 1, "a field name in single quotes"],
    ["{\"a\": 'x'}", 6, "a text in single quotes"],
    ["{a: 1}", 1, "a field name in double quotes is expected here"],
    ['{"a" 1}', 5, "a colon is missing after the field's name"],
    ['{"a": 1 "b": 2}', 8, "a comma or } is missing here"],
    ['{"a": NaN}', 6, "NaN is not a number JSON knows"],
    ['{"a": -Infinity}', 6, "-Infinity is not a number JSON knows"],
    ['{"a": 012}', 6, "a number that begins with 0"],
    ['{"a": .5}', 6, "a number that is not written as JSON writes it"],
    ['{"a": 1,5}', 8, "a field name in double quotes is expected here"],
    ['{"a": "x', 6, "this text never ends"],
    ['{"a": 1} // end', 9, "there is more after the end of the document"],
    ['{ // start\n"a": 1}', 2, "a comment"],
    ['{"a": [1, 2}', 11, "a comma or ] is missing here"],
    ['{"a": [', 7, "the document ends in the middle: 2 brackets are still open"],
    ['{"a": mm}', 6, "mm stands without quotes"],
    ['["a": 1]', 4, "a colon inside a list"],
    ['{"a": "b\\q"}', 8, "a backslash that means nothing"],
  ])("says of %s at character %i: %s", (text, offset, message) => {
    expect(parses(text)).toBe(false);
    expect(scanJson(text).slip).toMatchObject({ offset, message });
  });

  it("finds a slip exactly where the JSON reader of the language refuses the text", () => {
    const broken = fc
      .tuple(fc.json(), fc.nat(), fc.constantFrom('"', "{", "}", "[", "]", ",", ":", "1", "e", "\\", "", " "))
      .map(([text, at, mark]) => {
        const place = at % (text.length + 1);
        return text.slice(0, place) + mark + text.slice(place + (at % 2));
      });
    fc.assert(
      fc.property(fc.oneof(broken, fc.json(), fc.string()), (text) => {
        expect(scanJson(text).slip === undefined).toBe(parses(text));
      }),
      { numRuns: 20_000 },
    );
  });

  it("names every field that one object holds twice, and no other", () => {
    const text = '{"a": {"b": 1, "b": 2}, "c": [{"b": 1}, {"b": 1, "\\u0062": 3}], "a": 0}';
    expect(scanJson(text).doubles.map(({ keys }) => keys)).toEqual([["a", "b"], ["c", 1, "b"], ["a"]]);
  });

  it("walks a hundred thousand open brackets without running out of stack", () => {
    expect(scanJson("[".repeat(100_000)).slip?.offset).toBe(100_000);
    expect(scanJson("[".repeat(100_000) + "]".repeat(100_000)).slip).toBeUndefined();
  });
});
