import type { RevisionEntry } from "@tidewright/protocol";
import { describe, expect, it } from "vitest";
import { namedVersions } from "./namedVersions.ts";

describe("named versions of a long history", () => {
  it("are found behind a thousand steps without a name", async () => {
    const names = new Map([
      [1, "first visit"],
      [1203, "as proposed"],
    ]);
    const entry = (number: number): RevisionEntry => ({
      designId: "d",
      number,
      parent: null,
      author: "Ada",
      at: "2026-01-01T00:00:00.000Z",
      editId: null,
      name: names.get(number) ?? null,
    });
    let asked = 0;
    const found = await namedVersions("d", async (before = 1204) => {
      asked += 1;
      const items = Array.from({ length: Math.min(500, before - 1) }, (_, i) => entry(before - 1 - i));
      return { ok: true, value: { items }, version: undefined };
    });
    expect(found.ok && found.value.map(({ name }) => name)).toEqual(["as proposed", "first visit"]);
    expect(asked).toBe(3);
  });
});
