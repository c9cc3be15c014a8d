import {
  type Catalogue,
  type CatalogueProblem,
  checkCatalogue,
  demoCatalogue,
  readPumpCsv,
} from "@tidewright/catalogue";
import type { Problem } from "@tidewright/design";
import { BadInput } from "./badInput.ts";
import { readInput, sourceName } from "./readInput.ts";

/** A catalogue and everything that is wrong or doubtful in it. */
export interface LoadedCatalogue {
  readonly catalogue: Catalogue;
  readonly problems: readonly CatalogueProblem[];
}

/** Returns the demonstration catalogue, or the same with the pumps of a CSV file in place of its own. */
export async function openCatalogue(file: string | undefined): Promise<LoadedCatalogue> {
  if (file === undefined) return { catalogue: demoCatalogue, problems: checkCatalogue(demoCatalogue) };
  const read = readPumpCsv(await readInput(file));
  return { catalogue: { ...demoCatalogue, pumps: read.pumps }, problems: read.problems };
}

/** Returns the catalogue of a file for use; throws BadInput where a row of it has an error. */
export async function loadCatalogue(file: string | undefined): Promise<Catalogue> {
  if (file === undefined) return demoCatalogue;
  const { catalogue, problems } = await openCatalogue(file);
  const errors = problems.filter((each) => each.severity === "error");
  if (errors.length > 0) throw new BadInput(sourceName(file), errors.map(asProblem));
  return catalogue;
}

/** Returns a problem of the catalogue with its row and column as the place. */
export function asProblem(problem: CatalogueProblem): Problem {
  const id = problem.id === "" ? "" : ` (${problem.id})`;
  const column = problem.column === "" ? "" : `, column ${problem.column}`;
  return {
    path: `${problem.list}, row ${problem.row}${id}${column}`,
    message: problem.problem,
    value: problem.value,
    fix: problem.fix,
  };
}
