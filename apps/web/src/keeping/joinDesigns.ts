import { checkKeptDesign, type Design, mergeDocuments, sameJson } from "@tidewright/design";
import { currentCatalogue } from "../catalogue/currentCatalogue.ts";

/** Returns what two people made of one design joined, where it still is a sound design; else the places where they are at
 *  odds. */
export function joinDesigns(
  base: Design,
  mine: Design,
  theirs: Design,
): { readonly merged: Design } | { readonly paths: readonly string[] } {
  if (sameJson(base, mine)) return { merged: theirs };
  if (sameJson(base, theirs)) return { merged: mine };
  const joined = mergeDocuments(base, mine, theirs);
  if (!joined.ok) return { paths: joined.conflicts.map(({ path }) => path) };
  // Each part may be sound alone and both together not: a chamber made smaller here, a baffle made higher there.
  const reading = checkKeptDesign(joined.merged, currentCatalogue(), [mine, theirs]);
  return reading.ok ? { merged: reading.design } : { paths: reading.problems.map(({ path }) => path) };
}
