import { type Problem, shown } from "@tidewright/design";
import type { BadInput } from "../input/badInput.ts";
import type { Styles } from "./styles.ts";

/** Returns every problem of a bad input as lines: place, what is the matter, what stands there, how to mend it. */
export function problemText({ source, problems }: BadInput, styles: Styles): string {
  const count = problems.length === 1 ? "1 problem" : `${problems.length} problems`;
  const entries = problems.map((problem) => entryText(problem, styles));
  return [`${styles.red(`${source}: ${count}`)}`, ...entries].join("\n\n");
}

function entryText({ path, message, value, fix }: Problem, { bold, dim }: Styles): string {
  const lines = [`  ${bold(path === "" ? "whole document" : path)}`, `    what   ${message}`];
  if (value !== undefined) lines.push(`    value  ${dim(shown(value))}`);
  return [...lines, `    fix    ${fix}`].join("\n");
}
