import { readFileSync } from "node:fs";
import { demoCatalogue, demoDevices, fittings, pipeSeries, valves } from "@tidewright/catalogue";
import { readDesign } from "@tidewright/design";
import { englishWords, loadWords, messageKeys } from "@tidewright/words";
import { describe, expect, it } from "vitest";
import { animalTargets } from "../animalTargets.ts";
import { assess } from "../assess.ts";
import type { Finding, FindingCode } from "../finding.ts";
import { limits } from "../findings/limits.ts";
import { proposeChanges } from "../levers/proposeChanges.ts";
import { scenariosOf } from "../overTime/scenariosOf.ts";
import { describeFinding, describeSource } from "./describeFinding.ts";
import { describeLever } from "./describeLever.ts";
import { describeAction, describeScenario } from "./describeScenario.ts";
import { timeWords } from "./timeWords.ts";

const german = await loadWords("de");
const inDimension = (si: number, dimension: string) => `${si} [${dimension}]`;

const read = readDesign(readFileSync(new URL("../../../../examples/hotel-lobby.json", import.meta.url), "utf8"));
if (!read.ok) throw new Error("the demo job does not read");
const lobby = read.design;

const codes = messageKeys.flatMap((key) => /^findings\.(.*)\.title$/.exec(key)?.[1] ?? []) as FindingCode[];

describe("what advice says in German", () => {
  it("tells every finding in every way, with all its numbers filled in", () => {
    const data = {
      name: "Strang A",
      names: "a + b",
      scenario: "x",
      one: "EUR",
      other: "CHF",
      controller: "controller",
      placed: "inSump",
      place: "sump.return",
      seconds: 72,
    };
    for (const code of codes)
      for (const [value, more] of [
        [2, {}],
        [-2, {}],
        [2, { name: "" }],
        [2, { verdict: "dry" }],
      ] as const) {
        const finding = { code, severity: "danger", at: "/sump", source: "geometry", value, limit: 1 } as const;
        const told = (words: typeof german) =>
          describeFinding({ ...finding, data: { ...data, ...more } } as Finding, inDimension, words);
        const texts = Object.values(told(german));
        expect(texts.join(" "), code).not.toMatch(/[{}]|undefined|NaN/);
        expect(told(german).sentence, code).not.toBe(told(englishWords).sentence);
      }
  });

  it("names the place of an outlet and the controller of a pump in German too", () => {
    const outlet = {
      code: "flow/no-lift",
      severity: "danger",
      at: "/x",
      source: "geometry",
      value: -1,
      limit: 0,
    } as const;
    expect(
      describeFinding({ ...outlet, data: { name: "the outlet to overflowBox" } }, inDimension, german).sentence,
    ).toMatch(/Auslauf \(Ablaufschacht\)/);
    const missing = {
      code: "pump/missing-controller",
      severity: "warning",
      at: "/x",
      source: "the maker's data",
    } as const;
    expect(
      describeFinding({ ...missing, data: { name: "C40", controller: "controller" } }, inDimension, german).sentence,
    ).toMatch(/\(Steuerung\)/);
  });

  it("has the source of every limit and of every animal's range", () => {
    const sources = [...Object.values(limits), ...Object.values(animalTargets)].map(({ source }) => source);
    expect(sources.filter((source) => describeSource(source, german) === source)).toEqual([]);
    expect(sources.map((source) => describeSource(source))).toEqual(sources);
  });

  it("knows every label of the demonstration catalogue that is English", () => {
    const labels = [...fittings, ...valves, ...demoDevices, ...pipeSeries, ...Object.values(animalTargets)].map(
      ({ label }) => label,
    );
    // A size of rigid pipe reads alike: "32 mm PN 10", "1 in Schedule 40".
    const left = labels.filter((label) => german.known(label) === label && !/ (PN|Schedule) \d+$/.test(label));
    expect(left).toEqual([]);
  });

  it("says every change that helps anew, its English label word for word the same", () => {
    const changes = proposeChanges(lobby, demoCatalogue, assess(lobby, demoCatalogue, { curves: false }));
    expect(changes.length).toBeGreaterThan(10);
    for (const { label, told } of changes) {
      if (told === undefined) continue;
      expect(englishWords.say(told.key, told.values)).toBe(label);
      if (told.key !== "levers.size-up") expect(describeLever({ label, told }, german)).not.toBe(label);
    }
  });

  it("heads every scenario and words every action", () => {
    for (const scenario of scenariosOf(lobby)) {
      expect(describeScenario(scenario, german)).not.toBe(describeScenario(scenario));
      for (const { action } of scenario.events)
        expect(describeAction(action, lobby, german)).not.toBe(describeAction(action, lobby));
    }
  });

  it("writes times with a decimal comma", () => {
    expect(timeWords(8.4, german)).toBe("8,4\u202fs");
    expect(timeWords(725, german)).toBe("12\u202fmin 5\u202fs");
  });
});
