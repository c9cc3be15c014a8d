import type { Finding, SafetyRow } from "@tidewright/advice";

/** Returns the scenario in which a finding over time was made.
 *  finding Finding   rows of the sweep that made it   -> id of the scenario, undefined for a finding of another kind
 *  Findings: none. Throws: never.
 *  Valid: finding and rows of one sweep.
 *  Source: own construction: the code names the kind, its data the parts.
 *  Example: scenarioOfFinding({ code: "overTime/power-cut", severity: "danger", at: "/sump", source: "", data: { names: "" } }, [{ verdict: "wet", scenario: { id: "powerCut", kind: "powerCut", subjects: [] } }])  ->  "powerCut" */
export function scenarioOfFinding(finding: Finding, rows: readonly SafetyRow[]): string | undefined {
  const [family, name = ""] = finding.code.split("/");
  if (family !== "overTime") return undefined;
  if (name === "unsolved") return rows.find(({ scenario }) => scenario.id === finding.data?.["scenario"])?.scenario.id;
  if (name === "tight")
    return rows.find(({ verdict, worst }) => verdict === "tight" && worst?.path === finding.at)?.scenario.id;
  const kind = name.replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase());
  const own = rows.filter(({ scenario, verdict }) => scenario.kind === kind && verdict !== "safe");
  const names = finding.data?.["names"];
  return (own.find(({ scenario }) => scenario.subjects.join(" + ") === names) ?? own[0])?.scenario.id;
}
