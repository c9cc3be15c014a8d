import { type RankOptions, type Scenario, scenariosOf, unknownScenario } from "@tidewright/advice";
import type { Design, Problem } from "@tidewright/design";
import { BadDocument } from "./computeRequest.ts";

type Query = Readonly<Record<string, string>>;

/** Most days that a top-off may be left failing. */
export const mostDays = 60;

/** Returns which loop to find pumps for, and whether pairs count.
 *  Throws: `BadDocument` with every problem. */
export function rankOptionsOf({ loop, pairs = "true" }: Query, design: Design): RankOptions {
  const problems: Problem[] = [];
  const count = design.loops.length;
  if (loop !== undefined && (!/^[1-9]\d*$/.test(loop) || Number(loop) > count))
    problems.push({ path: "?loop", message: "there is no such loop", value: loop, fix: `give 1 to ${count}` });
  if (pairs !== "true" && pairs !== "false")
    problems.push({ path: "?pairs", message: "neither true nor false", value: pairs, fix: "give true or false" });
  if (problems.length > 0) throw new BadDocument(problems);
  return { pairs: pairs === "true", ...(loop === undefined ? {} : { loop: Number(loop) - 1 }) };
}

/** Returns how many days a top-off is left failing.
 *  Throws: `BadDocument`. */
export function daysOf({ days = "10" }: Query): number {
  if (/^[1-9]\d*$/.test(days) && Number(days) <= mostDays) return Number(days);
  const fix = `give 1 to ${mostDays}`;
  throw new BadDocument([{ path: "?days", message: "not a whole number of days in reach", value: days, fix }]);
}

/** Returns the scenario that a query names.
 *  Throws: `BadDocument` where the design cannot meet it. */
export function scenarioOf(query: Query, design: Design): Scenario {
  const { scenario: id = "powerCut" } = query;
  const known = scenariosOf(design, daysOf(query));
  const found = known.find((scenario) => scenario.id === id);
  if (found !== undefined) return found;
  throw new BadDocument([{ path: "?scenario", ...unknownScenario(id, known) }]);
}

/** Returns whether the course of levels and flows is wanted.
 *  Throws: `BadDocument`. */
export function filmOf({ film = "true" }: Query): boolean {
  if (film === "true" || film === "false") return film === "true";
  throw new BadDocument([{ path: "?film", message: "neither true nor false", value: film, fix: "give true or false" }]);
}
