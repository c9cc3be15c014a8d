import { describe, expect, it } from "vitest";
import type { ApiEntry } from "./publicApi.ts";
import { referencePage, stalePages } from "./referencePages.ts";

const entry: ApiEntry = {
  packageName: "engine",
  name: "columnPressure",
  kind: "function",
  file: "packages/engine/src/water/columnPressure.ts",
  line: 3,
  comment: "Weight of a column of water.\n Example: columnPressure(1)  ->  9806.65",
  signature: "function columnPressure(head: number): number",
  isPublic: true,
};

describe("reference pages", () => {
  it("show signature and comment of what the package hands out, and hide the rest", () => {
    const page = referencePage("engine", "Pure hydraulics.", [entry, { ...entry, name: "inner", isPublic: false }]);
    expect(page).toContain("## water/columnPressure.ts");
    expect(page).toContain("```ts\nfunction columnPressure(head: number): number\n```");
    expect(page).toContain("Example: columnPressure(1)  ->  9806.65");
    expect(page).not.toContain("inner");
  });
  it("are stale when one is missing", () => {
    expect(stalePages(new Map([["docs/reference/nosuch.md", "text"]]))).toContain(
      "docs/reference/nosuch.md is missing",
    );
  });
});
