import { applyEdit, type Design } from "@tidewright/design";

/** Returns a design with one value put in place, by JSON Pointer. Source: `applyEdit`. */
export function withValue(design: Design, path: string, value: unknown): Design {
  const edited = applyEdit(design, { op: "set", path, value });
  // Paths come from the document itself; one that does not fit is our own mistake.
  if (edited.problem) throw new Error(`${edited.problem.path}: ${edited.problem.message}`);
  return edited.design;
}
