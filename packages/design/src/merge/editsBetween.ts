import type { Edit } from "../edits/edit.ts";
import { below } from "../read/jsonPointer.ts";
import { ascending } from "./alignment.ts";
import { matchLists } from "./matchLists.ts";
import { sameJson } from "./sameJson.ts";
import { type Fields, fieldNames, fieldOf, wayInto } from "./shape.ts";

/** Returns edits that lead from one document to another, applied in order; a single changed value is a single edit.
 *  before   after any JSON   -> list of Edit; empty where both say the same
 *  Findings: none. Throws: never.
 *  Valid: quantities with their unit and lists of plain values, as a place [x, y, z], are set whole. Entries of other lists
 *  are found again as `mergeDocuments` says. Few edits, not provably the fewest. Order of fields has no meaning.
 *  Source: own construction; the meaning of the edits as P. Bryan, M. Nottingham, RFC 6902, JSON Patch, section 4.
 *  Example: editsBetween({ a: 1, b: 2 }, { a: 1, b: 3 })  ->  [{"op": "set", "path": "/b", "value": 3}]
 *  Example: editsBetween([{ id: "x" }, { id: "y" }], [{ id: "y" }, { id: "x" }]).length  ->  1 */
export function editsBetween(before: unknown, after: unknown): Edit[] {
  const edits: Edit[] = [];
  between(before, after, "", 0, edits);
  return edits;
}

function between(before: unknown, after: unknown, path: string, depth: number, edits: Edit[]): void {
  if (sameJson(before, after)) return;
  const way = wayInto([before, after], depth);
  if (way === "fields") fieldsBetween(before as Fields, after as Fields, path, depth, edits);
  else if (way === "entries") entriesBetween(before as unknown[], after as unknown[], path, depth, edits);
  else edits.push({ op: "set", path, value: after });
}

function fieldsBetween(before: Fields, after: Fields, path: string, depth: number, edits: Edit[]): void {
  for (const key of fieldNames(before, after)) {
    const [was, is] = [fieldOf(before, key), fieldOf(after, key)];
    const at = below(path, key);
    if (is === undefined) edits.push({ op: "remove", path: at });
    else if (was === undefined) edits.push({ op: "set", path: at, value: is });
    else between(was, is, at, depth + 1, edits);
  }
}

function entriesBetween(
  before: readonly unknown[],
  after: readonly unknown[],
  path: string,
  depth: number,
  edits: Edit[],
): void {
  const match = matchLists(before, after);
  const to = [...match.to];
  const from = [...match.from];
  const replaced = replacements(to, from);
  // First all that goes, from the end; then the order; then all that comes, from the start: from there on places are final.
  for (let i = before.length - 1; i >= 0; i--) if (to[i]! < 0) edits.push({ op: "remove", path: below(path, i) });
  const now = to.filter((j) => j >= 0);
  const sorted = [...now].sort((x, y) => x - y);
  const stay = new Set([...ascending(now)].map((place) => now[place]!));
  sorted.forEach((j, place) => {
    if (stay.has(j)) return;
    const at = now.indexOf(j);
    now.splice(at, 1);
    const target = place === 0 ? 0 : now.indexOf(sorted[place - 1]!) + 1;
    now.splice(target, 0, j);
    if (at !== target) edits.push({ op: "move", from: below(path, at), path: below(path, target) });
  });
  after.forEach((value, j) => {
    if (from[j]! < 0) edits.push({ op: "insert", path: below(path, j), value });
  });
  after.forEach((value, j) => {
    const i = from[j]!;
    if (i < 0) return;
    if (replaced.has(i)) edits.push({ op: "set", path: below(path, j), value });
    else between(before[i], value, below(path, j), depth + 1, edits);
  });
}

/** Pairs what is gone with what stands in its place, so that one "set" does for a "remove" and an "insert". */
function replacements(to: number[], from: number[]): Set<number> {
  const replaced = new Set<number>();
  let last = -1;
  to.forEach((j, i) => {
    if (j >= 0) last = j;
    else if (last + 1 < from.length && from[last + 1]! < 0) {
      last += 1;
      to[i] = last;
      from[last] = i;
      replaced.add(i);
    }
  });
  return replaced;
}
