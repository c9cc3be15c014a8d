import { neighbouringSpeeds } from "./neighbouringSpeeds.ts";
import { type PumpCurve, pumpHead, pumpHeadSlope } from "./pumpCurve.ts";

/** A maker's head curve and the speed ratio it was measured at (1 is full speed). */
export interface SpeedCurve {
  readonly speedRatio: number;
  readonly curve: PumpCurve;
}

/** A pump set to one speed. Head is speedRatio^2 times a blend of two curves taken at equal flow coefficient:
 *  H = n^2 [ (1 - weight) lower(Q/n) + weight upper(Q/n) ], where both are already brought to speed ratio 1. */
export interface PumpAtSpeed {
  readonly speedRatio: number;
  readonly lower: NormalisedCurve;
  readonly upper: NormalisedCurve;
  /** Share of `upper`, 0 to 1. */
  readonly weight: number;
}

/** A curve measured at `speedRatio`, read at speed ratio 1: head(phi) = curve(phi * speedRatio) / speedRatio^2. */
export interface NormalisedCurve {
  readonly curve: PumpCurve;
  readonly speedRatio: number;
}

/** Returns a pump set to a speed: by the affinity laws (Q ~ n, H ~ n^2) from one curve; where the maker gives several
 *  speeds, by blending the two neighbouring curves at equal Q/n, which gives each of them back exactly at its own speed.
 *  curves one or more, any order   speedRatio [-, > 0; 0 is a stopped pump]   -> PumpAtSpeed
 *  Findings: none. Throws: RangeError when there is no curve or the speed is negative or not a number.
 *  Valid: affinity laws hold well from about half to full speed; below, efficiency and leakage make them optimistic.
 *  Source: ISO 9906:2012 section 6.1.2 (affinity); blending is our own and reduces to affinity for one curve.
 *  Example: pumpHeadAtSpeed(pumpAtSpeed([{ speedRatio: 1, curve: pumpCurve([{ flow: 0, head: 4 }, { flow: 0.002, head: 0 }]) }], 0.7), 0.0007)  ->  1.47 */
export function pumpAtSpeed(curves: readonly SpeedCurve[], speedRatio: number): PumpAtSpeed {
  if (curves.length === 0) throw new RangeError("a pump needs at least one curve");
  if (!(speedRatio >= 0)) throw new RangeError(`speed ratio must be zero or more; it is ${speedRatio}`);
  return { speedRatio, ...neighbouringSpeeds(curves, speedRatio) };
}

/** Returns the head of a pump at its speed, H = n^2 h(Q/n).
 *  pump PumpAtSpeed   flow [m3/s]   -> head [m]; zero for a stopped pump
 *  Findings: none. Throws: never.
 *  Valid: as `pumpAtSpeed`.
 *  Source: ISO 9906:2012 section 6.1.2.
 *  Example: pumpHeadAtSpeed(pumpAtSpeed([{ speedRatio: 1, curve: pumpCurve([{ flow: 0, head: 4 }, { flow: 0.002, head: 0 }]) }], 0.7), 0)  ->  1.96 */
export function pumpHeadAtSpeed(pump: PumpAtSpeed, flow: number): number {
  const n = pump.speedRatio;
  if (n === 0) return 0;
  const phi = flow / n;
  const head =
    pump.weight === 1
      ? read(pump.upper, phi)
      : (1 - pump.weight) * read(pump.lower, phi) + pump.weight * read(pump.upper, phi);
  return n * n * head;
}

/** Returns the slope dH/dQ of a pump at its speed, n h'(Q/n).
 *  pump PumpAtSpeed   flow [m3/s]   -> slope [m per m3/s]
 *  Findings: none. Throws: never.
 *  Valid: as `pumpAtSpeed`.
 *  Source: derivative of `pumpHeadAtSpeed`.
 *  Example: pumpHeadSlopeAtSpeed(pumpAtSpeed([{ speedRatio: 1, curve: pumpCurve([{ flow: 0, head: 4 }, { flow: 0.002, head: 0 }]) }], 0.7), 0.0007)  ->  -1400 */
export function pumpHeadSlopeAtSpeed(pump: PumpAtSpeed, flow: number): number {
  const n = pump.speedRatio;
  if (n === 0) return 0;
  const phi = flow / n;
  const slope =
    pump.weight === 1
      ? readSlope(pump.upper, phi)
      : (1 - pump.weight) * readSlope(pump.lower, phi) + pump.weight * readSlope(pump.upper, phi);
  return n * slope;
}

function read(entry: NormalisedCurve, phi: number): number {
  const m = entry.speedRatio;
  return m === 1 ? pumpHead(entry.curve, phi) : pumpHead(entry.curve, phi * m) / (m * m);
}

function readSlope(entry: NormalisedCurve, phi: number): number {
  const m = entry.speedRatio;
  return m === 1 ? pumpHeadSlope(entry.curve, phi) : pumpHeadSlope(entry.curve, phi * m) / m;
}

/** Returns the flow of the last point of a pump's curve at its speed: beyond it nothing is known.
 *  pump PumpAtSpeed   -> flow [m3/s]
 *  Findings: none. Throws: never.
 *  Valid: as `pumpAtSpeed`.
 *  Source: affinity Q ~ n.
 *  Example: lastFlowAtSpeed(pumpAtSpeed([{ speedRatio: 1, curve: pumpCurve([{ flow: 0, head: 4 }, { flow: 0.002, head: 0 }]) }], 0.5))  ->  0.001 */
export function lastFlowAtSpeed(pump: PumpAtSpeed): number {
  const upper = pump.upper.curve.lastFlow / pump.upper.speedRatio;
  const lower = pump.weight === 1 ? upper : pump.lower.curve.lastFlow / pump.lower.speedRatio;
  return pump.speedRatio * Math.min(lower, upper);
}
