import { type Design, differencesBetween } from "@tidewright/design";
import { partTitle } from "../document/partTitle.ts";

/** How many parts are named before the rest is only hinted at. */
const most = 3;

/** Returns the parts that differ between two documents in words: "Riser, Return pump"; with `more` where there are others.
 *  before   after   -> names, each once, in the order of the document */
export function partsChanged(before: Design, after: Design): { readonly names: string; readonly more: boolean } {
  const titles = differencesBetween(before, after).map(({ kind, path, beforePath }) =>
    kind === "removed" ? partTitle(before, beforePath ?? path) : partTitle(after, path),
  );
  return joinedNames(titles);
}

/** Returns the parts that paths lead to in words, as `partsChanged` does. */
export function partsAt(design: Design, paths: readonly string[]): { readonly names: string; readonly more: boolean } {
  return joinedNames(paths.map((path) => partTitle(design, path)));
}

function joinedNames(titles: readonly string[]) {
  const once = [...new Set(titles)];
  return { names: once.slice(0, most).join(", "), more: once.length > most };
}
