import type { Scenario, ScenarioAction, ScenarioKind } from "../overTime/scenario.ts";
import { timeWords } from "./timeWords.ts";

/** What a scenario's words need of a design: the names of its parts. */
export interface PartNames {
  readonly drains: readonly { readonly name: string }[];
  readonly loops: readonly { readonly name: string; readonly pumps?: readonly unknown[] }[];
}

/** Returns a scenario as a heading: what goes wrong, with the names of the parts.
 *  scenario Scenario   -> text
 *  Source: own words.
 *  Example: describeScenario({ id: "powerCut", kind: "powerCut", subjects: [], duration: 1800, evaporation: false, events: [] })  ->  "Power cut"
 *  Example: describeScenario({ id: "drainBlocked:0", kind: "drainBlocked", subjects: ["siphon"], duration: 1800, evaporation: false, events: [] })  ->  "Drain “siphon” blocked" */
export function describeScenario(scenario: Scenario): string {
  return words[scenario.kind](scenario.subjects.map(quoted), scenario);
}

/** Returns one action of a scenario as a sentence without its full stop.
 *  action ScenarioAction   names PartNames, such as a Design   -> text
 *  Source: own words.
 *  Example: describeAction({ kind: "drainBlocks", drain: 0, share: 0.5 }, { drains: [{ name: "siphon" }], loops: [] })  ->  "drain “siphon” is blocked by 50\u202f%" */
export function describeAction(action: ScenarioAction, { drains, loops }: PartNames): string {
  const loop = (index: number) => quoted(loops[index]?.name ?? `loop ${index + 1}`);
  const pump = (of: { loop: number; pump: number }) =>
    loops[of.loop]?.pumps?.length === 1 ? `the pump of ${loop(of.loop)}` : `pump ${of.pump + 1} of ${loop(of.loop)}`;
  switch (action.kind) {
    case "powerOff":
      return "the mains fail";
    case "powerOn":
      return "the mains are back";
    case "pumpStops":
      return `${pump(action)} stops`;
    case "pumpStarts":
      return `${pump(action)} starts`;
    case "pumpSpeed":
      return `${pump(action)} is set to ${percent(action.speed)} speed`;
    case "drainBlocks": {
      const drain = `drain ${quoted(drains[action.drain]?.name ?? String(action.drain + 1))}`;
      if (action.share === 0) return `${drain} is cleared`;
      const extent = action.share === 1 ? "wholly" : `by ${percent(action.share)}`;
      return action.over === undefined || action.over === 0
        ? `${drain} is blocked ${extent}`
        : `${drain} begins to clog, ${extent} in ${timeWords(action.over)}`;
    }
    case "checkValvesLeak":
      if (action.share === 0) return `the check valves of ${loop(action.loop)} hold again`;
      return action.share === 1
        ? `the check valves of ${loop(action.loop)} stick open`
        : `the check valves of ${loop(action.loop)} leak, open by ${percent(action.share)}`;
    case "siphonBreaksClog":
      return `the siphon breaks of ${loop(action.loop)} clog`;
    case "topOffStops":
      return "the top-off stops working";
    case "topOffRuns":
      return "the top-off works again";
    case "topOffSticksOpen":
      return "the top-off sticks open";
  }
}

const words: Readonly<Record<ScenarioKind, (subjects: readonly string[], scenario: Scenario) => string>> = {
  powerCut: () => "Power cut",
  restart: () => "Restart after a power cut",
  drainBlocked: ([drain]) => `Drain ${drain} blocked`,
  drainHalfBlocked: ([drain]) => `Drain ${drain} half blocked`,
  twoDrainsBlocked: ([first, second]) => `Drains ${first} and ${second} both blocked`,
  pumpFails: (_, { subjects: [loop = "", pump] }) => `Pump ${pump} of ${quoted(loop)} fails`,
  checkValveStuck: ([loop]) => `Power cut, check valve of ${loop} stuck open`,
  siphonBreakClogged: ([loop]) => `Power cut, siphon break of ${loop} clogged`,
  // True of a top-off that fails and of a system that never had one.
  topOffFails: (_, { duration }) => `No top-up for ${timeWords(duration)}`,
  topOffStuckOpen: () => "Top-off stuck open",
  strainerFurs: ([drain]) => `Strainer of ${drain} furs up slowly`,
  own: (_, { subjects: [name], id }) => name ?? id,
};

const quoted = (name: string): string => `“${name}”`;

const percent = (share: number): string => `${Number((share * 100).toPrecision(3))}\u202f%`;
