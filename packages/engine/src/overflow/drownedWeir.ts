import { standardGravity } from "../water/index.ts";
import { type OverflowWeir, overflowWeirFlow } from "./overflowWeir.ts";

/** From this ratio of the heads on, Villemonte's curve, which would end vertically, is followed by a parabola. */
const lastRatio = 0.995;
const lastReduction = villemonte(lastRatio);
const lastGap = 1 - lastRatio;
/** Parabola a x - b x^2 in x = 1 - h2/h1 that takes over with Villemonte's value and slope and ends at 0 with a finite one. */
const chord = lastReduction / lastGap;
const lastSlope = (1.5 * 0.385 * Math.sqrt(lastRatio) * lastReduction) / (1 - lastRatio ** 1.5);
const parabolaSlope = 2 * chord - lastSlope;
const parabolaBend = (chord - lastSlope) / lastGap;

function villemonte(ratio: number): number {
  return (1 - ratio * Math.sqrt(ratio)) ** 0.385;
}

/** Returns the flow over a crest with water above it on both sides: Q = Qfree(h1) (1 - (h2/h1)^1.5)^0.385, h1 and h2 the higher and
 *  the lower water above the crest.
 *  weir OverflowWeir   crest [m]   upstreamLevel, downstreamLevel [m] on the same datum
 *  -> flow [m3/s], negative where the downstream water is the higher; 0 where neither reaches over the crest
 *  Findings: none. Throws: never.
 *  Valid: sharp crests and baffles; about 5 % more uncertain than the free weir (weirUncertainty), worse above h2/h1 = 0.9. Between
 *  0.995 and 1, where the formula's slope grows beyond bounds, a parabola goes on with its value and slope and meets 0 at level
 *  water, continuous in value and slope: 0.98, 0.78 and 0.55 of the formula where h2 is 0.4, 0.2 and 0.1 % below h1. Rising with the
 *  upstream, falling with the downstream level. The approach depth (crestHeight) is taken alike on both sides.
 *  Source: J. R. Villemonte, Submerged-weir discharge studies, Engineering News-Record, 25 December 1947, p. 866.
 *  Example: drownedWeirFlow({ length: 0.3, toothOpenShare: 1, toothHeight: 0, crestHeight: Infinity }, 0.2, 0.22, 0.21) * 3600  ->  4.5899 */
export function drownedWeirFlow(
  weir: OverflowWeir,
  crest: number,
  upstreamLevel: number,
  downstreamLevel: number,
): number {
  if (downstreamLevel > upstreamLevel) return -drownedWeirFlow(weir, crest, downstreamLevel, upstreamLevel);
  const head = upstreamLevel - crest;
  const lower = downstreamLevel - crest;
  if (!(lower > 0)) return overflowWeirFlow(weir, head);
  return overflowWeirFlow(weir, head) * reduction(lower, upstreamLevel - downstreamLevel);
}

/** Share of the free flow that passes, from the lower head and the gap between the two, which keeps its figures when it is small. */
function reduction(lower: number, gap: number): number {
  const x = gap / (lower + gap);
  return x < lastGap ? x * (parabolaSlope - parabolaBend * x) : villemonte(lower / (lower + gap));
}

/** Returns the level above a crest that drives a flow over it against the water below: the inverse of drownedWeirFlow, to 1e-13 m.
 *  weir OverflowWeir   crest [m]   flow [m3/s, >= 0]   downstreamLevel [m]
 *  -> upstream level [m]; without flow the crest or the downstream level, whichever is higher; Infinity where the crest has no length
 *  Findings: none. Throws: never.
 *  Valid: as drownedWeirFlow.
 *  Source: root of drownedWeirFlow, by the secant rule on logarithms with a bracket.
 *  Example: drownedWeirLevel({ length: 0.3, toothOpenShare: 1, toothHeight: 0, crestHeight: Infinity }, 0.2, 4.5899 / 3600, 0.21)  ->  0.22 */
export function drownedWeirLevel(weir: OverflowWeir, crest: number, flow: number, downstreamLevel: number): number {
  const base = Math.max(crest, downstreamLevel);
  // So small a flow needs no head that a number could hold, and its logarithm stays clear of underflow.
  if (!(flow > 1e-30)) return base;
  if (!(weir.length > 0) || flow === Number.POSITIVE_INFINITY) return Number.POSITIVE_INFINITY;
  const lower = base - crest;
  const flowAt = (gap: number): number =>
    lower > 0 ? overflowWeirFlow(weir, lower + gap) * reduction(lower, gap) : overflowWeirFlow(weir, gap);

  // Gap against flow is nearly a straight line in logarithms: slope 1 near level water, 0.4 to 1.5 beyond.
  const target = Math.log(flow);
  let x = Math.log(firstGap(weir, lower, flow));
  let slope = lower > 0 ? 1 : 1.5;
  let low = Number.NEGATIVE_INFINITY;
  let high = Number.POSITIVE_INFINITY;
  let previousX = x;
  let previousError = 0;
  for (let i = 0; i < 200; i++) {
    const error = Math.log(flowAt(Math.exp(x))) - target;
    if (error === 0) break;
    if (error > 0) high = Math.min(high, x);
    else low = Math.max(low, x);
    if (i > 0 && x !== previousX) slope = (error - previousError) / (x - previousX);
    if (!(slope > 0.2 && slope < 100)) slope = 1;
    previousX = x;
    previousError = error;
    x -= error / slope;
    // Late or straying steps, and those from where nothing flows, give way to halving, which cannot fail.
    if (!(x > low && x < high) || (i > 12 && high < Infinity && low > -Infinity)) {
      x = high === Infinity ? low + 1 : low === -Infinity ? high - 1 : 0.5 * (low + high);
    }
    if (Math.abs(x - previousX) * Math.exp(x) <= 1e-14 * (1 + base) || Math.abs(x - previousX) <= 1e-15) break;
  }
  return base + Math.exp(x);
}

/** Gap [m] to start from: the free head, or where that is well drowned what Villemonte's curve gives near level water. */
function firstGap(weir: OverflowWeir, lower: number, flow: number): number {
  const free = (flow / (0.602 * (2 / 3) * Math.sqrt(2 * standardGravity) * weir.length)) ** (2 / 3);
  if (!(lower > 0)) return free;
  const share = flow / overflowWeirFlow(weir, lower);
  return Math.max(1e-30, Math.min(free, (lower / 1.5) * share ** (1 / 0.385)));
}
