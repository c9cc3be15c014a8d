import { type Problem, shown } from "../problem.ts";
import { fromPointer, isPlace, toPointer } from "../read/jsonPointer.ts";
import { listed, nearest } from "../read/nearest.ts";
import type { Edit } from "./edit.ts";

/** A changed document and the edit that takes the change back. Where the edit does not fit the document, `problem` says
 *  why, `design` is the very document that was given, and `inverse` changes nothing. */
export interface Edited<Doc> {
  readonly design: Doc;
  readonly inverse: Edit;
  readonly problem?: Problem;
}

/** Returns a design with one change made; everything the change does not touch is shared with the old design.
 *  design any document of plain objects and lists; it is not changed   edit   -> Edited
 *  Findings: none; a path that leads nowhere, a list place out of range, a value that is missing are the problem.
 *  Throws: never.
 *  Valid: whether the changed document still makes sense is for `checkDesign` to say. Fields put back by an inverse stand
 *  last in their object: order of fields has no meaning.
 *  Source: paths and the meaning of move as P. Bryan, M. Nottingham, RFC 6902, JSON Patch, section 4.
 *  Example: applyEdit({ a: [1, 3] }, { op: "insert", path: "/a/1", value: 2 }).design.a  ->  [1, 2, 3]
 *  Example: applyEdit({ a: 1 }, { op: "set", path: "/a", value: 5 }).inverse  ->  {"op": "set", "path": "/a", "value": 1}
 *  Example: applyEdit({ a: 1 }, { op: "remove", path: "/b" }).problem.message  ->  "there is nothing at /b" */
export function applyEdit<Doc>(design: Doc, edit: Edit): Edited<Doc> {
  try {
    return { ...(edit.op === "move" ? move(design, edit.from, edit.path) : change(design, edit)) };
  } catch (error) {
    // Misfits are thrown deep inside the walk and caught only here, where the untouched document is at hand.
    if (!(error instanceof Misfit)) throw error;
    return { design, inverse: { op: "set", path: "", value: design }, problem: error.problem };
  }
}

class Misfit extends Error {
  readonly problem: Problem;
  constructor(path: string, message: string, fix: string) {
    super(message);
    this.problem = { path, message, fix };
  }
}

type Change = Exclude<Edit, { op: "move" }>;
interface Done {
  value: unknown;
  inverse: Edit;
}

function change<Doc>(design: Doc, edit: Change): Edited<Doc> {
  if (edit.op !== "remove" && edit.value === undefined)
    throw new Misfit(edit.path, `the edit "${edit.op}" brings no value`, 'give a value, or use "remove"');
  const keys = keysOf(edit.path);
  const done = changeAt(design, keys, 0, edit);
  return { design: done.value as Doc, inverse: done.inverse };
}

function changeAt(at: unknown, keys: readonly string[], depth: number, edit: Change): Done {
  const path = toPointer(keys.slice(0, depth));
  const key = keys[depth];
  if (key === undefined) {
    // Only the whole document is reached without a last key.
    if (edit.op !== "set") throw new Misfit("", `the whole document cannot be the place of "${edit.op}"`, 'use "set"');
    return { value: edit.value, inverse: { op: "set", path: "", value: at } };
  }
  const last = depth === keys.length - 1;
  if (Array.isArray(at)) {
    if (last) return changeList(at, key, path, edit);
    const place = placeIn(at, key, path, at.length - 1);
    const inner = changeAt(at[place], keys, depth + 1, edit);
    return { value: spliced(at, place, 1, inner.value), inverse: inner.inverse };
  }
  if (typeof at !== "object" || at === null)
    throw new Misfit(
      path,
      `${path} holds ${shown(at)}; nothing can lie inside it`,
      "give the path of an object or a list",
    );
  const fields = at as Readonly<Record<string, unknown>>;
  if (last) return changeObject(fields, key, path, edit);
  if (!Object.hasOwn(fields, key)) throw nothingAt(fields, key, path);
  const inner = changeAt(fields[key], keys, depth + 1, edit);
  return { value: { ...fields, [key]: inner.value }, inverse: inner.inverse };
}

function changeList(list: readonly unknown[], key: string, parent: string, edit: Change): Done {
  const place = placeIn(list, key, parent, edit.op === "insert" ? list.length : list.length - 1);
  const path = `${parent}/${place}`;
  if (edit.op === "insert") return { value: spliced(list, place, 0, edit.value), inverse: { op: "remove", path } };
  if (edit.op === "remove")
    return { value: spliced(list, place, 1), inverse: { op: "insert", path, value: list[place] } };
  return { value: spliced(list, place, 1, edit.value), inverse: { op: "set", path, value: list[place] } };
}

function changeObject(fields: Readonly<Record<string, unknown>>, key: string, parent: string, edit: Change): Done {
  const path = `${parent}${toPointer([key])}`;
  const there = Object.hasOwn(fields, key);
  if (edit.op === "remove") {
    if (!there) throw nothingAt(fields, key, parent);
    const { [key]: old, ...rest } = fields;
    return { value: rest, inverse: { op: "set", path, value: old } };
  }
  if (edit.op === "insert")
    throw new Misfit(
      path,
      `${parent || "the document"} is no list; nothing can be inserted into it`,
      'use "set" for a field of an object',
    );
  const value = { ...fields, [key]: edit.value };
  return { value, inverse: there ? { op: "set", path, value: fields[key] } : { op: "remove", path } };
}

function move<Doc>(design: Doc, from: string, to: string): Edited<Doc> {
  if (to === from) {
    // Nothing moves, but the place must be there.
    change(design, { op: "remove", path: from });
    return { design, inverse: { op: "move", from, path: to } };
  }
  // `to` counts after the removal: behind a list entry taken away its follower has moved up, behind a field there is none.
  const inList = Array.isArray(followed(design, keysOf(from).slice(0, -1)));
  if (!inList && to.startsWith(`${from}/`))
    throw new Misfit(to, `${from || "the whole document"} cannot be moved into itself`, "choose a place outside it");
  if (to === "") throw new Misfit("", "nothing can be moved over the whole document", "choose a place inside it");
  const taken = change(design, { op: "remove", path: from });
  const inverse = taken.inverse as Extract<Edit, { value: unknown }>;
  const keys = keysOf(to);
  const parent = followed(taken.design, keys.slice(0, -1));
  const last = keys.at(-1);
  if (
    !Array.isArray(parent) &&
    last !== undefined &&
    typeof parent === "object" &&
    parent !== null &&
    Object.hasOwn(parent, last)
  )
    throw new Misfit(to, `there is something at ${to} already`, "remove it first");
  const put = change(taken.design, { op: Array.isArray(parent) ? "insert" : "set", path: to, value: inverse.value });
  // The inverse of the putting names the place itself, also where "-" was asked for.
  return { design: put.design, inverse: { op: "move", from: put.inverse.path, path: inverse.path } };
}

/** A copy of a list with `count` entries at `place` replaced by others. */
function spliced(list: readonly unknown[], place: number, count: number, ...others: readonly unknown[]): unknown[] {
  const copy = list.slice();
  copy.splice(place, count, ...others);
  return copy;
}

function followed(value: unknown, keys: readonly string[]): unknown {
  let at = value;
  for (const key of keys) {
    if (typeof at !== "object" || at === null || !Object.hasOwn(at, key)) return undefined;
    at = (at as Record<string, unknown>)[key];
  }
  return at;
}

function keysOf(path: string): string[] {
  const keys = fromPointer(path);
  if (keys === undefined)
    throw new Misfit(path, `"${path}" is no path`, 'write it like "/drains/0/name", or "" for the whole document');
  return keys;
}

function placeIn(list: readonly unknown[], key: string, path: string, highest: number): number {
  if (key === "-" && highest === list.length) return list.length;
  if (!isPlace(key)) throw new Misfit(path, `"${key}" is no place in the list ${path}`, "give a number from 0 on");
  const place = Number(key);
  if (place > highest) {
    const range = highest < 0 ? "the list is empty" : `give 0 to ${highest}`;
    throw new Misfit(
      `${path}/${key}`,
      `the list ${path} has ${list.length} ${list.length === 1 ? "entry" : "entries"}, none at ${key}`,
      range,
    );
  }
  return place;
}

function nothingAt(fields: object, key: string, parent: string): Misfit {
  const path = `${parent}${toPointer([key])}`;
  const names = Object.keys(fields);
  const like = nearest(key, names);
  const fix = like === undefined ? `the fields there are ${listed(names, 20)}` : `did you mean "${like}"?`;
  return new Misfit(path, `there is nothing at ${path}`, fix);
}
