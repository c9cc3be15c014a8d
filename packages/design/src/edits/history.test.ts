import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { toPointer } from "../read/jsonPointer.ts";
import { applyEdit } from "./applyEdit.ts";
import type { Edit } from "./edit.ts";
import { endDrag, record, redo, startHistory, undo } from "./history.ts";
import type { History } from "./step.ts";

const reef: unknown = JSON.parse(
  readFileSync(new URL("../../../../examples/waiting-room-reef.json", import.meta.url), "utf8"),
);

/** Every place of a document, lists' ends included. */
function placesOf(value: unknown, keys: readonly (string | number)[] = []): string[] {
  if (typeof value !== "object" || value === null) return [toPointer(keys)];
  const inside = Object.entries(value).flatMap(([key, each]) => placesOf(each, [...keys, key]));
  return [toPointer(keys), ...inside, ...(Array.isArray(value) ? [toPointer([...keys, "-"])] : [])];
}

/** A random edit of the document as it now stands; one in ten names a place that is not there. */
function editFrom(document: unknown, [op, a, b, value]: readonly [Edit["op"], number, number, unknown]): Edit {
  const places = placesOf(document);
  const pick = (n: number) => (n % 10 === 9 ? `/nowhere/${n}` : places[n % places.length]!);
  if (op === "move") return { op, from: pick(a), path: pick(b) };
  if (op === "remove") return { op, path: pick(a) };
  return { op, path: pick(a), value };
}

const seeds = fc.tuple(
  fc.constantFrom<Edit["op"]>("set", "insert", "remove", "move"),
  fc.nat(),
  fc.nat(),
  fc.jsonValue({ maxDepth: 2 }),
);

describe("a history of edits", () => {
  it("undoes any sequence of edits step by step to the documents that were, and redoes it", () => {
    let made = 0;
    fc.assert(
      fc.property(fc.array(seeds, { minLength: 1, maxLength: 12 }), (all) => {
        let history = startHistory(reef);
        const states: unknown[] = [reef];
        for (const seed of all) {
          const done = record(history, editFrom(history.present, seed), "random");
          if (done.problem === undefined) states.push(done.history.present);
          else expect(done.history).toBe(history);
          history = done.history;
        }
        made += history.past.length;
        const last = states.at(-1);
        for (const state of states.slice(0, -1).reverse()) {
          history = undo(history);
          expect(history.present).toEqual(state);
        }
        expect(undo(history)).toBe(history);
        for (const state of states.slice(1)) {
          history = redo(history);
          expect(history.present).toEqual(state);
        }
        expect(redo(history)).toBe(history);
        expect(history.present).toEqual(last);
      }),
      { numRuns: 500 },
    );
    expect(made).toBeGreaterThan(500);
  });

  it("keeps the inverse of every random edit an identity, and the document given unchanged", () => {
    const before = structuredClone(reef);
    fc.assert(
      fc.property(seeds, (seed) => {
        const done = applyEdit(reef, editFrom(reef, seed));
        expect(applyEdit(done.design, done.inverse).design).toEqual(before);
      }),
      { numRuns: 3000 },
    );
    expect(reef).toEqual(before);
  });

  it("takes a drag of a thousand moves as one step that leads back to its start", () => {
    let history: History<unknown> = startHistory(reef);
    for (let i = 1; i <= 1000; i++)
      history = record(
        history,
        { op: "set", path: "/sump/operatingLevel/value", value: 200 - i / 10 },
        "drag the level",
        "level",
      ).history;
    expect(history.past).toHaveLength(1);
    expect(history.past[0]?.edits).toHaveLength(1);
    expect(undo(history).present).toEqual(reef);
    expect(redo(undo(history)).present).toEqual(history.present);
  });

  it("merges drags of several places, and keeps two drags apart once the pointer is lifted", () => {
    const drag = (history: History<unknown>, x: number) =>
      record(
        history,
        [
          { op: "set", path: "/tankPumps/0/at/0/value", value: x },
          { op: "set", path: "/tankPumps/0/at/1/value", value: x },
        ],
        "move the pump",
        "pump",
      ).history;
    const first = drag(drag(startHistory(reef), 10), 20);
    expect(first.past).toHaveLength(1);
    const second = drag(endDrag(first), 30);
    expect(second.past).toHaveLength(2);
    expect(undo(second).present).toEqual(first.present);
    expect(undo(undo(second)).present).toEqual(reef);
  });

  it("makes all edits of a step or none, and tells the one that does not fit", () => {
    const start = startHistory(reef);
    const { history, problem } = record(
      start,
      [
        { op: "set", path: "/name", value: "x" },
        { op: "remove", path: "/nowhere" },
      ],
      "two at once",
    );
    expect(history).toBe(start);
    expect(problem?.path).toBe("/nowhere");
  });

  it("forgets what was undone once something new is done", () => {
    const once = record(startHistory(reef), { op: "set", path: "/name", value: "a" }, "name").history;
    const other = record(undo(once), { op: "set", path: "/name", value: "b" }, "name").history;
    expect(other.future).toHaveLength(0);
    expect(redo(other)).toBe(other);
    expect(other.past).toHaveLength(1);
  });
});
