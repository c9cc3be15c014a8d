import type { Catalogue } from "@tidewright/catalogue";
import { type Design, readDesign } from "@tidewright/design";
import { BadInput } from "./badInput.ts";
import { readInput, sourceName } from "./readInput.ts";

/** Returns the sound design of a file, checked against the catalogue; throws BadInput with all its problems. */
export async function loadDesign(file: string, catalogue: Catalogue): Promise<Design> {
  const reading = readDesign(await readInput(file), catalogue);
  if (reading.ok) return reading.design;
  throw new BadInput(sourceName(file), reading.problems);
}
