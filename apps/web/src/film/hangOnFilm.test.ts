import { readFileSync } from "node:fs";
import { assess, scenariosOf, whatIf } from "@tidewright/advice";
import { demoCatalogue } from "@tidewright/catalogue";
import { type Design, usualSiphon } from "@tidewright/design";
import { describe, expect, it } from "vitest";
import { filmScene } from "./filmScene.ts";

describe("the film of an overflow that hangs on the glass", () => {
  it("moves the water of both its boxes, and lets the weir fall into the one inside", () => {
    const text = readFileSync(new URL("../../../../examples/first-tank-110.json", import.meta.url), "utf8");
    const said = JSON.parse(text) as Design;
    const design: Design = { ...said, overflow: { ...said.overflow, kind: "hangOn", siphon: usualSiphon(said) } };
    const scenario = scenariosOf(design).find(({ kind }) => kind === "powerCut");
    if (scenario === undefined) throw new Error("no power cut");
    const result = whatIf(design, demoCatalogue, scenario, true);
    const { vessels, crests, runs } = filmScene(design, assess(design, demoCatalogue), result);
    expect(vessels.map(({ place }) => place)).toEqual(expect.arrayContaining(["display", "overflowBox", "innerBox"]));
    const weir = crests[0];
    expect(vessels[weir?.from ?? -1]?.place).toBe("display");
    expect(vessels[weir?.to ?? -1]?.place).toBe("innerBox");
    expect(runs.every(({ base }) => base.startsWith("/drains") || base.startsWith("/loops"))).toBe(true);
  });
});
