import type { Catalogue } from "@tidewright/catalogue";
import type { z } from "zod";
import { migrate } from "../migrations/migrate.ts";
import type { Problem } from "../problem.ts";
import { checkReferences } from "../references/checkReferences.ts";
import { type Design, designSchema } from "../schema/design.ts";
import { findProblems } from "./findProblems.ts";
import { pruneDeep } from "./pruneDeep.ts";

/** Either a sound design, with the version it was brought up from where it was older, or all its problems.
 *  Paths are those of the current version; `migratedFrom` then says that they may differ from the file's. */
export type DesignReading =
  | { readonly ok: true; readonly design: Design; readonly migratedFrom?: number }
  | { readonly ok: false; readonly problems: readonly Problem[]; readonly migratedFrom?: number };

/** Returns a value as a design, brought up to the current version, or the complete list of its problems.
 *  value what a JSON file or a program holds   catalogue where given, references and geometry are checked as well
 *  (`checkReferences`), also in a document that has other problems   gone ids of pumps that may be missing from it
 *  -> DesignReading; the design is the value itself
 *  Findings: none; problems name path, value and fix. Throws: never.
 *  Valid: any value, circles and NaN included.
 *  Source: own construction.
 *  Example: checkDesign({ tidewright: 9 }).problems[0].path  ->  "/tidewright"
 *  Example: checkDesign({ tidewright: 1, nmae: "reef" }).ok  ->  false */
export function checkDesign(value: unknown, catalogue?: Catalogue, gone?: ReadonlySet<string>): DesignReading {
  const pruned = pruneDeep(value);
  const migrated = migrate(pruned.value);
  if (!migrated.ok) return { ok: false, problems: [...migrated.problems, ...tooDeep(pruned.cut)] };
  const from = migrated.from === migrated.to ? {} : { migratedFrom: migrated.from };
  const problems = findSchemaProblems(designSchema, migrated.value, pruned.cut);
  if (catalogue !== undefined) addNew(problems, checkReferences(migrated.value, catalogue, gone));
  return problems.length > 0
    ? { ok: false, problems, ...from }
    : { ok: true, design: migrated.value as Design, ...from };
}

/** Problems of a pruned value against a schema, those of the cut parts told as too deep nesting. */
export function findSchemaProblems(schema: z.core.$ZodType, value: unknown, cut: readonly string[]): Problem[] {
  if (cut.length === 0) return findProblems(schema, value);
  // What was cut off stands empty; that it is empty is no problem of the document's.
  const emptied = new Set(cut);
  const real = findProblems(schema, value).filter(
    ({ path }) => !emptied.has(path) && !emptied.has(path.slice(0, path.lastIndexOf("/"))),
  );
  return [...real, ...tooDeep(cut)];
}

/** Adds the problems whose place has none yet: one slip is told once. */
export function addNew(problems: Problem[], more: readonly Problem[]): void {
  const taken = new Set(problems.map(({ path }) => path));
  for (const problem of more) if (!taken.has(problem.path)) problems.push(problem);
}

function tooDeep(cut: readonly string[]): Problem[] {
  return cut.map((path) => ({
    path,
    message: "the nesting is too deep from here on, or goes round in a circle",
    fix: "keep at most about thirty tees one behind the other",
  }));
}
