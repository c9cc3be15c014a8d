import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { valueAt } from "../read/jsonPointer.ts";
import type { Design } from "../schema/design.ts";
import { applyEdit } from "./applyEdit.ts";
import type { Edit } from "./edit.ts";

const reef = JSON.parse(
  readFileSync(new URL("../../../../examples/waiting-room-reef.json", import.meta.url), "utf8"),
) as Design;

describe("an edit of a design", () => {
  it("changes what it names and shares everything else with the old design", () => {
    const { design } = applyEdit(reef, { op: "set", path: "/display/length", value: { value: 1600, unit: "mm" } });
    expect(design.display.length).toEqual({ value: 1600, unit: "mm" });
    expect(reef.display.length).toEqual({ value: 1500, unit: "mm" });
    expect(design.display.width).toBe(reef.display.width);
    expect(design.loops).toBe(reef.loops);
  });

  it("never changes a frozen design", () => {
    const freeze = (value: unknown): unknown => {
      if (typeof value === "object" && value !== null)
        for (const each of Object.values(Object.freeze(value))) freeze(each);
      return value;
    };
    const frozen = freeze(structuredClone(reef)) as Design;
    const edits: Edit[] = [
      { op: "set", path: "/name", value: "x" },
      { op: "insert", path: "/loops/0/run/1", value: { kind: "fitting", fitting: "union" } },
      { op: "remove", path: "/tankPumps/0" },
      { op: "move", from: "/drains/0", path: "/drains/2" },
    ];
    for (const edit of edits) expect(applyEdit(frozen, edit).problem).toBeUndefined();
  });

  it.each<[string, Edit]>([
    ["a value set", { op: "set", path: "/loops/0/pumps/0/speed", value: 0.7 }],
    ["a field added", { op: "set", path: "/loops/0/pumps/0/controller", value: true }],
    ["a part inserted", { op: "insert", path: "/loops/0/run/2", value: { kind: "fitting", fitting: "union" } }],
    ["a part appended", { op: "insert", path: "/loops/0/run/-", value: { kind: "fitting", fitting: "union" } }],
    ["a part removed", { op: "remove", path: "/drains/1/run/3" }],
    ["a field removed", { op: "remove", path: "/room/altitude" }],
    ["a part moved along its run", { op: "move", from: "/drains/0/run/1", path: "/drains/0/run/4" }],
    ["a part moved back along its run", { op: "move", from: "/drains/0/run/4", path: "/drains/0/run/-" }],
    ["a part moved to another run", { op: "move", from: "/drains/0/run/1", path: "/loops/0/run/0" }],
    [
      "a part moved behind the branches it stood before",
      { op: "move", from: "/loops/0/run/0", path: "/loops/0/run/3/branches/0/0" },
    ],
    ["a field moved", { op: "move", from: "/room/altitude", path: "/display/altitude" }],
    ["nothing moved", { op: "move", from: "/drains/0", path: "/drains/0" }],
    ["the whole document replaced", { op: "set", path: "", value: { tidewright: 1 } }],
  ])("is taken back by its inverse: %s", (_, edit) => {
    const done = applyEdit(reef, edit);
    expect(done.problem).toBeUndefined();
    const undone = applyEdit(done.design, done.inverse);
    expect(undone.design).toEqual(reef);
    expect(applyEdit(undone.design, undone.inverse).design).toEqual(done.design);
  });

  it("moves a part to where it was sent", () => {
    const part = reef.drains[0]!.run[1];
    const { design } = applyEdit(reef, { op: "move", from: "/drains/0/run/1", path: "/drains/0/run/4" });
    expect(valueAt(design, "/drains/0/run/4")).toBe(part);
    expect(design.drains[0]!.run.length).toBe(reef.drains[0]!.run.length);
  });

  it.each<[Edit, string, string]>([
    [{ op: "set", path: "/drains/9/name", value: "x" }, "/drains/9", "the list /drains has 3 entries, none at 9"],
    [{ op: "remove", path: "/dispaly" }, "/dispaly", "there is nothing at /dispaly"],
    [
      { op: "set", path: "/name/first", value: 1 },
      "/name",
      '/name holds "Waiting-room reef"; nothing can lie inside it',
    ],
    [{ op: "set", path: "drains", value: 1 }, "drains", '"drains" is no path'],
    [{ op: "set", path: "/drains/first", value: 1 }, "/drains", '"first" is no place in the list /drains'],
    [{ op: "set", path: "/drains/-", value: 1 }, "/drains", '"-" is no place in the list /drains'],
    [{ op: "insert", path: "/drains/4", value: 1 }, "/drains/4", "the list /drains has 3 entries, none at 4"],
    [
      { op: "insert", path: "/display/depth", value: 1 },
      "/display/depth",
      "/display is no list; nothing can be inserted into it",
    ],
    [{ op: "set", path: "/name", value: undefined }, "/name", 'the edit "set" brings no value'],
    [{ op: "remove", path: "" }, "", 'the whole document cannot be the place of "remove"'],
    [{ op: "move", from: "/drains", path: "/drains/0" }, "/drains/0", "/drains cannot be moved into itself"],
    [{ op: "move", from: "/room", path: "/water" }, "/water", "there is something at /water already"],
    [{ op: "move", from: "/room", path: "" }, "", "nothing can be moved over the whole document"],
    [{ op: "move", from: "/nowhere", path: "/room/x" }, "/nowhere", "there is nothing at /nowhere"],
    [{ op: "set", path: "/constructor/x", value: 1 }, "/constructor", "there is nothing at /constructor"],
  ])("that does not fit is told and changes nothing: %j", (edit, path, message) => {
    const { design, inverse, problem } = applyEdit(reef, edit);
    expect(problem).toMatchObject({ path, message });
    expect(problem?.fix.length).toBeGreaterThan(5);
    expect(design).toBe(reef);
    expect(applyEdit(design, inverse).design).toBe(reef);
  });

  it("sets a field called __proto__ as a field, not as a prototype", () => {
    const { design } = applyEdit<Record<string, unknown>>({}, { op: "set", path: "/__proto__", value: { x: 1 } });
    expect(Object.getPrototypeOf(design)).toBe(Object.prototype);
    expect(Object.hasOwn(design, "__proto__")).toBe(true);
  });
});
