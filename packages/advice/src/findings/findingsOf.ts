import type { Assessment } from "../assessment.ts";
import type { Finding } from "../finding.ts";
import type { PreparedSystem } from "../system/prepare.ts";
import type { SolvedSystem } from "../system/solveSystem.ts";
import { bySeverity } from "./bySeverity.ts";
import { drainFindings } from "./drainFindings.ts";
import { lineFindings } from "./lineFindings.ts";
import { pumpFindings } from "./pumpFindings.ts";
import { systemFindings } from "./systemFindings.ts";

/** Returns all findings, worst first, in the order of their parts within a severity. Source: the limits, each with its own. */
export function findingsOf(
  system: PreparedSystem,
  solved: SolvedSystem,
  state: Omit<Assessment, "findings">,
): Finding[] {
  const subject = { system, solved, state };
  const found = [drainFindings, pumpFindings, lineFindings, systemFindings].flatMap((finder) => finder(subject));
  return found.sort(bySeverity);
}
