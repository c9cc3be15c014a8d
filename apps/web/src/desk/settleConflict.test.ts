import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { settleConflict } from "./settleConflict.ts";

describe("two people changing one job", () => {
  const base = { name: "Reef", notes: "", stage: "designing" };

  it("sends my change again where they changed something else", () => {
    expect(settleConflict(base, { notes: "oak floor" }, { ...base, stage: "proposed" })).toEqual({
      resend: { notes: "oak floor" },
      conflicts: [],
    });
  });

  it("asks where both changed the same field differently, and keeps both texts", () => {
    expect(settleConflict(base, { notes: "mine" }, { ...base, notes: "theirs" })).toEqual({
      resend: {},
      conflicts: [{ field: "notes", mine: "mine", theirs: "theirs" }],
    });
  });

  it("needs nothing where both wrote the same", () => {
    expect(settleConflict(base, { notes: "same" }, { ...base, notes: "same" })).toEqual({ resend: {}, conflicts: [] });
  });

  it("never loses a change of mine that differs from what they left", () => {
    const field = fc.constantFrom("a", "b", "c");
    const record = fc.record({ a: field, b: field, c: field });
    fc.assert(
      fc.property(record, fc.dictionary(field, field), record, (from, mine, theirs) => {
        const { resend, conflicts } = settleConflict(from, mine, theirs);
        for (const [name, value] of Object.entries(mine)) {
          const there = (theirs as Record<string, string>)[name] === value;
          const kept =
            (resend as Record<string, string>)[name] === value || conflicts.some((each) => each.field === name);
          expect(there || kept).toBe(true);
        }
      }),
    );
  });
});
