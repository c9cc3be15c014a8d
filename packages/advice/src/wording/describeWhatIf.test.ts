import { readFileSync } from "node:fs";
import type { Design } from "@tidewright/design";
import { describe, expect, it } from "vitest";
import { scenariosOf } from "../overTime/scenariosOf.ts";
import type { WhatIf } from "../overTime/whatIfResult.ts";
import { describeAction, describeScenario } from "./describeScenario.ts";
import { describeVerdict, describeWhatIfEvent, type VerdictFacts, verdictFacts } from "./describeWhatIf.ts";
import { groupEvents, repeatWords } from "./groupEvents.ts";
import { safetyCautions } from "./safetyCautions.ts";
import { timeWords } from "./timeWords.ts";

const { topOff: _, ...lobby }: Design = JSON.parse(
  readFileSync(new URL("../../../../examples/hotel-lobby.json", import.meta.url), "utf8"),
);
const topOff = { reservoir: { value: 50, unit: "L" }, flow: { value: 60, unit: "L/h" } };
const millimetres = (si: number, dimension: string) =>
  dimension === "volume" ? `${(si * 1000).toFixed(1)} L` : `${Math.round(si * 1000)} mm`;
const plain = (text: string) => text.replaceAll("\u202f", " ");

describe("times in words", () => {
  it.each([
    [0, "0 s"],
    [8.44, "8.4 s"],
    [59.7, "60 s"],
    [119.6, "2 min"],
    [725, "12 min 5 s"],
    [7199.7, "2 h"],
    [18_720, "5 h 12 min"],
    [864_000, "10 d"],
    [532_800, "6 d 4 h"],
    [-90, "−90 s"],
    [Number.POSITIVE_INFINITY, "—"],
  ])("%d s is %s", (seconds, words) => {
    expect(plain(timeWords(seconds))).toBe(words);
  });
});

describe("scenarios in words", () => {
  it("tell each of a design's apart, with the names of its parts", () => {
    const told = scenariosOf({ ...lobby, topOff }).map((each) => describeScenario(each));
    expect(new Set(told).size).toBe(told.length);
    for (const name of [
      "Power cut",
      "Drain “siphon” blocked",
      "Drains “siphon” and “emergency” both blocked",
      "Pump 2 of “return” fails",
      "Power cut, check valve of “return” stuck open",
      "Top-off stuck open",
    ])
      expect(told).toContain(name);
    expect(told.map(plain)).toContain("No top-up for 10 d");
  });

  it("tell what is done and to what", () => {
    const told = scenariosOf({ ...lobby, topOff }).flatMap((scenario) =>
      scenario.events.map(({ action }) => plain(describeAction(action, lobby))),
    );
    expect(told).toContain("drain “open channel” is blocked by 50 %");
    expect(told).toContain("drain “siphon” begins to clog, wholly in 20 h");
    expect(told).toContain("pump 1 of “return” stops");
    expect(describeAction({ kind: "pumpStops", loop: 1, pump: 0 }, lobby)).toBe("the pump of “closed loop” stops");
    for (const each of told) expect(each).not.toMatch(/undefined|NaN/);
  });
});

describe("events in words", () => {
  it.each([
    ["rim/over", "sump.return", "the sump chamber “return” passes its rim"],
    ["rim/over", "display", "the display passes its rim"],
    ["outlet/uncovered", "return outlet 2", "outlet 2 of “return” draws air"],
    ["circuit/air", "return", "the siphon through “return” breaks"],
    ["topOff/on", "topOff", "the top-off starts"],
  ] as const)("%s at %s", (code, name, words) => {
    expect(describeWhatIfEvent({ t: 1, code, path: "", name }, { events: [] }, lobby)).toBe(words);
  });

  it("name the action that was taken", () => {
    const events = [{ at: 60, action: { kind: "powerOff" } }] as const;
    expect(describeWhatIfEvent({ t: 60, code: "action", path: "", name: "", action: 0 }, { events }, lobby)).toBe(
      "the mains fail",
    );
  });
});

describe("events that repeat", () => {
  const on = (t: number) => ({ t, code: "topOff/on", path: "/topOff", name: "topOff" }) as const;
  const off = (t: number) => ({ t, code: "topOff/off", path: "/topOff", name: "topOff" }) as const;
  const act = (t: number, action: number) => ({ t, code: "action", path: "", name: "", action }) as const;
  const events = [on(10), off(20), act(25, 0), on(30), act(30, 1), off(40), on(7200)];

  it("are told once, with how often and until when; what is done stands alone", () => {
    const groups = groupEvents(events);
    expect(groups.map(([first]) => first.t)).toEqual([10, 20, 25, 30]);
    expect(groups.map((group) => plain(repeatWords(group)))).toEqual([
      ", 3 times until 2 h",
      ", again at 40 s",
      "",
      "",
    ]);
  });

  it("stay apart where they are few, and none is lost", () => {
    const groups = groupEvents(events, 3);
    expect(groups.map(([first]) => first.t)).toEqual([10, 20, 25, 30, 40]);
    expect(groups.flat().sort((a, b) => a.t - b.t)).toEqual(events);
  });
});

describe("verdicts in words", () => {
  it.each<[VerdictFacts, string]>([
    [
      { verdict: "wet", spilled: 0.0123, timeToTrouble: 145, troubleAt: "/sump/chambers/2" },
      "12.3 L of water on the floor; it begins after 2 min 25 s, over the rim of the sump.",
    ],
    [
      { verdict: "dry", spilled: 0, timeToTrouble: 90, troubleAt: "/loops/1" },
      "The floor stays dry, but the pump of “closed loop” draws air after 90 s.",
    ],
    [
      { verdict: "tight", spilled: 0, worst: { place: "sump.return", margin: 0.006 } },
      "The floor stays dry, but the sump chamber “return” comes within 6 mm of its rim: too little for waves and for the hand that set the level.",
    ],
    [
      // An inner box that runs over gives its water back to the display: no floor gets wet.
      { verdict: "tight", spilled: 0, worst: { place: "overflowBox", margin: -0.002 } },
      "The floor stays dry, though the overflow box runs 2 mm over its rim.",
    ],
    [{ verdict: "safe", spilled: 0 }, "The floor stays dry."],
  ])("%j", (facts, words) => {
    expect(plain(describeVerdict(facts, lobby, millimetres))).toBe(words);
  });

  it("are drawn from the vessel that came nearest to its rim and the event that was the trouble", () => {
    const whatIf = {
      verdict: "wet",
      spilled: 0.001,
      timeToTrouble: 80,
      vessels: [{ place: "display", margin: 0.02 }, { place: "sump.return", margin: -0.003 }, { place: "topOff" }],
      events: [
        { t: 60, code: "action", path: "", name: "", action: 0 },
        { t: 80, code: "rim/over", path: "/sump/chambers/2", name: "sump.return" },
      ],
    } as unknown as WhatIf;
    expect(verdictFacts(whatIf)).toEqual({
      verdict: "wet",
      spilled: 0.001,
      timeToTrouble: 80,
      troubleAt: "/sump/chambers/2",
      worst: { place: "sump.return", margin: -0.003 },
    });
  });
});

describe("cautions", () => {
  it("begin with the plug and speak of parts that are there", () => {
    const told = safetyCautions(lobby).join(" ");
    expect(safetyCautions(lobby)[0]).toContain("pull the plug");
    expect(told).toContain("Never rely on a check valve alone");
    expect(told).not.toContain("reservoir");
    expect(safetyCautions({ ...lobby, topOff }).join(" ")).toContain("reservoir");
  });
});
