import { type Problem, shown } from "../problem.ts";

/** A value under check, the JSON Pointer of where it stands, and where its problems go. */
export interface Place {
  readonly value: unknown;
  readonly path: string;
  readonly add: (problem: Problem) => void;
}

/** Adds that something of another kind was expected. */
export function wrongKind({ value, path, add }: Place, wanted: string, fix: string): void {
  add({ path, message: `${shown(value)} stands where ${wanted} is expected`, value, fix });
}

/** True for an object that is not a list. */
export function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
