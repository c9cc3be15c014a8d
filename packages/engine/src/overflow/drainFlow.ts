import { type DrainLine, type DrainWater, drainLineHeadLoss } from "./drainLine.ts";
import { pipeFroude, quietFroude, sweepingFroude } from "./pipeFroude.ts";
import { siphonFlow } from "./siphonFlow.ts";
import { type DrainControl, rimWeirFlow, standpipeFlow } from "./standpipeFlow.ts";

/** How a drain is built: upright pipe with air let in, siphon held full by a valve, second pipe kept open, dry pipe for emergencies. */
export type DrainKind = "ventedStandpipe" | "throttledSiphon" | "openChannel" | "dryStandpipe";

/** How a drain runs: "quiet" Fr up to 0.3, "bursts" to 1, "swept" above 1 but not full, "siphon" full; "beyondSiphon" full and
 *  still asked for more. */
export type DrainRegime = "dry" | "quiet" | "bursts" | "swept" | "siphon" | "beyondSiphon";

/** One drain at one level. */
export interface DrainState {
  /** Flow [m3/s]. */
  readonly flow: number;
  readonly regime: DrainRegime;
  /** Froude number of the bore as if full [-]. */
  readonly froude: number;
  readonly control: DrainControl;
}

/** Returns how a drain runs at a flow, by its Froude number and whether the pipe is full.
 *  flow [m3/s]   bore [m]   control DrainControl   -> DrainRegime, never "beyondSiphon"
 *  Findings: none. Throws: never.
 *  Valid: limits are soft; entrance swirl and long horizontal runs shift them.
 *  Source: limits as quietFroude and sweepingFroude.
 *  Example: drainRegime(0.0001, 0.04, "crest")  ->  "quiet" */
export function drainRegime(flow: number, bore: number, control: DrainControl): DrainRegime {
  if (!(flow > 0)) return "dry";
  if (control === "fullPipe") return "siphon";
  const froude = pipeFroude(flow, bore);
  return froude <= quietFroude ? "quiet" : froude < sweepingFroude ? "bursts" : "swept";
}

/** Returns what a drain of a kind carries at a level. Vented kinds follow standpipeFlow; a throttled siphon runs full once its rim
 *  passes the water, and just above the rim is limited by it as a weir, so that its flow grows from nothing without a step.
 *  kind DrainKind   line DrainLine   level [m]   water DrainWater   guess [m3/s] a flow near by, if known   -> DrainState
 *  Findings: none. Throws: never.
 *  Valid: steady state, siphon started; continuous and never falling as the level rises.
 *  Source: standpipeFlow and siphonFlow.
 *  Example: drainFlow("dryStandpipe", { bore: 0.05, inletDiameter: 0.05, segments: [], valveLoss: 0, inletElevation: 0.5, outletElevation: 0 }, 0.4, { kinematicViscosity: 1e-6 }).regime  ->  "dry" */
export function drainFlow(kind: DrainKind, line: DrainLine, level: number, water: DrainWater, guess = 0): DrainState {
  const rated = kind === "throttledSiphon" ? throttledSiphonFlow : standpipeFlow;
  const { flow, control } = rated(line, level, water, guess);
  return { flow, regime: drainRegime(flow, line.bore, control), froude: pipeFroude(flow, line.bore), control };
}

function throttledSiphonFlow(
  line: DrainLine,
  level: number,
  water: DrainWater,
  guess: number,
): { readonly flow: number; readonly control: DrainControl } {
  const head = level - line.inletElevation;
  if (!(head > 0)) return { flow: 0, control: "dry" };
  const rim = rimWeirFlow(line.inletDiameter, head);
  if (drainLineHeadLoss(line, rim, water) <= level - line.outletElevation) return { flow: rim, control: "crest" };
  return { flow: Math.min(rim, siphonFlow(line, level, water, guess)), control: "fullPipe" };
}
