import { below } from "../read/jsonPointer.ts";
import { ascending } from "./alignment.ts";
import { matchLists } from "./matchLists.ts";
import { sameJson } from "./sameJson.ts";
import { type Fields, fieldNames, fieldOf, wayInto } from "./shape.ts";

/** One place where two documents differ. `path` is in the later document, or in the earlier one for what was removed;
 *  `beforePath`, for what changed or moved, is its place in the earlier. What moved may also have changed within: that is
 *  told beside it. Values in the user's units. */
export interface Difference {
  readonly path: string;
  readonly kind: "changed" | "added" | "removed" | "moved";
  readonly before?: unknown;
  readonly after?: unknown;
  readonly beforePath?: string;
}

/** Returns every value or list entry that differs between two documents, for laying them side by side.
 *  before   after any JSON   -> list of Difference, in the order of the later document; what was removed stands after what
 *  is left of its object or list
 *  Findings: none. Throws: never.
 *  Valid: entries are found again as `mergeDocuments` says; one that only has another number because others came or went
 *  has not moved. A part replaced by one of another kind is removed and added.
 *  Source: own construction.
 *  Example: differencesBetween({ a: 1 }, { a: 2 }).map((one) => one.kind)  ->  ["changed"]
 *  Example: differencesBetween([{ id: "x" }], [{ id: "y", n: 1 }, { id: "x" }])[0].path  ->  "/0" */
export function differencesBetween(before: unknown, after: unknown): Difference[] {
  const differences: Difference[] = [];
  between(before, after, "", "", 0, differences);
  return differences;
}

function between(
  before: unknown,
  after: unknown,
  beforePath: string,
  path: string,
  depth: number,
  differences: Difference[],
): void {
  if (sameJson(before, after)) return;
  const way = wayInto([before, after], depth);
  if (way === "whole") differences.push({ path, kind: "changed", before, after, beforePath });
  else if (way === "fields") {
    const [was, is] = [before as Fields, after as Fields];
    for (const key of fieldNames(is, was)) {
      const [one, other] = [fieldOf(was, key), fieldOf(is, key)];
      const at = below(path, key);
      if (one === undefined) differences.push({ path: at, kind: "added", after: other });
      else if (other === undefined) differences.push({ path: below(beforePath, key), kind: "removed", before: one });
      else between(one, other, below(beforePath, key), at, depth + 1, differences);
    }
  } else {
    const [was, is] = [before as unknown[], after as unknown[]];
    const { to, from } = matchLists(was, is);
    const kept = to.filter((j) => j >= 0);
    const stay = new Set([...ascending(kept)].map((place) => kept[place]!));
    is.forEach((entry, j) => {
      const i = from[j]!;
      const at = below(path, j);
      if (i < 0) {
        differences.push({ path: at, kind: "added", after: entry });
        return;
      }
      const wasAt = below(beforePath, i);
      if (!stay.has(j)) differences.push({ path: at, kind: "moved", before: was[i], after: entry, beforePath: wasAt });
      between(was[i], entry, wasAt, at, depth + 1, differences);
    });
    was.forEach((entry, i) => {
      if (to[i]! < 0) differences.push({ path: below(beforePath, i), kind: "removed", before: entry });
    });
  }
}
