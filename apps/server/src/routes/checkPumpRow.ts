import { readOwnPumps } from "@tidewright/catalogue";
import type { Problem } from "@tidewright/design";

/** Returns every problem of a pump that the shop adds, or none where it can be computed with; doubts are the shop's own.
 *  id of the row; data as sent   -> Problem[], paths below "/data" */
export function pumpProblems(id: string, data: unknown): Problem[] {
  return readOwnPumps([{ id, data }]).problems.map(({ column, value, problem, fix }) =>
    column === ""
      ? { path: "/data", message: problem, fix }
      : { path: `/data/${column}`, message: problem, value, fix },
  );
}
