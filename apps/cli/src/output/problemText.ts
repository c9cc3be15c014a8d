import { type Problem, shown } from "@tidewright/design";
import type { BadInput } from "../input/badInput.ts";
import { counted } from "./format.ts";
import type { Styles } from "./styles.ts";

/** Returns every problem of a bad input as lines: place, what is the matter, what stands there, how to mend it. */
export function problemText({ source, problems }: BadInput, styles: Styles): string {
  const count = counted(problems.length, "problem");
  const entries = problems.map((problem) => entryText(problem.path === "" ? source : problem.path, problem, styles));
  return [`${styles.red(`${source}: ${count}`)}`, ...entries].join("\n\n");
}

function entryText(place: string, { message, value, fix }: Problem, { bold, dim }: Styles): string {
  const lines = [`  ${bold(place)}`, `    what   ${message}`];
  if (value !== undefined) lines.push(`    value  ${dim(valueText(value))}`);
  return [...lines, `    fix    ${fix}`].join("\n");
}

const longestValue = 60;

/** Small objects, such as a quantity, are shown as they stand: "an object of 2 fields" helps nobody to find a mistake. */
function valueText(value: unknown): string {
  if (typeof value !== "object" || value === null) return shown(value);
  // Objects that a document cannot hold, such as circles, come from no file, but must not break the message either.
  try {
    const text = JSON.stringify(value);
    return text.length <= longestValue ? text : shown(value);
  } catch {
    return shown(value);
  }
}
