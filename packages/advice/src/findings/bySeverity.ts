import type { Finding, Severity } from "../finding.ts";

const rank: Record<Severity, number> = { danger: 0, warning: 1, notice: 2 };

/** Order of findings, the worst first; findings of one severity keep theirs. */
export function bySeverity(a: Finding, b: Finding): number {
  return rank[a.severity] - rank[b.severity];
}
