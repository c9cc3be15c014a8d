import { isDeepStrictEqual } from "node:util";

/** Every value of a document by its place, as JSON. */
export type Cells = ReadonlyMap<string, string>;

/** Begins the note of a part that an editor of the trial has put in: its place is known by it, wherever the part moves. */
export const inserted = "+";

const known = new WeakMap<object, Cells>();

/** Returns the values of a document by places that do not move: list entries go by id, by name, by the note of what was
 *  put in, else by their number among those that were there from the start. */
export function cellsOf(document: object): Cells {
  const there = known.get(document);
  if (there !== undefined) return there;
  const cells = new Map<string, string>();
  fill(cells, "", document);
  known.set(document, cells);
  return cells;
}

function fill(cells: Map<string, string>, path: string, value: unknown): void {
  if (isList(value)) {
    let place = 0;
    for (const entry of value) fill(cells, `${path}/${markOf(entry) ?? place++}`, entry);
  } else if (isThing(value)) for (const [key, inner] of Object.entries(value)) fill(cells, `${path}/${key}`, inner);
  else cells.set(path, JSON.stringify(value));
}

/** A list of parts, or of such lists as the branches of a tee are; a list of plain values and quantities is one value. */
function isList(value: unknown): value is readonly unknown[] {
  return Array.isArray(value) && value.length > 0 && value.every((entry) => isThing(entry) || isList(entry));
}

function markOf(entry: unknown): unknown {
  if (!isThing(entry)) return undefined;
  const note = String(entry["note"] ?? "");
  return entry["id"] ?? entry["name"] ?? (note.startsWith(inserted) ? note : undefined);
}

/** A part or a group of fields; a quantity is one value. */
function isThing(value: unknown): value is Readonly<Record<string, unknown>> {
  if (typeof value !== "object" || value === null || Array.isArray(value)) return false;
  return !isDeepStrictEqual(Object.keys(value).sort(), ["unit", "value"]);
}

/** One place whose value became another; undefined stands for what is not there. */
export interface CellChange {
  readonly cell: string;
  readonly was: string | undefined;
  readonly now: string | undefined;
}

/** Returns the places at which two documents differ. */
export function cellChanges(before: object, after: object): CellChange[] {
  const [one, other] = [cellsOf(before), cellsOf(after)];
  return [...new Set([...one.keys(), ...other.keys()])]
    .map((cell) => ({ cell, was: one.get(cell), now: other.get(cell) }))
    .filter(({ was, now }) => was !== now);
}
