import { checkScenario } from "@tidewright/design";
import { presentDesign, say, show } from "../state/bench.ts";
import { words } from "../words/useWords.ts";
import { addScenario } from "./filmState.ts";
import { showFilm } from "./showFilm.ts";

/** Takes a scenario of one's own and plays it on the design on the table; where it does not fit, all its problems are shown. */
export function openScenario(file: string, value: unknown): void {
  const design = presentDesign();
  const reading = checkScenario(value, design);
  if (!reading.ok) {
    show({ refused: { name: file, problems: reading.problems }, dialog: "problems" });
    return;
  }
  showFilm(design, addScenario({ file, value }));
  say(words().say("film.opened", { name: reading.scenario.name }));
}
