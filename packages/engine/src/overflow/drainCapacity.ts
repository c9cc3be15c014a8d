import type { DrainLine, DrainWater } from "./drainLine.ts";
import { froudeFlow, quietFroude } from "./pipeFroude.ts";
import { siphonFlow } from "./siphonFlow.ts";
import { smallestTabulatedStack, ventedStackFlow } from "./ventedStackFlow.ts";

/** What a drain can carry, as a bracket: quiet and vented, as the trade reckons, and as a full siphon. */
export interface DrainCapacity {
  /** Self-venting at Froude number 0.3 [m3/s]. */
  readonly quietFroude: number;
  /** Vented stack 7/24 full [m3/s]. */
  readonly quietStack: number;
  /** The bore is below the tables of the stack formula. */
  readonly quietStackExtrapolated: boolean;
  /** The smaller of the two quiet figures [m3/s]. */
  readonly quiet: number;
  /** The trade's rule of thumb [m3/s]; common practice, no source. */
  readonly practice: number;
  /** The bore is outside the three sizes that the rule names. */
  readonly practiceExtrapolated: boolean;
  /** Running full at the given level [m3/s]. */
  readonly siphon: number;
}

const gallonPerHour = 3.785411784e-3 / 3600;

/** Average bores of 1, 1 1/2 and 2 in Sch 40 pipe (ASTM D1785) [m] and what the trade says they drain [m3/s]. */
const practiceRule = [
  [0.02614, 800 * gallonPerHour],
  [0.04039, 1500 * gallonPerHour],
  [0.05199, 2050 * gallonPerHour],
] as const;

/** Returns the trade's rule of thumb for a drain of any bore: straight lines in log Q over log D through 800, 1500 and 2050 US
 *  gal/h for 1, 1 1/2 and 2 in pipe; beyond them at constant Froude number, Q ~ D^2.5.
 *  bore [m] inside   -> flow [m3/s] and whether the bore lies beyond the three sizes
 *  Findings: none. Throws: never.
 *  Valid: a drop of about 3 ft; no accuracy can be given: these pipes drag air or siphon in bursts.
 *  Source: common practice, no source.
 *  Example: drainPractice(0.04039).flow * 3600 / 0.003785411784  ->  1500 */
export function drainPractice(bore: number): { readonly flow: number; readonly extrapolated: boolean } {
  if (!(bore > 0)) return { flow: 0, extrapolated: true };
  const [first, middle, last] = practiceRule;
  if (bore < first[0]) return { flow: first[1] * (bore / first[0]) ** 2.5, extrapolated: bore < 0.98 * first[0] };
  if (bore > last[0]) return { flow: last[1] * (bore / last[0]) ** 2.5, extrapolated: bore > 1.02 * last[0] };
  const [from, to] = bore < middle[0] ? [first, middle] : [middle, last];
  const exponent = Math.log(to[1] / from[1]) / Math.log(to[0] / from[0]);
  return { flow: from[1] * (bore / from[0]) ** exponent, extrapolated: false };
}

/** Returns what a drain can carry as a bracket from quiet over common practice to full siphon.
 *  line DrainLine   level [m] of the water above it   water DrainWater   -> DrainCapacity
 *  Findings: none. Throws: never.
 *  Valid: as its parts: pipeFroude, ventedStackFlow, drainPractice, siphonFlow. An open line keeps the order quiet, practice, siphon;
 *  a throttled one may have its siphon below the others.
 *  Source: as its parts.
 *  Example: drainCapacity({ bore: 0.02614, inletDiameter: 0.02614, segments: [{ length: 1.8, diameter: 0.02614, roughness: 1.5e-6, lossCoefficient: 2.83513, laminarLoss: 0 }], valveLoss: 0, inletElevation: 0.8, outletElevation: 0 }, 0.9144, { kinematicViscosity: 9.3696e-7 }).siphon  ->  0.0011029 */
export function drainCapacity(line: DrainLine, level: number, water: DrainWater): DrainCapacity {
  const byFroude = froudeFlow(quietFroude, line.bore);
  const byStack = ventedStackFlow(line.bore);
  const practice = drainPractice(line.bore);
  return {
    quietFroude: byFroude,
    quietStack: byStack,
    quietStackExtrapolated: line.bore < smallestTabulatedStack,
    quiet: Math.min(byFroude, byStack),
    practice: practice.flow,
    practiceExtrapolated: practice.extrapolated,
    siphon: siphonFlow(line, level, water),
  };
}
