import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { applyEdit } from "../edits/applyEdit.ts";
import type { Edit } from "../edits/edit.ts";
import { valueAt } from "../read/jsonPointer.ts";
import { mutated } from "../testing/mutated.ts";
import { differencesBetween } from "./differencesBetween.ts";
import { editsBetween } from "./editsBetween.ts";
import { mergeDocuments } from "./mergeDocuments.ts";
import { sameJson } from "./sameJson.ts";

const names = ["waiting-room-reef", "hotel-lobby", "golden/04-closed-loop", "golden/10-eight-branches"];
const examples = names.map((name): unknown =>
  JSON.parse(readFileSync(new URL(`../../../../examples/${name}.json`, import.meta.url), "utf8")),
);
const reef = examples[0];

const after = (document: unknown, ...edits: Edit[]): unknown =>
  edits.reduce((at, edit) => {
    const { design, problem } = applyEdit(at, edit);
    expect(problem).toBeUndefined();
    return design;
  }, document);
const mm = (value: number) => ({ value, unit: "mm" });
const elbow = { kind: "fitting", fitting: "elbow90" };
const union = { kind: "fitting", fitting: "union", note: "for the service" };

const seeds = fc.array(fc.nat(), { minLength: 1, maxLength: 4 });
const changed = fc
  .tuple(fc.constantFrom(...examples), seeds, seeds)
  .map(([base, a, b]) => [base, mutated(base, a), mutated(base, b)] as const);

describe("merging what two people made of one design", () => {
  it("joins a length changed on a pipe with an elbow inserted before it", () => {
    const mine = after(reef, { op: "set", path: "/drains/0/run/3/length", value: mm(300) });
    const theirs = after(reef, { op: "insert", path: "/drains/0/run/3", value: elbow });
    const both = after(theirs, { op: "set", path: "/drains/0/run/4/length", value: mm(300) });
    expect(mergeDocuments(reef, mine, theirs)).toEqual({ ok: true, merged: both });
    expect(mergeDocuments(reef, theirs, mine)).toEqual({ ok: true, merged: both });
  });

  it("keeps both parts put in at one place, theirs first, and an identical one once", () => {
    const put = (value: unknown) => after(reef, { op: "insert", path: "/loops/0/run/1", value });
    const both = mergeDocuments(reef, put(elbow), put(union));
    expect(both.ok).toBe(true);
    expect(valueAt(both.merged, "/loops/0/run/1")).toEqual(union);
    expect(valueAt(both.merged, "/loops/0/run/2")).toEqual(elbow);
    expect(mergeDocuments(reef, put(elbow), put(elbow))).toEqual({ ok: true, merged: put(elbow) });
  });

  it("never takes the number of one and the unit of the other", () => {
    const mine = after(reef, { op: "set", path: "/display/length", value: { value: 1.5, unit: "m" } });
    const theirs = after(reef, { op: "set", path: "/display/length", value: mm(1600) });
    expect(mergeDocuments(reef, mine, theirs)).toMatchObject({
      ok: false,
      conflicts: [{ path: "/display/length", base: mm(1500), mine: { value: 1.5, unit: "m" }, theirs: mm(1600) }],
    });
  });

  it("tells a part that one took away and the other changed", () => {
    const mine = after(reef, { op: "remove", path: "/drains/0/run/4" });
    const theirs = after(reef, { op: "set", path: "/drains/0/run/4/opening", value: 0.9 });
    const merged = mergeDocuments(reef, mine, theirs);
    expect(merged).toMatchObject({ ok: false, merged: theirs, conflicts: [{ path: "/drains/0/run/4" }] });
  });

  it("finds a renamed drain again, also when it was moved", () => {
    const mine = after(
      reef,
      { op: "set", path: "/drains/0/name", value: "left" },
      { op: "move", from: "/drains/0", path: "/drains/2" },
    );
    const theirs = after(reef, { op: "set", path: "/drains/0/share", value: 0.7 });
    expect(mergeDocuments(reef, mine, theirs)).toEqual({
      ok: true,
      merged: after(mine, { op: "set", path: "/drains/2/share", value: 0.7 }),
    });
    expect(differencesBetween(reef, mine).map(({ kind }) => kind)).toEqual(["moved", "changed"]);
  });

  it("gives the other's document where one changed nothing, and either where both did the same", () => {
    fc.assert(
      fc.property(changed, ([base, mine, theirs]) => {
        expect(mergeDocuments(base, mine, base)).toEqual({ ok: true, merged: mine });
        expect(mergeDocuments(base, base, theirs)).toEqual({ ok: true, merged: theirs });
        expect(mergeDocuments(base, mine, mine)).toEqual({ ok: true, merged: mine });
      }),
      { numRuns: 200 },
    );
  });

  it("is at odds, or not, whichever of the two is called mine", () => {
    fc.assert(
      fc.property(changed, ([base, mine, theirs]) => {
        const one = mergeDocuments(base, mine, theirs);
        const other = mergeDocuments(base, theirs, mine);
        expect(one.ok).toBe(other.ok);
      }),
      { numRuns: 200 },
    );
  });

  it("leads from one document to another by its edits, a single changed value by one", () => {
    fc.assert(
      fc.property(changed, ([base, mine, theirs]) => {
        for (const [from, to] of [
          [base, mine],
          [mine, theirs],
        ])
          expect(sameJson(after(from, ...editsBetween(from, to)), to)).toBe(true);
      }),
      { numRuns: 200 },
    );
    const edit: Edit = { op: "set", path: "/drains/1/run/3/length", value: mm(1) };
    expect(editsBetween(reef, after(reef, edit))).toEqual([edit]);
  });

  it("never throws on any JSON, however deep", () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.jsonValue(), fc.jsonValue(), (base, mine, theirs) => {
        mergeDocuments(base, mine, theirs);
        expect(sameJson(after(mine, ...editsBetween(mine, theirs)), theirs)).toBe(true);
        expect(differencesBetween(mine, theirs).length > 0).toBe(!sameJson(mine, theirs));
      }),
      { numRuns: 500 },
    );
    const deep = (inner: unknown, levels: number) => {
      let at = inner;
      for (let i = 0; i < levels; i++) at = i % 2 ? [at] : { at };
      return at;
    };
    expect(mergeDocuments(deep(1, 20_000), deep(2, 20_000), deep(3, 20_000)).ok).toBe(false);
  });
});
