import { asScenario, type Scenario, scenariosOf, unknownScenario } from "@tidewright/advice";
import { type Design, readScenario } from "@tidewright/design";
import { BadInput } from "./badInput.ts";
import { readInput, sourceName } from "./readInput.ts";

/** Returns the scenario that a word on the command line means: the id of one that the tool knows for this design, or a scenario
 *  document by its file name, "-" being the standard input; throws BadInput with all problems. */
export async function chooseScenario(word: string, design: Design, days: number): Promise<Scenario> {
  const known = scenariosOf(design, days);
  const found = known.find((scenario) => scenario.id === word);
  if (found !== undefined) return found;
  if (!looksLikeFile(word)) throw new BadInput("SCENARIO", [{ path: "", ...unknownScenario(word, known) }]);
  const reading = readScenario(await readInput(word), design);
  if (!reading.ok) throw new BadInput(sourceName(word), reading.problems);
  return asScenario(reading.scenario);
}

/** Ids are words with a colon at most: what has a dot, a slash or is "-" was meant as a file. */
function looksLikeFile(word: string): boolean {
  return word === "-" || /[./\\]/.test(word.replace(/^pumpFails:\d+\.\d+$/, ""));
}
