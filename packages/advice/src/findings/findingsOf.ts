import type { Assessment } from "../assessment.ts";
import type { Finding, Severity } from "../finding.ts";
import type { PreparedSystem } from "../system/prepare.ts";
import type { SolvedSystem } from "../system/solveSystem.ts";
import { drainFindings } from "./drainFindings.ts";
import { lineFindings } from "./lineFindings.ts";
import { pumpFindings } from "./pumpFindings.ts";
import { systemFindings } from "./systemFindings.ts";

const rank: Record<Severity, number> = { danger: 0, warning: 1, notice: 2 };

/** Returns all findings, worst first, in the order of their parts within a severity. Source: the limits, each with its own. */
export function findingsOf(
  system: PreparedSystem,
  solved: SolvedSystem,
  state: Omit<Assessment, "findings">,
): Finding[] {
  const subject = { system, solved, state };
  const found = [drainFindings, pumpFindings, lineFindings, systemFindings].flatMap((finder) => finder(subject));
  return found.sort((a, b) => rank[a.severity] - rank[b.severity]);
}
