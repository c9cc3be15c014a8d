import { listed, nearest, type OwnScenario, type Problem } from "@tidewright/design";
import type { Scenario } from "./scenario.ts";

/** Returns a scenario document, resolved against its design, as a scenario to play.
 *  own scenario as `readScenario` answers it; times [s]   -> Scenario with the id "own"
 *  Findings: none. Throws: never.
 *  Valid: a scenario that was read against the design it is played on.
 *  Source: own construction.
 *  Example: asScenario({ name: "Storm night", duration: 3600, evaporation: false, events: [] }).subjects  ->  ["Storm night"] */
export function asScenario({ name, duration, evaporation, events }: OwnScenario): Scenario {
  return { id: "own", kind: "own", subjects: [name], duration, evaporation, events };
}

/** Returns what is told of a scenario that a design cannot meet; the place is the asker's to add.
 *  id as asked; known scenarios of the design   -> message, value and fix, with the nearest id where one is near
 *  Findings: none. Throws: never.
 *  Valid: any text.
 *  Source: own construction.
 *  Example: unknownScenario("flood", []).message  ->  "there is no such scenario" */
export function unknownScenario(id: string, known: readonly Scenario[]): Omit<Problem, "path"> {
  const ids = known.map((scenario) => scenario.id);
  const like = nearest(id, ids);
  const choices = `this design can meet ${listed(ids, 40)}`;
  return {
    message: "there is no such scenario",
    value: id,
    fix: like === undefined ? choices : `did you mean "${like}"? ${choices}`,
  };
}
