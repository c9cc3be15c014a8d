import { evaluateMonotoneCubic, type MonotoneCubic, monotoneCubic } from "./monotoneCubic.ts";
import { neighbouringSpeeds } from "./neighbouringSpeeds.ts";

/** A maker's electrical power curve at one speed ratio; a single number where only the rating is known. */
export interface PowerCurve {
  readonly speedRatio: number;
  readonly cubic: MonotoneCubic | undefined;
  /** Power where there is no curve [W]. */
  readonly constant: number;
  readonly firstFlow: number;
  readonly lastFlow: number;
}

/** Returns an electrical power curve from a maker's points, or a flat one from the rated power alone.
 *  points flow [m3/s, rising] and power [W]; may be empty   ratedPower [W] at speedRatio 1   speedRatio [-]   -> PowerCurve
 *  Findings: none. Throws: RangeError when flows do not rise.
 *  Valid: within the points; outside the nearest point's power holds.
 *  Source: points as given; a flat curve is the cautious reading of a rating plate.
 *  Example: electricalPower([powerCurve([], 40, 1)], 0.5, 0)  ->  5 */
export function powerCurve(
  points: readonly { readonly flow: number; readonly power: number }[],
  ratedPower: number,
  speedRatio: number,
): PowerCurve {
  if (points.length < 2) {
    const constant = points[0]?.power ?? ratedPower * speedRatio ** 3;
    return { speedRatio, cubic: undefined, constant, firstFlow: 0, lastFlow: 0 };
  }
  const flows = points.map((point) => point.flow);
  const cubic = monotoneCubic(
    flows,
    points.map((point) => point.power),
  );
  return { speedRatio, cubic, constant: 0, firstFlow: flows[0], lastFlow: flows[flows.length - 1] };
}

/** Returns the electrical power a pump draws at a speed and flow: P = n^3 p(Q/n), blended between the maker's speeds.
 *  curves one or more PowerCurve   speedRatio [-]   flow [m3/s]   -> power [W]
 *  Findings: none. Throws: RangeError when there is no curve.
 *  Valid: affinity for power ignores the driver's own losses: optimistic at low speed.
 *  Source: ISO 9906:2012 section 6.1.2 (P ~ n^3).
 *  Example: electricalPower([powerCurve([{ flow: 0, power: 20 }, { flow: 0.001, power: 40 }], 40, 1)], 1, 0.0005)  ->  30 */
export function electricalPower(curves: readonly PowerCurve[], speedRatio: number, flow: number): number {
  if (curves.length === 0) throw new RangeError("a pump needs at least one power curve");
  if (speedRatio <= 0) return 0;
  const { lower, upper, weight } = neighbouringSpeeds(curves, speedRatio);
  const phi = flow / speedRatio;
  return speedRatio ** 3 * ((1 - weight) * normalised(lower, phi) + weight * normalised(upper, phi));
}

function normalised(entry: PowerCurve, phi: number): number {
  const m = entry.speedRatio;
  if (!entry.cubic) return entry.constant / m ** 3;
  const flow = Math.min(entry.lastFlow, Math.max(entry.firstFlow, phi * m));
  return evaluateMonotoneCubic(entry.cubic, flow) / m ** 3;
}
