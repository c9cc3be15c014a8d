import { standardGravity } from "../water/index.ts";

/** Returns the flow through a hole below the water: Q = Cd A sqrt(2 g h).
 *  dischargeCoefficient Cd [-]   area A [m2]   head h [m] over the hole's middle, or level difference if drowned   -> flow [m3/s]
 *  Findings: none. Throws: never.
 *  Valid: head of several diameters; Cd 0.60-0.62 sharp, 0.8 short tube, 0.98 rounded, each to about 3 %.
 *  Source: E. Torricelli 1644; coefficients as in common handbooks, from memory.
 *  Example: orificeFlow(0.62, Math.PI * 0.006 ** 2, 0.3)  ->  0.0001701 */
export function orificeFlow(dischargeCoefficient: number, area: number, head: number): number {
  return head > 0 ? dischargeCoefficient * area * Math.sqrt(2 * standardGravity * head) : 0;
}

/** A vessel with upright walls that empties through a hole. */
export interface DrainDown {
  /** Water surface [m2]. */
  readonly surfaceArea: number;
  /** Hole [m2]. */
  readonly orificeArea: number;
  /** Discharge coefficient of the hole [-]. */
  readonly dischargeCoefficient: number;
  /** Head over the hole at the start [m]. */
  readonly startHead: number;
  /** Head over the hole at the end [m]; 0 is empty. */
  readonly endHead: number;
}

/** Returns the time a vessel takes to fall from one head to another: t = 2 A / (Cd a sqrt(2 g)) (sqrt h0 - sqrt h1).
 *  vessel DrainDown   -> time [s]; 0 where the end is not below the start, Infinity where the hole has no area
 *  Findings: none. Throws: never.
 *  Valid: constant surface, steady flow through a hole small against the surface; as accurate as Cd.
 *  Source: E. Torricelli 1644, integrated; any hydraulics text.
 *  Example: drainDownTime({ surfaceArea: 0.27, orificeArea: Math.PI * 0.01 ** 2, dischargeCoefficient: 0.61, startHead: 0.4, endHead: 0.1 })  ->  201.2 */
export function drainDownTime(vessel: DrainDown): number {
  const rootFall = Math.sqrt(Math.max(0, vessel.startHead)) - Math.sqrt(Math.max(0, vessel.endHead));
  if (!(rootFall > 0)) return 0;
  const opening = vessel.dischargeCoefficient * vessel.orificeArea * Math.sqrt(2 * standardGravity);
  return opening > 0 ? (2 * vessel.surfaceArea * rootFall) / opening : Number.POSITIVE_INFINITY;
}
