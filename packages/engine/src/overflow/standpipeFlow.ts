import { standardGravity } from "../water/index.ts";
import { type DrainLine, type DrainWater, drainLineHeadLoss } from "./drainLine.ts";
import { siphonFlow } from "./siphonFlow.ts";

/** What limits a drain: nothing runs, the rim as a weir, the drowned throat as an orifice, or friction in the full pipe. */
export type DrainControl = "dry" | "crest" | "throat" | "fullPipe";

/** Weir coefficient of a level circular rim [-].
 *  Source: plain thin-plate weir value (ISO 1438), as used for shaft spillways in USBR, Design of Small Dams, 3rd edition (1987).
 *  Example: rimWeirCoefficient  ->  0.602 */
export const rimWeirCoefficient = 0.602;

/** Orifice coefficient of a drowned flush rim [-].
 *  Source: sharp-edged orifice, 0.60 to 0.62 in common handbooks, from memory.
 *  Example: rimOrificeCoefficient  ->  0.6 */
export const rimOrificeCoefficient = 0.6;

/** Orifice coefficient of the bore below an enlarged rim, a rounded mouth [-].
 *  Source: rounded orifice in common handbooks, from memory.
 *  Example: roundedThroatCoefficient  ->  0.98 */
export const roundedThroatCoefficient = 0.98;

/** Returns the flow over a level circular rim that acts as a weir: Q = Cw (2/3) sqrt(2 g) pi D H^1.5.
 *  inletDiameter D [m]   head H [m] above the rim   -> flow [m3/s]; 0 at or below the rim
 *  Findings: none. Throws: never.
 *  Valid: head up to about 0.22 D (H/R 0.45), no swirl; 2 % as a formula, 20 % in reality.
 *  Source: W. E. Wagner, Morning-glory shaft spillways, Trans. ASCE 121 (1956); USBR, Design of Small Dams.
 *  Example: rimWeirFlow(0.0525, 0.01)  ->  0.0002931 */
export function rimWeirFlow(inletDiameter: number, head: number): number {
  if (!(head > 0)) return 0;
  return (
    rimWeirCoefficient * (2 / 3) * Math.sqrt(2 * standardGravity) * Math.PI * inletDiameter * head * Math.sqrt(head)
  );
}

/** Returns the flow into a drowned rim with air in the pipe below it: the smaller of 0.6 A_rim sqrt(2 g H) and
 *  0.98 A_bore sqrt(2 g H), so that enlarging the rim helps until the bore itself is the throat.
 *  line DrainLine   head H [m] above the rim   -> flow [m3/s]; 0 at or below the rim
 *  Findings: none. Throws: never.
 *  Valid: head above about 0.5 D (H/R 1), no swirl; the depth of a funnel is not counted, which is on the safe side; 20 %.
 *  Source: orifice control of shaft spillways, USBR, Design of Small Dams; the rounded bore is our own addition.
 *  Example: throatFlow({ bore: 0.0525, inletDiameter: 0.0525, segments: [], valveLoss: 0, inletElevation: 0, outletElevation: -1 }, 0.03)  ->  0.000996 */
export function throatFlow(line: DrainLine, head: number): number {
  if (!(head > 0)) return 0;
  const rim = rimOrificeCoefficient * line.inletDiameter ** 2;
  const bore = roundedThroatCoefficient * line.bore ** 2;
  return 0.25 * Math.PI * Math.min(rim, bore) * Math.sqrt(2 * standardGravity * head);
}

/** Returns the flow into a vented standpipe and what limits it: the smallest of rim weir, drowned throat and full pipe.
 *  line DrainLine   level [m] of the water around it   water DrainWater   guess [m3/s] a flow near by, if known
 *  -> flow [m3/s] and control
 *  Findings: none. Throws: never.
 *  Valid: any level; continuous and never falling as the level rises; 2 % as a formula, 20 % in reality because of swirl.
 *  Source: shaft-spillway control, USBR, Design of Small Dams; W. E. Wagner, Trans. ASCE 121 (1956).
 *  Example: standpipeFlow({ bore: 0.0525, inletDiameter: 0.0525, segments: [], valveLoss: 0, inletElevation: 0, outletElevation: -1 }, 0.01, { kinematicViscosity: 1e-6 }).control  ->  "crest" */
export function standpipeFlow(
  line: DrainLine,
  level: number,
  water: DrainWater,
  guess = 0,
): { readonly flow: number; readonly control: DrainControl } {
  const head = level - line.inletElevation;
  if (!(head > 0)) return { flow: 0, control: "dry" };
  const crest = rimWeirFlow(line.inletDiameter, head);
  const throat = throatFlow(line, head);
  const inlet = Math.min(crest, throat);
  // The full pipe is solved only where it would lose more than the fall there is.
  if (drainLineHeadLoss(line, inlet, water) > level - line.outletElevation)
    return { flow: Math.min(inlet, siphonFlow(line, level, water, guess)), control: "fullPipe" };
  return { flow: inlet, control: crest <= throat ? "crest" : "throat" };
}

/** Returns what a dry emergency standpipe carries when the water stands at the rim of its box or display.
 *  line DrainLine   rimLevel [m]   water DrainWater   -> flow [m3/s]
 *  Findings: none. Throws: never.
 *  Valid: as standpipeFlow: it counts on no siphon, since one that must start by itself may not.
 *  Source: as standpipeFlow.
 *  Example: emergencyCapacity({ bore: 0.0525, inletDiameter: 0.0525, segments: [], valveLoss: 0, inletElevation: 0, outletElevation: -1 }, 0.03, { kinematicViscosity: 1e-6 })  ->  0.000996 */
export function emergencyCapacity(line: DrainLine, rimLevel: number, water: DrainWater): number {
  return standpipeFlow(line, rimLevel, water).flow;
}
