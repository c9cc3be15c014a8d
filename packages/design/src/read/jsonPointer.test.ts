import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fromPointer, toPointer, valueAt } from "./jsonPointer.ts";

describe("a JSON Pointer", () => {
  // The document and the pointers of RFC 6901, section 5, those of the empty key and of "m~n" included.
  const document = {
    foo: ["bar", "baz"],
    "": 0,
    "a/b": 1,
    "c%d": 2,
    "e^f": 3,
    "g|h": 4,
    "i\\j": 5,
    'k"l': 6,
    " ": 7,
    "m~n": 8,
  };
  it.each([
    ["", document],
    ["/foo", ["bar", "baz"]],
    ["/foo/0", "bar"],
    ["/", 0],
    ["/a~1b", 1],
    ["/c%d", 2],
    ["/e^f", 3],
    ["/g|h", 4],
    ["/i\\j", 5],
    ['/k"l', 6],
    ["/ ", 7],
    ["/m~0n", 8],
  ])("%s leads where RFC 6901, section 5, says", (pointer, value) => {
    expect(valueAt(document, pointer)).toEqual(value);
  });

  it("comes back from any keys unchanged", () => {
    fc.assert(
      fc.property(fc.array(fc.string()), (keys) => {
        expect(fromPointer(toPointer(keys))).toEqual(keys);
      }),
    );
  });

  it("does not find what objects inherit, nor places a list does not have", () => {
    expect(valueAt({}, "/constructor")).toBeUndefined();
    expect(valueAt([1], "/length")).toBeUndefined();
    expect(valueAt([1], "/00")).toBeUndefined();
    expect(valueAt([1], "/1")).toBeUndefined();
  });
});
