import type { Dimension } from "@tidewright/units";
import { type Add, asTyped, inSI, listOf } from "./loose.ts";

/** Adds wishes whose lowest value is above their highest. */
export function wishProblems(design: unknown, add: Add): void {
  const dimension: Dimension = "turnover";
  for (const wish of ["returnTurnover", "totalTurnover"]) {
    const range = listOf(design, "wishes", wish);
    const low = inSI(range[0], dimension);
    const high = inSI(range[1], dimension);
    if (low === undefined || high === undefined || low <= high) continue;
    add({
      path: `/wishes/${wish}`,
      message: `the lowest wish, ${asTyped(range[0])}, is above the highest, ${asTyped(range[1])}`,
      value: range,
      fix: "give the lower one first",
    });
  }
}
