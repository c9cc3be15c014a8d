/** Where an expected value comes from: read in print, worked out by mathematics, computed by another program, or a rule of the
 *  trade that nobody has measured. */
export type CheckTag = "published" | "analytic" | "other program" | "common practice";

/** One expected value from outside the project beside ours. */
export interface Check {
  readonly name: string;
  /** Author, title, edition, equation or table. */
  readonly source: string;
  readonly tag: CheckTag;
  readonly expected: number;
  readonly ours: () => number;
  /** Allowed difference relative to the expected value. */
  readonly tolerance: number;
  /** Why the tolerance is what it is. */
  readonly why: string;
}

/** Rows that share source, tag, tolerance and reason: [name, expected, ours]. */
export function checksOf(
  common: Pick<Check, "source" | "tag" | "tolerance" | "why">,
  rows: readonly (readonly [name: string, expected: number, ours: () => number])[],
): Check[] {
  return rows.map(([name, expected, ours]) => ({ name, expected, ours, ...common }));
}

/** Difference of ours from the expected value, relative to it. */
export function relativeDifference(check: Check): number {
  return (check.ours() - check.expected) / Math.abs(check.expected);
}
