import { describe, expect, it } from "vitest";
import { listed, nearest } from "./nearest.ts";

describe("the nearest known name", () => {
  const fittings = ["elbow90", "elbow90Sweep", "elbow45", "teeRun", "coupling", "union", "swingCheck"];
  it.each([
    ["elbow_90", "elbow90"],
    ["Elbow90", "elbow90"],
    ["elbow9O", "elbow90"],
    ["cuopling", "coupling"],
    ["swing-check", "swingCheck"],
    ["onion", "union"],
  ])("of %s is %s", (name, found) => {
    expect(nearest(name, fittings)).toBe(found);
  });

  it("is none where nothing is alike", () => {
    expect(nearest("snowflake", fittings)).toBeUndefined();
    expect(nearest("", fittings)).toBeUndefined();
    expect(nearest("x".repeat(1_000_000), fittings)).toBeUndefined();
    expect(nearest("q", ["m", "s"])).toBeUndefined();
  });

  it("lists names as a sentence does", () => {
    expect(listed([])).toBe("nothing");
    expect(listed(["a"])).toBe('"a"');
    expect(listed(["a", "b", "c"])).toBe('"a", "b" and "c"');
    expect(listed(["a", "b", "c"], 2)).toBe('"a", "b" and 1 more');
  });
});
