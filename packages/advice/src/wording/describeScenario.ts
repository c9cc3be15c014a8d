import { englishWords, type Words } from "@tidewright/words";
import type { Scenario, ScenarioAction } from "../overTime/scenario.ts";
import { timeWords } from "./timeWords.ts";

/** What a scenario's words need of a design: the names of its parts. */
export interface PartNames {
  readonly drains: readonly { readonly name: string }[];
  readonly loops: readonly { readonly name: string; readonly pumps?: readonly unknown[] }[];
}

/** Returns a scenario as a heading: what goes wrong, with the names of the parts.
 *  scenario Scenario   words of the reader's language, English where left out   -> text
 *  Source: own words.
 *  Example: describeScenario({ id: "powerCut", kind: "powerCut", subjects: [], duration: 1800, evaporation: false, events: [] })  ->  "Power cut"
 *  Example: describeScenario({ id: "drainBlocked:0", kind: "drainBlocked", subjects: ["siphon"], duration: 1800, evaporation: false, events: [] })  ->  "Drain “siphon” blocked" */
export function describeScenario(scenario: Scenario, words: Words = englishWords): string {
  const { kind, subjects, id, duration } = scenario;
  const [first = "", second = ""] = subjects;
  if (kind === "own") return subjects[0] ?? id;
  // "No top-up" is true of a top-off that fails and of a system that never had one.
  return words.say(`scenario.${kind}`, { first, second, time: timeWords(duration, words) });
}

/** Returns one action of a scenario as a sentence without its full stop.
 *  action ScenarioAction   names PartNames, such as a Design   words of the reader's language, English where left out   -> text
 *  Source: own words.
 *  Example: describeAction({ kind: "drainBlocks", drain: 0, share: 0.5 }, { drains: [{ name: "siphon" }], loops: [] })  ->  "drain “siphon” is blocked by 50\u202f%" */
export function describeAction(
  action: ScenarioAction,
  { drains, loops }: PartNames,
  words: Words = englishWords,
): string {
  const { say } = words;
  const percent = (share: number) => words.decimal(`${Number((share * 100).toPrecision(3))}\u202f%`);
  const loop = (index: number) => loops[index]?.name ?? say("scenario.action.loop", { number: index + 1 });
  const pump = (of: { loop: number; pump: number }) =>
    loops[of.loop]?.pumps?.length === 1
      ? say("scenario.action.thePump", { loop: loop(of.loop) })
      : say("scenario.action.pump", { number: of.pump + 1, loop: loop(of.loop) });
  switch (action.kind) {
    case "powerOff":
    case "powerOn":
    case "overflowSiphonDrawsAir":
    case "topOffStops":
    case "topOffRuns":
    case "topOffSticksOpen":
      return say(`scenario.action.${action.kind}`);
    case "pumpStops":
    case "pumpStarts":
      return say(`scenario.action.${action.kind}`, { pump: pump(action) });
    case "pumpSpeed":
      return say("scenario.action.pumpSpeed", { pump: pump(action), share: percent(action.speed) });
    case "drainBlocks": {
      const drain = drains[action.drain]?.name ?? String(action.drain + 1);
      if (action.share === 0) return say("scenario.action.drainCleared", { drain });
      const share = percent(action.share);
      if (action.over === undefined || action.over === 0)
        return say(action.share === 1 ? "scenario.action.drainBlocked" : "scenario.action.drainPartBlocked", {
          drain,
          share,
        });
      const time = timeWords(action.over, words);
      return say(action.share === 1 ? "scenario.action.drainClogs" : "scenario.action.drainPartClogs", {
        drain,
        share,
        time,
      });
    }
    case "checkValvesLeak": {
      const of = { loop: loop(action.loop), share: percent(action.share) };
      if (action.share === 0) return say("scenario.action.checkValvesHold", of);
      return say(action.share === 1 ? "scenario.action.checkValvesStick" : "scenario.action.checkValvesLeak", of);
    }
    case "siphonBreaksClog":
      return say("scenario.action.siphonBreaksClog", { loop: loop(action.loop) });
  }
}
