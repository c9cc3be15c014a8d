import { describe, expect, it } from "vitest";
import { pruneDeep } from "./pruneDeep.ts";

describe("the guard against deep nesting", () => {
  it("gives a shallow value back as it is, the very same object", () => {
    const value = { a: [{ b: 1 }], c: null };
    expect(pruneDeep(value).value).toBe(value);
  });

  it("names every part that lies too deep, and keeps the rest", () => {
    const { value, cut } = pruneDeep({ a: { b: { c: 1 }, d: [2] }, e: 3 }, 2);
    expect(cut).toEqual(["/a/b", "/a/d"]);
    expect(value).toEqual({ a: { b: {}, d: [] }, e: 3 });
  });

  it("cuts a value that holds itself, however wide the circle", () => {
    const circle: Record<string, unknown> = { name: "reef" };
    circle["left"] = circle;
    circle["right"] = circle;
    expect(pruneDeep(circle).cut).toEqual(["/left", "/right"]);
  });

  it("comes back from a million levels", () => {
    let deep: unknown = 1;
    for (let i = 0; i < 1_000_000; i++) deep = [deep];
    expect(pruneDeep(deep).cut).toEqual([`/0`.repeat(100)]);
  });
});
