import type { Assessment } from "../assessment.ts";
import type { FindingCode, Severity } from "../finding.ts";
import type { PreparedSystem } from "../system/prepare.ts";
import type { SolvedSystem } from "../system/solveSystem.ts";
import type { limits } from "./limits.ts";

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
