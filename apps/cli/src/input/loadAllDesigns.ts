import type { Catalogue } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import { BadInput } from "./badInput.ts";
import { loadDesign } from "./loadDesign.ts";
import { sourceName } from "./readInput.ts";

/** Returns the designs of several files; throws BadInput with the problems of all of them, not of the first only. */
export async function loadAllDesigns(
  files: readonly string[],
  catalogue: Catalogue,
): Promise<{ file: string; design: Design }[]> {
  const designs: { file: string; design: Design }[] = [];
  const bad: BadInput[] = [];
  // The standard input can be read once only; naming it twice would give an empty second document.
  for (const file of new Set(files)) {
    try {
      designs.push({ file: sourceName(file), design: await loadDesign(file, catalogue) });
    } catch (error) {
      if (!(error instanceof BadInput)) throw error;
      bad.push(error);
    }
  }
  if (bad.length === 0) return designs;
  if (bad.length === 1) throw bad[0];
  const all = bad.flatMap((each) =>
    each.problems.map((problem) => ({
      ...problem,
      path: `${each.source}${problem.path === "" ? "" : ` ${problem.path}`}`,
    })),
  );
  throw new BadInput(`${bad.length} files`, all);
}
