import { readFileSync } from "node:fs";
import { demoCatalogue } from "@tidewright/catalogue";
import { type Design, readDesign } from "@tidewright/design";
import { describe, expect, it } from "vitest";
import { isScenarioDocument, scenariosFor } from "./ownScenarios.ts";

const text = (path: string) => readFileSync(new URL(`../../../../examples/${path}`, import.meta.url), "utf8");
const json = (path: string): unknown => JSON.parse(text(path));
const design = (path: string): Design => {
  const reading = readDesign(text(path), demoCatalogue);
  if (!reading.ok) throw new Error(reading.problems[0]?.message);
  return reading.design;
};

describe("scenarios of one's own", () => {
  const lobby = { file: "lobby-pump-service.json", value: json("scenarios/lobby-pump-service.json") };
  const storm = { file: "storm-night.json", value: json("scenarios/storm-night.json") };

  it("tells a scenario from a design", () => {
    expect(isScenarioDocument(storm.value)).toBe(true);
    expect(isScenarioDocument(json("hotel-lobby.json"))).toBe(false);
    expect(isScenarioDocument([])).toBe(false);
  });

  it("can be played wherever the design has their parts, and only there", () => {
    const ids = (path: string) =>
      scenariosFor(design(path), [storm, lobby])
        .map(({ id }) => id)
        .filter((id) => id.startsWith("own:"));
    expect(ids("hotel-lobby.json")).toEqual(["own:0", "own:1"]);
    // The first tank has one pump: none of two can be taken out for service.
    expect(ids("first-tank-110.json")).toEqual(["own:0"]);
  });

  it("keep their times in seconds", () => {
    const played = scenariosFor(design("first-tank-110.json"), [storm]).at(-1);
    // 1, 21, 22 and 52 minutes as typed.
    expect(played?.events.map(({ at }) => at)).toEqual([60, 1260, 1320, 3120]);
    expect(played?.duration).toBe(5400);
  });
});
