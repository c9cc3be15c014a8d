import { toSI } from "@tidewright/units";
import { versionProblems } from "../migrations/versionProblems.ts";
import type { Problem } from "../problem.ts";
import { partIndex, scenarioProblems } from "../references/scenarioProblems.ts";
import type { Design } from "../schema/design.ts";
import {
  type OwnScenario,
  type OwnScenarioAction,
  type ScenarioDocument,
  scenarioDocumentSchema,
} from "../schema/scenario.ts";
import { addNew, findSchemaProblems } from "./checkDesign.ts";
import { pruneDeep } from "./pruneDeep.ts";
import { readJson } from "./readJson.ts";

/** Either a scenario resolved against a design, or all problems of its document. */
export type ScenarioReading =
  | { readonly ok: true; readonly scenario: OwnScenario }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Returns the scenario of a JSON text, its parts found in a design, or the complete list of its problems.
 *  text at most `longestDocument` characters   design Design accepted by `checkDesign`   -> ScenarioReading, SI
 *  Findings: none; problems as `readJson` and `checkScenario`. Throws: never.
 *  Valid: any text.
 *  Source: own construction; RFC 8259.
 *  Example: readScenario("{}", { drains: [], loops: [] }).problems.map((each) => each.path)  ->  ["/tidewright", "/scenario"] */
export function readScenario(text: string, design: Design): ScenarioReading {
  const read = readJson(text);
  return read.ok ? checkScenario(read.value, design) : read;
}

/** Returns a value as a scenario, its parts found in a design, or the complete list of its problems: those of the schema,
 *  times out of order or past the end, parts the design does not have, events that cannot happen to it.
 *  value anything   design Design accepted by `checkDesign`   -> ScenarioReading, SI
 *  Findings: none; problems name path, value and fix. Throws: never.
 *  Valid: any value, circles and NaN included.
 *  Source: own construction.
 *  Example: checkScenario({ tidewright: 1, scenario: { name: "cut", duration: { value: 1, unit: "h" }, events: [{ at: { value: 1, unit: "min" }, do: "powerOff" }] } }, { drains: [], loops: [] }).scenario.events[0].at  ->  60 */
export function checkScenario(value: unknown, design: Design): ScenarioReading {
  const pruned = pruneDeep(value);
  const newer = versionProblems(pruned.value, 1);
  if (newer.length > 0) return { ok: false, problems: newer };
  const problems = findSchemaProblems(scenarioDocumentSchema, pruned.value, pruned.cut);
  const crossed: Problem[] = [];
  const section = (pruned.value as { scenario?: unknown } | null | undefined)?.scenario;
  scenarioProblems(section, design, (problem) => crossed.push(problem));
  addNew(problems, crossed);
  return problems.length > 0
    ? { ok: false, problems }
    : { ok: true, scenario: resolved(pruned.value as ScenarioDocument, design) };
}

function resolved({ scenario }: ScenarioDocument, design: Design): OwnScenario {
  return {
    name: scenario.name,
    duration: toSI(scenario.duration, "time"),
    evaporation: scenario.evaporation ?? false,
    events: scenario.events.map((event) => ({ at: toSI(event.at, "time"), action: actionOf(event.do, design) })),
  };
}

type TypedAction = ScenarioDocument["scenario"]["events"][number]["do"];

/** Names have been checked, so a name that is not found is a broken invariant. */
function actionOf(action: TypedAction, design: Design): OwnScenarioAction {
  if (typeof action === "string") return { kind: action };
  const found = (list: "drains" | "loops", name: string): number => {
    const index = partIndex(design, list, name);
    if (index === undefined) throw new Error(`${name} was found among the ${list} before and is not now`);
    return index;
  };
  switch (action.kind) {
    case "pumpStops":
    case "pumpStarts":
      return { kind: action.kind, loop: found("loops", action.loop), pump: (action.pump ?? 1) - 1 };
    case "pumpSpeed":
      return {
        kind: action.kind,
        loop: found("loops", action.loop),
        pump: (action.pump ?? 1) - 1,
        speed: action.speed,
      };
    case "drainBlocks": {
      const over = action.over === undefined ? {} : { over: toSI(action.over, "time") };
      return { kind: action.kind, drain: found("drains", action.drain), share: action.share, ...over };
    }
    case "checkValvesLeak":
      return { kind: action.kind, loop: found("loops", action.loop), share: action.share };
    case "siphonBreaksClog":
      return { kind: action.kind, loop: found("loops", action.loop) };
    default:
      return { kind: action.kind };
  }
}
