import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { mergeDocuments } from "../merge/mergeDocuments.ts";
import { mutated } from "../testing/mutated.ts";
import { applyEdit } from "./applyEdit.ts";
import type { Edit } from "./edit.ts";
import { record, redo, startHistory, undo } from "./history.ts";
import { redoMine, undoMine } from "./ownSteps.ts";
import { takeIn } from "./takeIn.ts";

const reef: unknown = JSON.parse(
  readFileSync(new URL("../../../../examples/waiting-room-reef.json", import.meta.url), "utf8"),
);
const set = (document: unknown, path: string, value: unknown) => applyEdit(document, { op: "set", path, value }).design;
const elbow: Edit = { op: "insert", path: "/drains/0/run/2", value: { kind: "fitting", fitting: "elbow90" } };

describe("a history that others add to", () => {
  it("takes my last step back and leaves what somebody else did since", () => {
    const mine = record(startHistory(reef), { op: "set", path: "/name", value: "mine" }, "name").history;
    const both = takeIn(mine, set(mine.present, "/drains/0/share", 0.5), "by another");
    const undone = undoMine(both);
    expect(undone.conflict).toBeUndefined();
    expect(undone.history.present).toEqual(set(reef, "/drains/0/share", 0.5));
    expect(redoMine(undone.history).history.present).toEqual(both.present);
  });

  it("refuses where the other has changed the same since, and says where", () => {
    const mine = record(startHistory(reef), { op: "set", path: "/name", value: "mine" }, "name").history;
    const both = takeIn(mine, set(mine.present, "/name", "theirs"), "by another");
    const refused = undoMine(both);
    expect(refused.history).toBe(both);
    expect(refused.conflict).toEqual([{ path: "/name", base: "mine", mine: "Waiting-room reef", theirs: "theirs" }]);
    expect(undo(both)).toBe(both);
  });

  it("makes an undone step again after somebody else's change came in between", () => {
    const mine = record(startHistory(reef), elbow, "elbow").history;
    const back = undoMine(mine).history;
    const taken = takeIn(back, set(reef, "/drains/0/run/3/note", "seen"), "by another");
    const again = redoMine(taken).history;
    expect(again.present).toEqual(set(mine.present, "/drains/0/run/4/note", "seen"));
    expect(undoMine(again).history.present).toEqual(taken.present);
    expect(undoMine(startHistory(reef)).history.past).toEqual([]);
  });

  it("walks random interleavings back and forth to the same documents, by way of stored JSON too", () => {
    const turns = fc.array(fc.tuple(fc.boolean(), fc.nat()), { minLength: 2, maxLength: 7 });
    let walked = 0;
    fc.assert(
      fc.property(turns, (all) => {
        let history = startHistory(reef);
        for (const [own, seed] of all) {
          const next = mutated(history.present, [seed]);
          history = own
            ? record(history, { op: "set", path: "", value: next }, "mine").history
            : takeIn(history, next, "theirs");
        }
        const states = [history.present];
        for (let at = undo(history); at !== history; at = undo(history)) {
          history = JSON.parse(JSON.stringify(at)) as typeof history;
          states.push(history.present);
        }
        const back = states.reverse();
        expect(back[0]).toEqual(history.present);
        for (const state of back.slice(1)) {
          history = redo(history);
          expect(history.present).toEqual(state);
          walked++;
        }
        for (const state of back.slice(0, -1).reverse()) {
          history = undo(history);
          expect(history.present).toEqual(state);
        }
      }),
      { numRuns: 150 },
    );
    expect(walked).toBeGreaterThan(100);
  });

  it("joins disjoint changes to what applying both gives", () => {
    const paths = ["/name", "/display/length", "/drains/0/share", "/drains/1/run/3/length", "/loops/0/pumps/0/speed"];
    fc.assert(
      fc.property(fc.shuffledSubarray(paths, { minLength: 2 }), fc.nat(4), (chosen, split) => {
        const put = (document: unknown, some: readonly string[], value: string) =>
          some.reduce((at, path) => set(at, path, value), document);
        const [mine, theirs] = [chosen.slice(0, split), chosen.slice(split)];
        const joined = mergeDocuments(reef, put(reef, mine, "m"), put(reef, theirs, "t"));
        expect(joined).toEqual({ ok: true, merged: put(put(reef, mine, "m"), theirs, "t") });
      }),
    );
  });
});
