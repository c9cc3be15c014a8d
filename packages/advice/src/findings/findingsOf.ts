import type { Assessment } from "../assessment.ts";
import type { Finding, FindingCode, Severity } from "../finding.ts";
import type { PreparedSystem } from "../system/prepare.ts";
import type { SolvedSystem } from "../system/solveSystem.ts";
import { drainFindings } from "./drainFindings.ts";
import type { limits } from "./limits.ts";
import { lineFindings } from "./lineFindings.ts";
import { pumpFindings } from "./pumpFindings.ts";
import { systemFindings } from "./systemFindings.ts";

/** What the finders look at. */
export interface Subject {
  readonly system: PreparedSystem;
  readonly solved: SolvedSystem;
  readonly state: Omit<Assessment, "findings">;
}

/** Adds one finding. */
export type Add = (
  code: FindingCode,
  severity: Severity,
  at: string,
  source: keyof typeof limits,
  numbers?: { value?: number; limit?: number; dimension?: string; data?: Record<string, string | number> },
) => void;

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
