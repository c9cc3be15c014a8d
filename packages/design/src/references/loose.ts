import { checkQuantity, type Dimension, toSI } from "@tidewright/units";
import type { Problem } from "../problem.ts";
import { isObject } from "../read/place.ts";

// The cross checks also look at documents with other mistakes in them, so that one reading lists everything. What is
// missing or malformed reads as undefined here; the schema's own check names it.

/** Where problems go. */
export type Add = (problem: Problem) => void;

/** The field of an object, or undefined. */
export function fieldOf(value: unknown, ...names: readonly string[]): unknown {
  let at = value;
  for (const name of names) at = isObject(at) && Object.hasOwn(at, name) ? at[name] : undefined;
  return at;
}

/** The list in a field, or an empty one. */
export function listOf(value: unknown, ...names: readonly string[]): readonly unknown[] {
  const list = fieldOf(value, ...names);
  return Array.isArray(list) ? list : [];
}

/** The text in a field, or undefined. */
export function textOf(value: unknown, ...names: readonly string[]): string | undefined {
  const text = fieldOf(value, ...names);
  return typeof text === "string" ? text : undefined;
}

/** The number in a field, or undefined. */
export function numberOf(value: unknown, ...names: readonly string[]): number | undefined {
  const number = fieldOf(value, ...names);
  return typeof number === "number" && Number.isFinite(number) ? number : undefined;
}

/** A quantity, or a bare SI number where a network allows one, as SI; undefined where it is malformed. */
export function inSI(quantity: unknown, dimension: Dimension): number | undefined {
  if (typeof quantity === "number") return Number.isFinite(quantity) ? quantity : undefined;
  const value = fieldOf(quantity, "value");
  const unit = fieldOf(quantity, "unit");
  if (typeof value !== "number" || !Number.isFinite(value) || typeof unit !== "string") return undefined;
  const typed = { value, unit };
  return checkQuantity(typed, dimension).ok ? toSI(typed, dimension) : undefined;
}

/** The quantity in a field as SI, or undefined. */
export function siOf(value: unknown, dimension: Dimension, ...names: readonly string[]): number | undefined {
  return inSI(fieldOf(value, ...names), dimension);
}

/** A quantity as typed, for a sentence. */
export function asTyped(quantity: unknown): string {
  if (typeof quantity === "number") return String(quantity);
  return `${String(fieldOf(quantity, "value"))} ${String(fieldOf(quantity, "unit"))}`;
}

/** Adds a problem for every name that an earlier entry of the list has already. */
export function noteDoubles(list: readonly unknown[], field: string, path: string, what: string, add: Add): void {
  const first = new Map<string, number>();
  list.forEach((each, i) => {
    const name = textOf(each, field);
    if (name === undefined) return;
    const before = first.get(name);
    if (before === undefined) first.set(name, i);
    else
      add({
        path: `${path}/${i}/${field}`,
        message: `the ${what} "${name}" is given already, at ${path}/${before}`,
        value: name,
        fix: `give every ${what} a name of its own`,
      });
  });
}
