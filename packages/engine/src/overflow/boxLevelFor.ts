import { type DrainKind, type DrainRegime, drainRegime } from "./drainFlow.ts";
import type { DrainLine, DrainWater } from "./drainLine.ts";
import { DrainRating } from "./drainRating.ts";
import { rimWeirFlow } from "./standpipeFlow.ts";

/** A drain that opens into a box. */
export interface BoxDrain {
  readonly kind: DrainKind;
  readonly line: DrainLine;
}

/** Where the water of a box stands and how its drains share the flow. */
export interface BoxLevel {
  /** Level [m], between floor and rim. */
  readonly level: number;
  /** Flow of each drain [m3/s], in the order given. */
  readonly flows: readonly number[];
  readonly regimes: readonly DrainRegime[];
  /** The level would pass the rim. */
  readonly overflows: boolean;
  /** Flow that the drains cannot take at the rim [m3/s]. */
  readonly spilled: number;
}

/** Returns the level at which the drains of a box together carry a flow, and each one's share: the root of
 *  sum of drainFlow(level) = totalFlow.
 *  drains BoxDrain, any number   totalFlow [m3/s]   water DrainWater   limits floor and rim [m]
 *  near a BoxLevel of the same drains close by, if known: it only shortens the search   -> BoxLevel
 *  Findings: none; overflows and "beyondSiphon" say that the drains are too small. Throws: RangeError when totalFlow is not a number.
 *  Valid: steady state; level to 1e-12 m. Without flow the water stands at the lowest inlet, or on the floor.
 *  Source: continuity; root by Newton and secant steps inside a bracket, halved where they fail.
 *  Example: boxLevelFor([{ kind: "ventedStandpipe", line: { bore: 0.0525, inletDiameter: 0.0525, segments: [], valveLoss: 0, inletElevation: 0.3, outletElevation: -0.5 } }], 0.0002932, { kinematicViscosity: 1e-6 }, { floor: 0, rim: 0.5 }).level  ->  0.310 */
export function boxLevelFor(
  drains: readonly BoxDrain[],
  totalFlow: number,
  water: DrainWater,
  limits: { readonly floor: number; readonly rim: number },
  near?: { readonly level: number; readonly flows: readonly number[] },
): BoxLevel {
  if (Number.isNaN(totalFlow)) throw new RangeError("totalFlow must be a number of m3/s, not NaN");
  const ratings: DrainRating[] = [];
  for (let i = 0; i < drains.length; i++)
    ratings.push(new DrainRating(drains[i].kind, drains[i].line, water, near?.flows[i] ?? 0));
  const level =
    totalFlow > 0 ? levelOf(ratings, drains, totalFlow, limits.rim, near?.level) : lowestInlet(drains, limits.rim);
  let carried = 0;
  for (const rating of ratings) carried += rating.rate(level);
  const overflows = totalFlow > 0 && level >= limits.rim && carried < totalFlow;
  return {
    level: Math.min(limits.rim, Math.max(limits.floor, level)),
    flows: ratings.map((rating) => rating.flow),
    regimes: ratings.map((rating, i) => {
      const regime = drainRegime(rating.flow, drains[i].line.bore, rating.control);
      return overflows && regime === "siphon" ? "beyondSiphon" : regime;
    }),
    overflows,
    spilled: overflows ? totalFlow - carried : 0,
  };
}

function lowestInlet(drains: readonly BoxDrain[], rim: number): number {
  let lowest = rim;
  for (const { line } of drains) lowest = Math.min(lowest, line.inletElevation);
  return lowest;
}

/** The level that carries the flow, or the rim where none below it does. Every inlet bends the rating curve and every change of
 *  control kinks it, so each step is checked against the bracket of what is too low and too high. */
function levelOf(
  ratings: readonly DrainRating[],
  drains: readonly BoxDrain[],
  totalFlow: number,
  rim: number,
  near: number | undefined,
): number {
  let low = lowestInlet(drains, rim);
  let high = rim;
  let rimKnown = false;
  let x = near !== undefined && near > low && near < rim ? near : firstLevel(drains, totalFlow, low, rim);
  let before = Number.NaN;
  let surplusBefore = Number.NaN;
  for (let step = 0; step < 200; step++) {
    let surplus = -totalFlow;
    let slope = 0;
    for (const rating of ratings) {
      surplus += rating.rate(x);
      slope += rating.slope;
    }
    // Rounding of the drains' flows; it moves the level by some 1e-15 m.
    if (Math.abs(surplus) <= 1e-14 * totalFlow) return x;
    if (surplus > 0) {
      high = x;
      if (x === rim) rimKnown = true;
    } else {
      if (x >= rim) return rim;
      low = x;
    }
    if (high - low <= 4e-16 * Math.abs(high)) return rimKnown || high < rim ? x : rim;
    // Near the answer the secant is steeper in its convergence than slopes that are only near.
    const secant = (surplus - surplusBefore) / (x - before);
    const pace = secant > 0.2 * slope && secant < 5 * slope ? secant : slope;
    let next = x - surplus / pace;
    if (Math.abs(next - x) <= 1e-15) return next > low && next < high ? next : x;
    if (!(next > low && next < high) || (step > 30 && step % 2 === 0))
      next = next >= high && !rimKnown && high === rim ? rim : (low + high) / 2;
    before = x;
    surplusBefore = surplus;
    x = next;
  }
  return x;
}

/** Level at which the lowest drains would carry all the flow over their rims: near enough to begin with. */
function firstLevel(drains: readonly BoxDrain[], totalFlow: number, low: number, rim: number): number {
  let perHead = 0;
  for (const { line } of drains) if (line.inletElevation === low) perHead += rimWeirFlow(line.inletDiameter, 1);
  const head = perHead > 0 ? Math.cbrt((totalFlow / perHead) ** 2) : rim - low;
  return low + head < rim ? low + head : (low + rim) / 2;
}
