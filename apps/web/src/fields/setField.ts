import { type Edit, fromPointer, valueAt } from "@tidewright/design";
import { type EditOptions, edit, presentDesign } from "../state/bench.ts";
import { problemWords } from "../words/problemWords.ts";

/** Writes one value of the document, making the objects above it where they are missing; returns why it cannot be.
 *  path JSON Pointer   value new value; undefined takes the field out   options as for `edit`   also what goes with it, in the same step:
 *  set where nothing is there yet, taken out where its value is undefined */
export function setField(
  path: string,
  value: unknown,
  options: EditOptions = {},
  also: readonly { readonly path: string; readonly value: unknown }[] = [],
): string | undefined {
  const design = presentDesign();
  if (value === undefined) {
    if (valueAt(design, path) === undefined) return undefined;
    return sentence(edit([{ op: "remove", path }], options));
  }
  const keys = fromPointer(path) ?? [];
  const edits: Edit[] = [];
  for (let depth = 1; depth < keys.length; depth += 1) {
    const above = `/${keys.slice(0, depth).join("/")}`;
    if (valueAt(design, above) === undefined) edits.push({ op: "set", path: above, value: {} });
  }
  const others = also.flatMap((other): Edit[] => {
    const there = valueAt(design, other.path) !== undefined;
    if (other.value === undefined) return there ? [{ op: "remove", path: other.path }] : [];
    return there ? [] : [{ op: "set", path: other.path, value: other.value }];
  });
  return sentence(edit([...edits, { op: "set", path, value }, ...others], options));
}

/** One problem as a sentence with its remedy. */
export function sentence(problem: { readonly message: string; readonly fix: string } | undefined): string | undefined {
  if (problem === undefined) return undefined;
  const told = problemWords(problem);
  return `${told.problem}; ${told.fix}`;
}
