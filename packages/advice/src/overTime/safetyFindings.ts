import type { Design } from "@tidewright/design";
import { toSI } from "@tidewright/units";
import type { Finding, FindingCode, Severity } from "../finding.ts";
import type { SafetyAnswers, SafetyRow } from "./safety.ts";
import type { ScenarioKind } from "./scenario.ts";

/** What a wet floor, or a pump that draws air, is called and how bad it is, by what brings it about. Half-blocked and furred drains are
 *  a blocked drain on its way and are told as that. */
const told: Partial<
  Record<ScenarioKind, { readonly code: FindingCode; readonly wet: Severity; readonly dry: Severity }>
> = {
  powerCut: { code: "overTime/power-cut", wet: "danger", dry: "notice" },
  restart: { code: "overTime/restart", wet: "danger", dry: "warning" },
  drainBlocked: { code: "overTime/drain-blocked", wet: "danger", dry: "warning" },
  twoDrainsBlocked: { code: "overTime/two-drains-blocked", wet: "warning", dry: "notice" },
  pumpFails: { code: "overTime/pump-fails", wet: "danger", dry: "warning" },
  checkValveStuck: { code: "overTime/check-valve-stuck", wet: "danger", dry: "warning" },
  siphonBreakClogged: { code: "overTime/siphon-break-clogged", wet: "warning", dry: "warning" },
  overflowSiphonLost: { code: "overTime/overflow-siphon-lost", wet: "danger", dry: "warning" },
  topOffFails: { code: "overTime/top-off-fails", wet: "danger", dry: "notice" },
  topOffStuckOpen: { code: "overTime/top-off-stuck-open", wet: "danger", dry: "warning" },
};

const simulated = "own simulation of all levels";

/** Moment at which something first happens [s]. */
function firstEvent({ scenario }: SafetyRow): number {
  return Math.min(...scenario.events.map((event) => event.at));
}

/** Days that nobody has to look below which a dry pump is a warning. Source: common practice, no source: a long weekend. */
const longWeekend = 4;
/** Days from a top-off's failing to a dry pump below which that is a warning. Source: common practice, no source: one look a day. */
const dailyLook = 1;

/** Returns what the sweep found, as findings: every scenario that wets the floor or runs a pump dry, vessels that come through a power
 *  cut by little, and an operating level above the safe line.
 *  rows of the sweep   answers of the sweep   design   -> Finding[]. Source: engine `simulate`; limits each with its own. */
export function safetyFindings(rows: readonly SafetyRow[], answers: SafetyAnswers, design: Design): Finding[] {
  const found: Finding[] = [];
  const early = rows.find((row) => row.timeToTrouble !== undefined && row.timeToTrouble < firstEvent(row));
  if (early)
    found.push({
      code: "overTime/running",
      severity: "danger",
      at: early.troubleAt ?? "/sump",
      value: early.timeToTrouble ?? 0,
      dimension: "time",
      data: { verdict: early.verdict, seconds: early.timeToTrouble ?? 0, place: early.troublePlace ?? "display" },
      source: simulated,
    });
  for (const row of rows) {
    const { scenario, verdict } = row;
    // What went wrong before anything happened is no fault of the scenario's.
    if (row.timeToTrouble !== undefined && row.timeToTrouble < firstEvent(row)) continue;
    if (verdict === "unsolved") {
      found.push({
        code: "overTime/unsolved",
        severity: "warning",
        at: placeOf(row, design),
        data: { scenario: scenario.id },
        source: simulated,
      });
      continue;
    }
    const entry = told[scenario.kind];
    if (!entry) continue;
    if (verdict === "wet" || verdict === "dry") {
      const days = (row.timeToTrouble ?? 0) / 86400;
      const slow = scenario.kind === "topOffFails" && verdict === "dry";
      // Without a top-off every absence is this scenario; with one it takes an empty reservoir, or a fault that a daily look shows.
      const reservoirDays = design.topOff
        ? toSI(design.topOff.reservoir, "volume") / Math.max(1e-12, answers.evaporationPerDay)
        : 0;
      const tooSoon = days + reservoirDays < longWeekend || (design.topOff !== undefined && days < dailyLook);
      found.push({
        code: entry.code,
        severity: verdict === "wet" ? entry.wet : slow && tooSoon ? "warning" : entry.dry,
        at: placeOf(row, design),
        ...(verdict === "wet"
          ? { value: row.spilled, limit: 0, dimension: "volume" }
          : { value: row.timeToTrouble ?? 0, dimension: "time" }),
        data: {
          verdict,
          names: scenario.subjects.join(" + "),
          seconds: row.timeToTrouble ?? 0,
          place: row.troublePlace ?? row.worst?.place ?? "display",
          ...(slow && design.topOff ? { unattended: (row.timeToTrouble ?? 0) + reservoirDays * 86400 } : {}),
        },
        source: slow ? "common practice, no source" : simulated,
      });
    } else if (
      verdict === "tight" &&
      (scenario.kind === "powerCut" || scenario.kind === "checkValveStuck") &&
      row.worst
    ) {
      found.push({
        code: "overTime/tight",
        severity: "warning",
        at: row.worst.path,
        value: row.worst.margin,
        limit: answers.margin,
        dimension: "length",
        data: { place: row.worst.place },
        source: "common practice, no source",
      });
    }
  }
  return found;
}

/** The part that a reader would change: the drain that blocks, the loop whose pump, valve or hole fails, else the sump. */
function placeOf({ scenario }: SafetyRow, design: Design): string {
  for (const { action } of scenario.events) {
    if ("drain" in action) return `/drains/${action.drain}`;
    if ("loop" in action) return `/loops/${action.loop}`;
  }
  if (scenario.kind === "overflowSiphonLost") return "/overflow/siphon";
  if (scenario.kind.startsWith("topOff") && design.topOff) return "/topOff";
  return "/sump";
}
