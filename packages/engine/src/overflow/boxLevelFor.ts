import { bracketedRoot } from "./bracketedRoot.ts";
import { type DrainKind, type DrainRegime, drainFlow } from "./drainFlow.ts";
import type { DrainLine, DrainWater } from "./drainLine.ts";

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
 *  drains BoxDrain, any number   totalFlow [m3/s]   water DrainWater   limits floor and rim [m]   -> BoxLevel
 *  Findings: none; overflows and "beyondSiphon" say that the drains are too small. Throws: RangeError when totalFlow is not a number.
 *  Valid: steady state; level to 1e-12 m. Without flow the water stands at the lowest inlet, or on the floor.
 *  Source: continuity; root by Brent 1973.
 *  Example: boxLevelFor([{ kind: "ventedStandpipe", line: { bore: 0.0525, inletDiameter: 0.0525, segments: [], valveLoss: 0, inletElevation: 0.3, outletElevation: -0.5 } }], 0.0002932, { kinematicViscosity: 1e-6 }, { floor: 0, rim: 0.5 }).level  ->  0.310 */
export function boxLevelFor(
  drains: readonly BoxDrain[],
  totalFlow: number,
  water: DrainWater,
  limits: { readonly floor: number; readonly rim: number },
): BoxLevel {
  if (Number.isNaN(totalFlow)) throw new RangeError("totalFlow must be a number of m3/s, not NaN");
  // The last flow of each drain starts the next search for it.
  const guesses = new Float64Array(drains.length);
  const surplusAt = (level: number): number => {
    let sum = -totalFlow;
    for (let i = 0; i < drains.length; i++) {
      const { kind, line } = drains[i];
      const { flow } = drainFlow(kind, line, level, water, guesses[i]);
      if (flow > 0) guesses[i] = flow;
      sum += flow;
    }
    return sum;
  };
  let lowest = limits.rim;
  for (const drain of drains) lowest = Math.min(lowest, drain.line.inletElevation);
  const overflows = totalFlow > 0 && surplusAt(limits.rim) < 0;
  let level = overflows ? limits.rim : lowest;
  if (totalFlow > 0 && !overflows) {
    // Every inlet bends the rating curve, so the search keeps between two of them.
    let low = lowest;
    let high = limits.rim;
    for (const { line } of drains) {
      const bend = line.inletElevation;
      if (bend <= low || bend >= high) continue;
      if (surplusAt(bend) < 0) low = bend;
      else high = bend;
    }
    level = bracketedRoot(surplusAt, low, high, 1e-13);
  }
  const states = drains.map(({ kind, line }, i) => drainFlow(kind, line, level, water, guesses[i]));
  const carried = states.reduce((sum, state) => sum + state.flow, 0);
  return {
    level: Math.min(limits.rim, Math.max(limits.floor, level)),
    flows: states.map((state) => state.flow),
    regimes: states.map((state) => (overflows && state.regime === "siphon" ? "beyondSiphon" : state.regime)),
    overflows,
    spilled: overflows ? totalFlow - carried : 0,
  };
}
