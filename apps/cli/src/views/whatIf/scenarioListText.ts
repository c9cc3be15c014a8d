import { describeAction, describeScenario, type Scenario, timeWords } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import type { Look } from "../../output/deliver.ts";
import { tableText } from "../../output/table.ts";
import { section } from "../section.ts";

/** Returns the scenarios that a design can meet: id, words, what is done, and for how long the system is followed. */
export function scenarioListText(scenarios: readonly Scenario[], design: Design, look: Look): string {
  const rows = scenarios.map((scenario) => [
    scenario.id,
    describeScenario(scenario),
    scenario.events.map(({ at, action }) => `${timeWords(at)}: ${describeAction(action, design)}`).join("; "),
    timeWords(scenario.duration),
  ]);
  const table = tableText(
    [
      { head: "id" },
      { head: "scenario", flexible: true },
      { head: "what happens", flexible: true },
      { head: "followed for", align: "right" },
    ],
    rows,
    look.width,
  );
  return section(`Scenarios of ${design.name}`, table, look);
}
