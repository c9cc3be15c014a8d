import { deepestNesting } from "../read/pruneDeep.ts";

export type Fields = Readonly<Record<string, unknown>>;

/** True for an object that is no list. */
export function isFields(value: unknown): value is Fields {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** The value of an own field; undefined where there is none, also for inherited names. */
export function fieldOf(fields: Fields, key: string): unknown {
  return Object.hasOwn(fields, key) ? fields[key] : undefined;
}

/** The fields that hold something, those of the first object first, each once. */
export function fieldNames(...all: readonly Fields[]): string[] {
  const names = new Set<string>();
  for (const fields of all) for (const key of Object.keys(fields)) if (fields[key] !== undefined) names.add(key);
  return [...names];
}

/** True for what is only ever taken whole: text, a number, a quantity with its unit (a number of one and the unit of the
 *  other is a value nobody wrote), and a list of such, as a place [x, y, z] or a range [lowest, highest]. */
export function isWhole(value: unknown, listsLeft = 3): boolean {
  if (typeof value !== "object" || value === null) return true;
  if (Array.isArray(value))
    return value.length > 0 && listsLeft > 0 && value.every((entry) => isWhole(entry, listsLeft - 1));
  const keys = Object.keys(value);
  const unit: unknown = fieldOf(value as Fields, "unit");
  return keys.length === 2 && typeof unit === "string" && Object.hasOwn(value, "value");
}

/** How two or three values are gone into: field by field, entry by entry, or not at all. Below the depth that is read
 *  everything is whole, so that no nesting overflows the stack. */
export function wayInto(values: readonly unknown[], depth: number): "fields" | "entries" | "whole" {
  if (depth >= deepestNesting || values.some((value) => isWhole(value))) return "whole";
  if (values.every(isFields)) return "fields";
  return values.every((value) => Array.isArray(value)) ? "entries" : "whole";
}
