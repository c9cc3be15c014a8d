import { readdirSync, readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { scenarioJsonSchema } from "../jsonSchema/documentJsonSchema.ts";
import type { Problem } from "../problem.ts";
import type { Design } from "../schema/design.ts";
import { scenarioDocumentSchema } from "../schema/scenario.ts";
import { mutated } from "../testing/mutated.ts";
import { findProblems } from "./findProblems.ts";
import { checkScenario, readScenario } from "./readScenario.ts";

const examples = new URL("../../../../examples/", import.meta.url);
const json = (name: string): Design => {
  const { topOff: _, ...design } = JSON.parse(readFileSync(new URL(name, examples), "utf8"));
  return design;
};
const reef = json("waiting-room-reef.json");
const lobby = json("hotel-lobby.json");
// biome-ignore lint/suspicious/noExplicitAny: the tests put wrong things into the document on purpose
type Loose = any;

const document = (events: Loose[], more: Loose = {}): Loose => ({
  tidewright: 1,
  scenario: { name: "own", duration: { value: 1, unit: "h" }, events, ...more },
});
const minutes = (value: number) => ({ value, unit: "min" });
const problemsOf = (value: unknown, design = reef): readonly Problem[] => {
  const read = checkScenario(value, design);
  return read.ok ? [] : read.problems;
};

describe("reading a scenario", () => {
  it("resolves names and pointers to indices, numbers of pumps from 1 to those from 0, and times to seconds", () => {
    const read = readScenario(
      JSON.stringify(
        document([
          { at: minutes(1), do: { kind: "drainBlocks", drain: "emergency", share: 0.5, over: minutes(2) } },
          { at: minutes(2), do: { kind: "drainBlocks", drain: "/drains/1", share: 1 } },
          { at: minutes(3), do: { kind: "pumpSpeed", loop: "return", pump: 2, speed: 0.6 } },
          { at: minutes(4), do: { kind: "pumpStops", loop: "/loops/1" } },
          { at: minutes(5), do: "powerOff" },
          { at: { value: 0.5, unit: "h" }, do: { kind: "powerOn" } },
        ]),
      ),
      lobby,
    );
    // Times by hand: 60 s a minute, 3600 s an hour; places as the hotel lobby lists its drains and loops.
    expect(read).toEqual({
      ok: true,
      scenario: {
        name: "own",
        duration: 3600,
        evaporation: false,
        events: [
          { at: 60, action: { kind: "drainBlocks", drain: 2, share: 0.5, over: 120 } },
          { at: 120, action: { kind: "drainBlocks", drain: 1, share: 1 } },
          { at: 180, action: { kind: "pumpSpeed", loop: 0, pump: 1, speed: 0.6 } },
          { at: 240, action: { kind: "pumpStops", loop: 1, pump: 0 } },
          { at: 300, action: { kind: "powerOff" } },
          { at: 1800, action: { kind: "powerOn" } },
        ],
      },
    });
  });

  it("names every problem at once, each with a fix", () => {
    const problems = problemsOf(
      document(
        [
          { at: minutes(-1), do: "powerOf" },
          { at: minutes(90), do: { kind: "drainBlocks", drain: "sifon", share: 1.5 } },
          { at: minutes(30), do: { kind: "pumpStops", loop: "return", pump: 3 } },
          { at: minutes(95), do: "topOffStops" },
          { at: minutes(96), do: "drainBlocks" },
        ],
        { name: "" },
      ),
    );
    expect(problems.map(({ path }) => path).sort()).toEqual([
      "/scenario/duration",
      "/scenario/events/0/at",
      "/scenario/events/0/do",
      "/scenario/events/1/do/drain",
      "/scenario/events/1/do/share",
      "/scenario/events/2/at",
      "/scenario/events/2/do/pump",
      "/scenario/events/3/do",
      "/scenario/events/4/do",
      "/scenario/name",
    ]);
    for (const { fix, message } of problems) expect([fix, message]).not.toContain("");
    const fixes = Object.fromEntries(problems.map(({ path, fix }) => [path, fix]));
    expect(fixes["/scenario/events/0/do"]).toContain('did you mean "powerOff"?');
    expect(fixes["/scenario/events/1/do/drain"]).toContain('did you mean "siphon"?');
    expect(fixes["/scenario/events/2/do/pump"]).toBe("give 1, or leave the number out");
    expect(fixes["/scenario/events/4/do"]).toBe('write { "kind": "drainBlocks" } with "drain", "share" and "over"');
  });

  it.each<[string, Loose, string, RegExp]>([
    ["a duration over sixty days", document([], { duration: { value: 61, unit: "d" } }), "/scenario/duration", /60 d/],
    ["no duration at all", document([], { duration: minutes(0) }), "/scenario/duration", /above zero/],
    [
      "more than a thousand events",
      document(Array.from({ length: 1001 }, () => ({ at: minutes(1), do: "powerOff" }))),
      "/scenario/events",
      /at most 1000/,
    ],
    ["an event without an action", document([{ at: minutes(1) }]), "/scenario/events/0/do", /"powerOff"/],
    ["a number for an action", document([{ at: minutes(1), do: 7 }]), "/scenario/events/0/do", /one of "powerOff"/],
    [
      "a kind that is not there",
      document([{ at: minutes(1), do: { kind: "drainBlock", drain: "siphon", share: 1 } }]),
      "/scenario/events/0/do/kind",
      /drainBlocks/,
    ],
    [
      "a pump by name",
      document([{ at: minutes(1), do: { kind: "pumpStops", loop: "return", pump: "left" } }]),
      "/scenario/events/0/do/pump",
      /without quotes/,
    ],
    ["a newer version", { tidewright: 2 }, "/tidewright", /newer/],
    ["a list", [], "", /\{ \}/],
  ])("refuses %s", (_what, value, path, fix) => {
    const problem = problemsOf(value).find((each) => each.path === path);
    expect(problem?.fix).toMatch(fix);
  });

  it("asks which pump is meant only where there are several", () => {
    const stop = (loop: string) => document([{ at: minutes(1), do: { kind: "pumpStops", loop } }]);
    expect(problemsOf(stop("return"), reef)).toEqual([]);
    expect(problemsOf(stop("return"), lobby).map(({ path }) => path)).toEqual(["/scenario/events/0/do/pump"]);
  });

  it("refuses events that cannot happen to the design, and takes them where they can", () => {
    const leak = document([{ at: minutes(1), do: { kind: "checkValvesLeak", loop: "return", share: 1 } }]);
    expect(problemsOf(leak, reef).map(({ path }) => path)).toEqual(["/scenario/events/0/do"]);
    expect(problemsOf(leak, lobby)).toEqual([]);
    const clog = (loop: string) => document([{ at: minutes(1), do: { kind: "siphonBreaksClog", loop } }]);
    expect(problemsOf(clog("closed loop"), lobby)).toHaveLength(1);
    expect(problemsOf(clog("return"), lobby)).toEqual([]);
    const top = document([{ at: minutes(1), do: "topOffSticksOpen" }]);
    const topOff = { reservoir: { value: 20, unit: "L" }, flow: { value: 60, unit: "L/h" } };
    expect(problemsOf(top, reef)).toHaveLength(1);
    expect(problemsOf(top, { ...reef, topOff })).toEqual([]);
  });

  it("tells of anything at all what is wrong with it", () => {
    fc.assert(
      fc.property(fc.anything(), fc.anything(), (value, action) => {
        expect(checkScenario(value, reef).ok).toBe(false);
        expect(problemsOf(document([{ at: minutes(1), do: action }])).length).toBeGreaterThan(0);
      }),
      { numRuns: 500 },
    );
  });

  it("takes two events at one moment, and one at the very end", () => {
    const events = [60, 60].map((value) => ({ at: minutes(value), do: "powerOff" }));
    expect(problemsOf(document(events))).toEqual([]);
  });
});

describe("the published JSON Schema of scenarios", () => {
  const validate = new Ajv2020({ strict: true, allErrors: true }).compile(scenarioJsonSchema());
  const folder = new URL("scenarios/", examples);
  const all = readdirSync(folder).map((name): [string, Loose] => [
    name,
    JSON.parse(readFileSync(new URL(name, folder), "utf8")),
  ]);

  it.each(all)("takes the example %s, which suits a demonstration job", (name, value) => {
    expect(validate(value)).toBe(true);
    expect(problemsOf(value, name.startsWith("lobby") ? lobby : reef)).toEqual([]);
  });

  it("agrees with zod, and so does the list of problems, on spoilt documents", () => {
    let spoilt = 0;
    const changed = fc.tuple(fc.constantFrom(...all), fc.array(fc.nat(), { minLength: 1, maxLength: 2 }));
    fc.assert(
      fc.property(changed, ([[, sound], seeds]) => {
        const value = mutated(sound, seeds);
        expect(findProblems(scenarioDocumentSchema, value).length === 0).toBe(
          scenarioDocumentSchema.safeParse(value).success,
        );
        if (scenarioDocumentSchema.safeParse(value).success) expect(validate(value)).toBe(true);
        else {
          spoilt++;
          expect(problemsOf(value)).not.toEqual([]);
        }
      }),
      { numRuns: 1000 },
    );
    expect(spoilt).toBeGreaterThan(250);
  });
});
