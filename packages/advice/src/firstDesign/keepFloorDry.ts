import type { Catalogue } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import { assess } from "../assess.ts";
import { playScenario, tightMargin } from "../overTime/playScenario.ts";
import type { Scenario } from "../overTime/scenario.ts";
import { scenariosOf } from "../overTime/scenariosOf.ts";
import { transientModelOf } from "../overTime/transientModelOf.ts";
import type { WhatIf } from "../overTime/whatIfResult.ts";
import { prepareSystem } from "../system/prepare.ts";
import { solveSystem } from "../system/solveSystem.ts";
import type { Ground } from "./ground.ts";
import type { Plan } from "./plan.ts";
import { evaporationPerDay, planTopOff } from "./planTopOff.ts";
import { practice } from "./practice.ts";

/** Scenarios that a first design must come through: what wets a floor within the hour. */
const played = new Set<Scenario["kind"]>(["powerCut", "restart", "drainBlocked", "pumpFails", "checkValveStuck"]);
/** Played once all else is dry: it runs for a day. */
const playedLast = new Set<Scenario["kind"]>(["topOffStuckOpen"]);
/** Time for which a top-off may feed a pump whose water no longer comes back [s]: as long as such a film is followed. */
const fedFor = 1800;

/** Share of the drain-down that must be in hand, a little over that of the findings. */
const reserve = 0.12;
/** Least depth in the return chamber [m]: the 80 mm of the findings and a hand's breadth for the pump. */
const leastLevel = 0.12;
const mostSteps = 40;

/** A plan that was changed until it stays dry, what it came to, and what still goes wrong. */
export interface DryPlan {
  readonly plan: Plan;
  readonly wet: readonly WhatIf[];
  readonly sumpShort: boolean;
  readonly steps: number;
}

/** Returns the plan with sump, operating level, nozzle, intake and crest changed, one step after the other, until a power cut, the
 *  restart and any one blocked drain leave the floor dry, or until there is nothing left to change.
 *  ground Ground   plan Plan with its pump   compose Plan -> Design   catalogue   -> DryPlan. Source: `assess`, engine `simulate`. */
export function keepFloorDry(
  ground: Ground,
  plan: Plan,
  compose: (plan: Plan) => Design,
  catalogue: Catalogue,
): DryPlan {
  let current = plan;
  let steps = 0;
  let sumpShort = false;
  const change = (next: Plan | undefined): boolean => {
    if (next === undefined) return false;
    current = next;
    steps++;
    return true;
  };
  // Statics first: they cost a thousandth of a film and settle most of it.
  for (; steps < mostSteps; ) {
    const { sump } = assess(compose(current), catalogue, { curves: false });
    if (sump.margin >= reserve * sump.drainDown.total) break;
    if (change(moreRoom(ground, current))) continue;
    sumpShort = true;
    break;
  }
  // Water for a long weekend without top-off, where the room lets the sump grow.
  while (steps < mostSteps && !lastsLong(current, compose(current), catalogue) && change(longerSump(ground, current)));
  let wet: WhatIf[] = [];
  for (;;) {
    const topOff = planTopOff(ground, current, compose, catalogue);
    if (topOff !== undefined) current = { ...current, topOff };
    // Statics first here too.
    if (topOff?.fits === false && steps < mostSteps && change(moreRoom(ground, current))) continue;
    // What hangs on the glass leaves the display room for all that can be pumped up: reckoned, since a pump that hunts makes long films.
    const { siphon } = ground.hangOn ? assess(compose(current), catalogue, { curves: false }).overflow : {};
    const fed = (topOff?.flow ?? 0) * fedFor;
    if (siphon && siphon.pumpable + fed > siphon.freeVolume && steps < mostSteps && change(lessAbove(ground, current)))
      continue;
    const results = playAll(compose(current), catalogue, played);
    wet = results.filter((result) => result.verdict === "wet");
    const lastOnes = () =>
      playAll(compose(current), catalogue, playedLast).filter((result) => result.verdict === "wet");
    if (steps >= mostSteps) {
      wet.push(...lastOnes());
      break;
    }
    const sumpTight = results.some(
      (result) =>
        (result.scenario.kind === "powerCut" ||
          result.scenario.kind === "restart" ||
          result.scenario.kind === "checkValveStuck") &&
        result.vessels.some(({ place, margin }) => place.startsWith("sump.") && (margin ?? 1) < 1.2 * tightMargin),
    );
    if (sumpTight && change(moreRoom(ground, current))) continue;
    const displayOver = wet.some((result) =>
      result.vessels.some(({ place, spilled }) => place === "display" && spilled > 0),
    );
    if (displayOver && change(lessAbove(ground, current))) continue;
    const last = lastOnes();
    if (last.length > 0 && change(moreRoom(ground, current))) continue;
    wet.push(...last);
    break;
  }
  return { plan: current, wet, sumpShort, steps };
}

function playAll(design: Design, catalogue: Catalogue, kinds: ReadonlySet<Scenario["kind"]>): WhatIf[] {
  const system = prepareSystem(design, catalogue);
  const over = transientModelOf(system, solveSystem(system), false);
  return scenariosOf(design)
    .filter((scenario) => kinds.has(scenario.kind))
    .map((scenario) => playScenario(system, over, scenario, false));
}

/** True where the return chamber holds what the air takes in the days in hand, above the intake. */
function lastsLong({ sump, line }: Plan, design: Design, catalogue: Catalogue): boolean {
  const perDay = evaporationPerDay(design, catalogue);
  return sump.length * sump.width * practice.chamberShares[2] * line.intake >= practice.daysInHand * perDay;
}

function longerSump(ground: Ground, plan: Plan): Plan | undefined {
  if (ground.sump !== undefined) return undefined;
  const { sump } = plan;
  for (const side of ["length", "width"] as const) {
    // No bigger than is usual: who wants more days buys a top-off, not a second tank.
    const most = Math.min(ground.room[side], practice.mostSump[side] * ground[side]);
    if (sump[side] < most - 0.004)
      return { ...plan, sump: { ...sump, [side]: Math.min(most, Math.round(sump[side] * 100) / 100 + 0.05) } };
  }
  return undefined;
}

/** More room for what falls back: a bigger sump where one is suggested, then a lower level, then less that falls back. */
function moreRoom(ground: Ground, plan: Plan): Plan | undefined {
  const { sump, line } = plan;
  const { room } = ground;
  if (ground.sump === undefined) {
    const grown = (side: "length" | "width" | "height", by: number, most: number) =>
      sump[side] < most - 0.004
        ? { ...plan, sump: { ...sump, [side]: Math.min(most, Math.round(sump[side] * by * 100) / 100 + 0.01) } }
        : undefined;
    const bigger =
      grown("length", 1.1, Math.max(sump.length, room.length)) ??
      grown("width", 1.1, Math.max(sump.width, room.width)) ??
      grown("height", 1.06, Math.max(sump.height, Math.min(0.6, room.height)));
    // A third of the height is water at most; beyond that a lower level is the better change.
    if (bigger !== undefined && !(sump.operating > 0.45 * sump.height)) return bigger;
  }
  if (sump.operating > leastLevel + 1e-6) {
    const operating = Math.max(leastLevel, sump.operating - 0.02);
    return {
      ...plan,
      sump: { ...sump, operating },
      line: { ...line, intake: Math.min(line.intake, operating - practice.intakeHeight) },
    };
  }
  if (line.nozzleDepth > 0.02)
    return { ...plan, line: { ...line, nozzleDepth: Math.max(0.02, line.nozzleDepth - 0.01), siphonBreak: 0.01 } };
  return undefined;
}

/** Less water that a blocked drain can bring up: a pump that draws air sooner, then more glass above the running level. */
function lessAbove(ground: Ground, plan: Plan): Plan | undefined {
  const { line, weir } = plan;
  // Where one siphon is all there is, glass above the water is worth more than days without top-off are.
  const glassFirst = ground.hangOn && ground.height - weir.crest < 0.075 && weir.crest >= 0.6 * ground.height;
  if (!glassFirst && line.intake > 0.04)
    return { ...plan, line: { ...line, intake: Math.max(0.04, line.intake - 0.02) } };
  const lower = 0.01;
  if (ground.height - weir.crest > 0.13 || weir.crest < 0.6 * ground.height) return undefined;
  return {
    ...plan,
    weir: { ...weir, crest: weir.crest - lower },
    drains: plan.drains.map((drain) => ({ ...drain, inlet: Math.max(0.01, drain.inlet - lower) })),
  };
}
