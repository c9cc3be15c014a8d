import type { Catalogue } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import { prepareSystem } from "../system/prepare.ts";
import { solveSystem } from "../system/solveSystem.ts";
import { playScenario } from "./playScenario.ts";
import type { SafetyRow, SafetySweep } from "./safety.ts";
import { safetyAnswers } from "./safetyAnswers.ts";
import { safetyFindings } from "./safetyFindings.ts";
import { scenariosOf } from "./scenariosOf.ts";
import { sumpGain } from "./sumpGain.ts";
import { transientModelOf } from "./transientModelOf.ts";
import { verdicts, type WhatIf } from "./whatIfResult.ts";

/** What a sweep is asked for. */
export interface SweepOptions {
  /** Days without top-off; 10 where nothing is said. */
  readonly days?: number;
  /** Called after each scenario with the share of them that is done. */
  readonly progress?: (done: number, of: number) => void;
}

/** Returns every scenario of `scenariosOf` played on a design, worst first, with what follows from them: safe line, siphon breaks,
 *  smallest sump, emergency drain, and findings.
 *  design Design accepted by `checkDesign` and `checkReferences`   catalogue Catalogue   options SweepOptions   -> SafetySweep, SI
 *  Findings: those of `safetyFindings`. Throws: never for an accepted document.
 *  Valid: as `whatIf`.
 *  Source: engine `simulate`. */
export function safetySweep(design: Design, catalogue: Catalogue, options: SweepOptions = {}): SafetySweep {
  const days = options.days ?? 10;
  const system = prepareSystem(design, catalogue);
  const solved = solveSystem(system);
  const dry = transientModelOf(system, solved, false);
  const airy = transientModelOf(system, solved, true);
  const scenarios = scenariosOf(design, days);
  const played = scenarios.map((scenario, i) => {
    const result = playScenario(system, scenario.evaporation ? airy : dry, scenario, false);
    options.progress?.(i + 1, scenarios.length);
    return result;
  });
  const rows = played.map(rowOf);
  const answers = safetyAnswers({ design, catalogue, system, solved, dry, airy, days, played });
  return {
    rows: [...rows].sort(
      (a, b) => verdicts.indexOf(a.verdict) - verdicts.indexOf(b.verdict) || worstOf(a) - worstOf(b),
    ),
    answers,
    findings: safetyFindings(rows, answers, design),
  };
}

function worstOf(row: SafetyRow): number {
  return row.worst?.margin ?? Number.POSITIVE_INFINITY;
}

function rowOf(result: WhatIf): SafetyRow {
  const rimmed = result.vessels.flatMap(({ place, path, margin }) =>
    margin === undefined ? [] : [{ place, path, margin }],
  );
  const least = (wanted: (place: string) => boolean) => {
    const margins = rimmed.filter(({ place }) => wanted(place)).map(({ margin }) => margin);
    return margins.length > 0 ? Math.min(...margins) : undefined;
  };
  const display = least((place) => place === "display");
  const overflowBox = least((place) => place === "overflowBox");
  const sump = least((place) => place.startsWith("sump."));
  const worst = rimmed.reduce<(typeof rimmed)[number] | undefined>(
    (low, entry) => (low === undefined || entry.margin < low.margin ? entry : low),
    undefined,
  );
  const trouble =
    result.timeToTrouble === undefined
      ? undefined
      : result.events.find(
          (event) => event.t === result.timeToTrouble && (event.code === "rim/over" || event.code === "pump/drawsAir"),
        );
  return {
    scenario: result.scenario,
    verdict: result.verdict,
    ...(worst ? { worst } : {}),
    margins: {
      ...(display === undefined ? {} : { display }),
      ...(overflowBox === undefined ? {} : { overflowBox }),
      ...(sump === undefined ? {} : { sump }),
    },
    ...(result.timeToTrouble === undefined ? {} : { timeToTrouble: result.timeToTrouble }),
    ...(trouble ? { troubleAt: trouble.path } : {}),
    ...(trouble?.code === "rim/over" ? { troublePlace: trouble.name } : {}),
    spilled: result.spilled,
    sumpGain: sumpGain(result),
  };
}
