import { standardGravity } from "../water/index.ts";

/** Froude number [-] up to which air still rises against the water in a drain, so that it vents itself and stays quiet.
 *  Source: process-engineering practice for self-venting lines, after L. L. Simpson 1978 and P. D. Hills, Chemical Engineering,
 *  5 Sept 1983; from memory.
 *  Example: quietFroude  ->  0.3 */
export const quietFroude = 0.3;

/** Froude number [-] above which the water sweeps all air out; a siphon that must clear its own air has to pass it at the start.
 *  Source: as quietFroude.
 *  Example: sweepingFroude  ->  1 */
export const sweepingFroude = 1;

/** Returns the Froude number of a drain, as if it ran full: Fr = V / sqrt(g D), V = Q / A.
 *  flow Q [m3/s]   diameter D [m]   -> Fr [-]
 *  Findings: none. Throws: never.
 *  Valid: any; below 0.3 quiet, to 1 air leaves in bursts, above it is swept out.
 *  Source: definition; limits at quietFroude and sweepingFroude.
 *  Example: pipeFroude(0.001, 0.04)  ->  1.2706 */
export function pipeFroude(flow: number, diameter: number): number {
  if (!(diameter > 0)) return 0;
  return (4 * flow) / (Math.PI * diameter * diameter * Math.sqrt(standardGravity * diameter));
}

/** Returns the flow at which a drain has a Froude number: Q = Fr A sqrt(g D).
 *  froude Fr [-]   diameter D [m]   -> flow [m3/s]
 *  Findings: none. Throws: never.
 *  Valid: any; the inverse of pipeFroude.
 *  Source: definition.
 *  Example: froudeFlow(0.3, 0.02614) * 3600 / 0.003785411784  ->  77.5 */
export function froudeFlow(froude: number, diameter: number): number {
  if (!(diameter > 0)) return 0;
  return froude * 0.25 * Math.PI * diameter * diameter * Math.sqrt(standardGravity * diameter);
}
