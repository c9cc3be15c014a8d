import type { CatalogueProblem } from "@tidewright/catalogue";
import { asProblem } from "../input/loadCatalogue.ts";
import { counted } from "../output/format.ts";

/** Returns what is wrong or doubtful in a catalogue as text: a verdict, then row by row place, matter, value and fix. */
export function catalogueProblemsText(source: string, pumps: number, problems: readonly CatalogueProblem[]): string {
  const errors = problems.filter((each) => each.severity === "error").length;
  const doubts = problems.length - errors;
  const found = problems.length === 0 ? "nothing is wrong" : `${counted(errors, "error")}, ${counted(doubts, "doubt")}`;
  const entries = problems.map((each) => {
    const { path, message, value, fix } = asProblem(each);
    const shown = value === "" ? "" : `\n    value  ${value}`;
    return `  ${path}: ${each.severity}\n    what   ${message}${shown}\n    fix    ${fix}`;
  });
  return [`${source}: ${counted(pumps, "pump")} read; ${found}`, ...entries].join("\n\n");
}
