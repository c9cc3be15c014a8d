import type { Assessment } from "../assessment.ts";
import type { Finding, FindingCode } from "../finding.ts";
import { bySeverity } from "../findings/bySeverity.ts";
import type { SafetySweep } from "./safety.ts";

/** What the static estimate of a power cut tells, and the simulation tells better. */
const givesWay = new Set<FindingCode>(["sump/too-small", "sump/little-room"]);

/** Returns an assessment with the findings of a sweep of the same design joined to its own, worst first. The static estimate of the
 *  power cut gives way to the simulated one.
 *  assessment of a design   sweep of the same design   -> Assessment
 *  Findings: those of both. Throws: never.
 *  Valid: both of one design and catalogue.
 *  Source: own construction.
 *  Example: withSweep({ findings: [{ code: "sump/too-small", severity: "danger", at: "/sump", source: "x" }] }, { findings: [] }).findings  ->  [] */
export function withSweep(assessment: Assessment, sweep: Pick<SafetySweep, "findings">): Assessment {
  // A design that runs over as drawn was never cut off from a running state, so there the estimate stands.
  const played = !sweep.findings.some((finding) => finding.code === "overTime/running");
  // A lost siphon that came to nothing when it was played is still the one thing that keeps the floor dry.
  const lost = sweep.findings.some((finding) => finding.code === "overTime/overflow-siphon-lost");
  const told = (code: FindingCode) => (played && givesWay.has(code)) || (lost && code === "overflow/siphon-alone");
  const kept = assessment.findings.filter((finding) => !told(finding.code));
  const findings: Finding[] = [...kept, ...sweep.findings].sort(bySeverity);
  return { ...assessment, findings };
}
