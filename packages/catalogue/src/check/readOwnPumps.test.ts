import { describe, expect, it } from "vitest";
import { findPump } from "../catalogue.ts";
import { demoCatalogue } from "../demo/demoCatalogue.ts";
import { withOwnPumps } from "../withOwnPumps.ts";
import { readOwnPumps } from "./readOwnPumps.ts";

const data = findPump(demoCatalogue, "ferrow-c40")!;

describe("a shop's own rows", () => {
  it("become pumps named by their own id, in their order", () => {
    const { pumps, problems } = readOwnPumps([
      { id: "house-2", data },
      { id: "house-1", data: { ...data, maker: "House" } },
    ]);
    expect(problems).toEqual([]);
    expect(pumps.map(({ id, maker }) => `${id} ${maker}`)).toEqual(["house-2 Ferrow", "house-1 House"]);
  });

  it("lose only those that cannot be computed with, each with all that is wrong with it", () => {
    const { pumps, problems } = readOwnPumps([
      { id: "bad", data: { ...data, ratedPower: -4, soundLevel: Number.NaN } },
      { id: "good", data },
    ]);
    expect(pumps.map(({ id }) => id)).toEqual(["good"]);
    expect(problems.map(({ row, id, column }) => [row, id, column])).toEqual([
      [1, "bad", "rated power"],
      [1, "bad", "sound"],
    ]);
  });

  it.each<[string, unknown]>([
    ["nothing", null],
    ["a text", "pump"],
    ["a list", [data]],
    ["an empty object", {}],
    ["a place that is a text", { ...data, placements: "inSump" }],
    ["curves that are a number", { ...data, curves: 4 }],
    ["a curve without points", { ...data, curves: [{ speedRatio: 1 }] }],
    ["a curve that is nothing", { ...data, curves: [null] }],
    ["a maker that is a number", { ...data, maker: 7 }],
  ])("with %s break nothing and are told of", (_what, bad) => {
    const { pumps, problems } = readOwnPumps([{ id: "odd", data: bad }]);
    expect(pumps).toEqual([]);
    expect(problems).toMatchObject([{ id: "odd", column: "", severity: "error" }]);
    expect(problems[0]!.fix).not.toBe("");
  });

  it("may be hard to believe: a doubt is the shop's own affair", () => {
    expect(readOwnPumps([{ id: "loud", data: { ...data, soundLevel: 95 } }])).toMatchObject({
      pumps: [{ id: "loud" }],
      problems: [],
    });
  });
});

describe("a catalogue with own pumps", () => {
  it("finds the shop's own of two with one id", () => {
    const own = { ...data, maker: "House" };
    expect(findPump(withOwnPumps(demoCatalogue, [own]), data.id)?.maker).toBe("House");
    expect(findPump(demoCatalogue, data.id)?.maker).toBe("Ferrow");
  });

  it("is the one that was given where a shop has none", () => {
    expect(withOwnPumps(demoCatalogue, [])).toBe(demoCatalogue);
  });
});
