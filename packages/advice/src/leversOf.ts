import type { Catalogue } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import { assess } from "./assess.ts";
import type { Assessment } from "./assessment.ts";
import type { Finding } from "./finding.ts";
import { proposeChanges } from "./levers/proposeChanges.ts";
import type { Lever, LeverEffect } from "./levers.ts";

/** Returns every single change worth thinking of, each by solving the whole changed design again, best first.
 *  benefit = 100 per danger cured (less caused), 10 per warning, plus 50 times what the return flow gains toward the aim (a share
 *  of it), 10 times the share of the yearly bill saved and 1 per dB(A) less; benefitPerCost = benefit / (10 + price).
 *  design Design   catalogue Catalogue   -> Lever[]
 *  Findings: none. Throws: never for an accepted document.
 *  Valid: one change at a time; prices are parts of the catalogue, labour not counted.
 *  Source: own search; every effect is a solution, none a rule. */
export function levers(design: Design, catalogue: Catalogue): Lever[] {
  const before = assess(design, catalogue, { curves: false });
  return proposeChanges(design, catalogue, before)
    .map(({ kind, at, label, told, design: changed, price }): Lever => {
      const after = assess(changed, catalogue, { curves: false });
      const cures = missing(before.findings, after.findings);
      const causes = missing(after.findings, before.findings);
      const benefit = benefitOf(before, after);
      return {
        kind,
        at,
        label,
        ...(told === undefined ? {} : { told }),
        design: changed,
        before: effectOf(before),
        after: effectOf(after),
        price,
        cures,
        causes,
        benefit,
        benefitPerCost: benefit / (10 + Math.max(0, price)),
      };
    })
    .filter((lever) => Math.abs(lever.benefit) > 1e-6)
    .sort((a, b) => b.benefitPerCost - a.benefitPerCost);
}

function effectOf(state: Assessment): LeverEffect {
  const main = state.loops.find((loop) => loop.purpose === "return") ?? state.loops[0];
  return {
    returnFlow: state.overflow.flow,
    totalHead: main?.totalHead ?? 0,
    watts: state.power.watts,
    annualCost: state.power.annualCost,
    soundLevel: state.sound.level,
    sumpMargin: state.sump.margin,
    drainLoad: Math.max(
      0,
      ...state.drains
        .filter((drain) => drain.kind !== "throttledSiphon")
        .map((drain) => drain.flow / drain.capacity.quiet),
    ),
    dangers: count(state, "danger"),
    warnings: count(state, "warning"),
  };
}

function count(state: Assessment, severity: Finding["severity"]): number {
  return state.findings.filter((finding) => finding.severity === severity).length;
}

function missing(from: readonly Finding[], against: readonly Finding[]): Lever["cures"] {
  const there = new Set(against.map((finding) => `${finding.code} ${finding.at}`));
  return from
    .filter((finding) => !there.has(`${finding.code} ${finding.at}`))
    .map(({ code, at, severity }) => ({ code, at, severity }));
}

function benefitOf(before: Assessment, after: Assessment): number {
  const wish = before.turnover.returnFlowWish;
  const miss = (state: Assessment) => {
    if (!wish) return 0;
    const low = Math.max(0, wish.low - state.overflow.flow);
    const high = Math.max(0, state.overflow.flow - wish.high);
    // Inside the wish the aim still pulls, a fifth as hard.
    return (low + high) / wish.aim + (0.2 * Math.abs(state.overflow.flow - wish.aim)) / wish.aim;
  };
  const saved =
    before.power.annualCost > 0 ? (before.power.annualCost - after.power.annualCost) / before.power.annualCost : 0;
  return (
    100 * (count(before, "danger") - count(after, "danger")) +
    10 * (count(before, "warning") - count(after, "warning")) +
    50 * (miss(before) - miss(after)) +
    10 * saved +
    (before.sound.level - after.sound.level)
  );
}
