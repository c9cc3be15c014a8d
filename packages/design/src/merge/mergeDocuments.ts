import { below } from "../read/jsonPointer.ts";
import type { MergeConflict } from "./mergeConflict.ts";
import { mergeLists } from "./mergeLists.ts";
import { sameJson } from "./sameJson.ts";
import { type Fields, fieldNames, fieldOf, isFields, wayInto } from "./shape.ts";

/** A merged document; where the two are at odds, theirs stands in it and every such place is listed. */
export type Merged<Doc> =
  | { readonly ok: true; readonly merged: Doc }
  | { readonly ok: false; readonly merged: Doc; readonly conflicts: readonly MergeConflict[] };

/** Returns what two people made of one document, joined: what only one of them changed is taken from that one.
 *  base what both began with   mine   theirs any JSON   -> Merged
 *  Findings: none; places changed differently by both, and what one changed and the other took away, are the conflicts.
 *  Throws: never.
 *  Valid: quantities with their unit and lists of plain values are one value. List entries are the same thing by a unique
 *  `id`, else `name`, else by equality in order, else unchanged elsewhere in the list, else, of one `kind`, by likeness.
 *  Of two insertions at one place theirs comes first; an identical one counts once. Orders changed differently by both are
 *  joined where they moved different entries and the moves leave one order, else a conflict of the list. Swapping mine and
 *  theirs gives the same but for the order of such insertions. Whether the joined document still makes sense is for
 *  `checkDesign` to say.
 *  Source: the three-way rule as S. Khanna, K. Kunal, B. C. Pierce, A Formal Investigation of Diff3, FSTTCS 2007,
 *  on trees instead of lines.
 *  Example: mergeDocuments({ a: 1, b: 1 }, { a: 2, b: 1 }, { a: 1, b: 3 })  ->  {"ok": true, "merged": {"a": 2, "b": 3}}
 *  Example: mergeDocuments({ a: 1 }, { a: 2 }, { a: 3 }).conflicts  ->  [{"path": "/a", "base": 1, "mine": 2, "theirs": 3}] */
export function mergeDocuments<Doc>(base: Doc, mine: Doc, theirs: Doc): Merged<Doc> {
  const conflicts: MergeConflict[] = [];
  const merged = mergeValues(base, mine, theirs, "", 0, conflicts) as Doc;
  return conflicts.length === 0 ? { ok: true, merged } : { ok: false, merged, conflicts };
}

/** Undefined stands for what is not there. */
function mergeValues(
  base: unknown,
  mine: unknown,
  theirs: unknown,
  path: string,
  depth: number,
  conflicts: MergeConflict[],
): unknown {
  if (sameJson(mine, theirs) || sameJson(base, mine)) return theirs;
  if (sameJson(base, theirs)) return mine;
  // What both added is joined as if something empty had been there.
  const start = base === undefined ? (isFields(mine) ? {} : []) : base;
  const way = wayInto([start, mine, theirs], depth);
  const inner = (b: unknown, m: unknown, t: unknown, at: string) => mergeValues(b, m, t, at, depth + 1, conflicts);
  if (way === "fields") return mergeFields(start as Fields, mine as Fields, theirs as Fields, path, inner);
  if (way === "entries")
    return mergeLists(start as unknown[], mine as unknown[], theirs as unknown[], path, inner, conflicts);
  conflicts.push({ path, base, mine, theirs });
  return theirs;
}

type Inner = (base: unknown, mine: unknown, theirs: unknown, path: string) => unknown;

function mergeFields(base: Fields, mine: Fields, theirs: Fields, path: string, inner: Inner): unknown {
  const merged: [string, unknown][] = [];
  for (const key of fieldNames(theirs, mine, base)) {
    const value = inner(fieldOf(base, key), fieldOf(mine, key), fieldOf(theirs, key), below(path, key));
    if (value !== undefined) merged.push([key, value]);
  }
  // fromEntries also makes a field called "__proto__" a field.
  return Object.fromEntries(merged);
}
