import { checkPump, type PumpRow } from "@tidewright/catalogue";
import type { Problem } from "@tidewright/design";

/** Returns every problem of a pump that the shop adds, or none where it can be computed with; doubts are the shop's own.
 *  id of the row; data as sent   -> Problem[], paths below "/data" */
export function pumpProblems(id: string, data: unknown): Problem[] {
  const wrong = (message: string, fix: string): Problem[] => [{ path: "/data", message, fix }];
  if (typeof data !== "object" || data === null || Array.isArray(data)) {
    return wrong("is no pump", "give an object with the fields of a pump");
  }
  try {
    return checkPump({ ...(data as PumpRow), id }, 1)
      .filter(({ severity }) => severity === "error")
      .map(({ column, value, problem, fix }) => ({ path: `/data/${column}`, message: problem, value, fix }));
  } catch {
    // The check reads rows that a table gave, whose fields are all there; what it stumbles over is no such row.
    return wrong(
      "lacks fields of a pump, or has some of another kind",
      "give every field as /api/catalogue/pump shows them",
    );
  }
}
