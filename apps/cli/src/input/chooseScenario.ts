import { type Scenario, scenariosOf } from "@tidewright/advice";
import { type Design, listed, nearest, type OwnScenario, readScenario } from "@tidewright/design";
import { BadInput, badSource } from "./badInput.ts";
import { readInput, sourceName } from "./readInput.ts";

/** Returns the scenario that a word on the command line means: the id of one that the tool knows for this design, or a scenario
 *  document by its file name, "-" being the standard input; throws BadInput with all problems. */
export async function chooseScenario(word: string, design: Design, days: number): Promise<Scenario> {
  const known = scenariosOf(design, days);
  const found = known.find((scenario) => scenario.id === word);
  if (found !== undefined) return found;
  if (!looksLikeFile(word)) throw badSource("SCENARIO", ...unknownScenario(word, known));
  const reading = readScenario(await readInput(word), design);
  if (!reading.ok) throw new BadInput(sourceName(word), reading.problems);
  return asScenario(reading.scenario);
}

/** Returns a scenario document, resolved against its design, as a scenario to play. */
export function asScenario({ name, duration, evaporation, events }: OwnScenario): Scenario {
  return { id: "own", kind: "own", subjects: [name], duration, evaporation, events };
}

/** Returns what is told of a scenario that no design knows: message, fix, and the word. */
export function unknownScenario(
  word: string,
  known: readonly Scenario[],
): [message: string, fix: string, value: string] {
  const ids = known.map((scenario) => scenario.id);
  const like = nearest(word, ids);
  const choices = `this design can meet ${listed(ids, 40)}`;
  return ["there is no such scenario", like === undefined ? choices : `did you mean "${like}"? ${choices}`, word];
}

/** Ids are words with a colon at most: what has a dot, a slash or is "-" was meant as a file. */
function looksLikeFile(word: string): boolean {
  return word === "-" || /[./\\]/.test(word.replace(/^pumpFails:\d+\.\d+$/, ""));
}
