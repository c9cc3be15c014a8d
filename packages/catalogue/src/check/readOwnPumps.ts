import { type CatalogueProblem, shown } from "../catalogueProblem.ts";
import type { PumpRow } from "../pumps/pump.ts";
import { checkPump } from "./checkPump.ts";

/** A row of a shop's own as it is kept: what `data` holds is whatever was once sent. */
export interface OwnRow {
  readonly id: string;
  readonly data: unknown;
}

/** The pumps among a shop's own rows that can be computed with, and what is wrong with the others. */
export interface OwnPumps {
  readonly pumps: readonly PumpRow[];
  /** Errors alone: what is merely hard to believe is the shop's own affair. */
  readonly problems: readonly CatalogueProblem[];
}

/** Returns the pumps that a shop's own rows hold; a row with an error gives problems and no pump, so that one bad row takes
 *  none of the others with it.
 *  rows id and data of each, data as it was sent, of any kind   -> OwnPumps; pumps in SI, in the order of the rows and named
 *  by the row's own id; problems with the row's place from 1, an empty column where the data as a whole is no pump
 *  Findings: the errors of `checkPump`; data that is no object, or lacks fields. Throws: never.
 *  Valid: any rows, also those of a backup or of another version of the program.
 *  Source: own construction.
 *  Example: readOwnPumps([{ id: "house-1", data: "a pump" }]).problems[0].problem  ->  "is no pump"            */
export function readOwnPumps(rows: readonly OwnRow[]): OwnPumps {
  const pumps: PumpRow[] = [];
  const problems: CatalogueProblem[] = [];
  for (const [index, row] of rows.entries()) {
    const wrong = rowProblems(row, index + 1);
    if (wrong.length === 0) pumps.push({ ...(row.data as PumpRow), id: row.id });
    else problems.push(...wrong);
  }
  return { pumps, problems };
}

function rowProblems({ id, data }: OwnRow, row: number): CatalogueProblem[] {
  const wholly = (problem: string, fix: string): CatalogueProblem[] => [
    { list: "pumps", row, id: shown(id), column: "", value: "", problem, fix, severity: "error" },
  ];
  if (typeof data !== "object" || data === null || Array.isArray(data)) {
    return wholly("is no pump", "give an object with the fields of a pump");
  }
  const lacking = () =>
    wholly("lacks fields of a pump, or has some of another kind", "give every field as /api/catalogue/pump shows them");
  const { placements, curves } = data as { readonly placements?: unknown; readonly curves?: unknown };
  if (!Array.isArray(placements) || !Array.isArray(curves)) return lacking();
  try {
    return checkPump({ ...(data as PumpRow), id }, row).filter(({ severity }) => severity === "error");
  } catch {
    // The check reads rows that a table gave, whose fields are all there; what it stumbles over is no such row.
    return lacking();
  }
}
