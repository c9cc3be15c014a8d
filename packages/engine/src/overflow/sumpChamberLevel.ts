import { overflowWeirHead } from "./overflowWeir.ts";

/** Returns the water level of a sump chamber that spills over a baffle: floor + baffleHeight + head of a full-width weir.
 *  chamber baffleHeight [m] above the chamber's floor, baffleLength [m] of its crest, flow [m3/s]
 *  -> depth [m] above the floor; Infinity where a flow meets a baffle without length
 *  Findings: none. Throws: never.
 *  Valid: water falls freely behind the baffle; uncertainty of the head as weirUncertainty.
 *  Source: overflowWeirHead with a plain crest.
 *  Example: sumpChamberLevel({ baffleHeight: 0.25, baffleLength: 0.3, flow: 4 / 3600 })  ->  0.26622 */
export function sumpChamberLevel(chamber: {
  readonly baffleHeight: number;
  readonly baffleLength: number;
  readonly flow: number;
}): number {
  const { baffleHeight, baffleLength, flow } = chamber;
  const weir = { length: baffleLength, toothOpenShare: 1, toothHeight: 0, crestHeight: baffleHeight };
  return baffleHeight + overflowWeirHead(weir, flow);
}

/** Returns the depth of a volume of water in a rectangular pool or chamber: V / (L W).
 *  volume V [m3]   length L [m]   width W [m]   -> depth [m]; Infinity where a volume has no floor to stand on
 *  Findings: none. Throws: never.
 *  Valid: upright walls, level floor; take the share of rock or media off the area first.
 *  Source: geometry.
 *  Example: poolLevel(0.09, 0.6, 0.5)  ->  0.3 */
export function poolLevel(volume: number, length: number, width: number): number {
  if (!(volume > 0)) return 0;
  return volume / (Math.max(0, length) * Math.max(0, width));
}
