import { type DrainLine, type DrainWater, drainLineHeadLoss } from "./drainLine.ts";
import { siphonFlow } from "./siphonFlow.ts";

/** The tubes of a hang-on overflow, all alike: from a box inside over the glass to a box outside, full of water. */
export interface SiphonTubes {
  /** Tubes side by side that run full. */
  readonly count: number;
  /** Inner diameter of each [m]. */
  readonly bore: number;
  /** Length of each along its middle [m]. */
  readonly length: number;
  /** Wall roughness [m]. */
  readonly roughness: number;
  /** Sum of K [-] of one tube on the speed in it: entrance, bends and the exit, 1. */
  readonly lossCoefficient: number;
  /** Sum of the K1 [-] of two- and three-constant fittings, which adds K1 / Re. */
  readonly laminarLoss: number;
}

/** Entrance of a tube that stands free in the water [-].
 *  Source: Crane TP-410, pipe projecting inward.
 *  Example: tubeEntranceLoss  ->  0.78 */
export const tubeEntranceLoss = 0.78;

/** One tube between two levels, for what reckons with drains. */
function tubeLine({ bore, length, roughness, lossCoefficient, laminarLoss }: SiphonTubes, below: number): DrainLine {
  return {
    bore,
    inletDiameter: bore,
    segments: [{ length, diameter: bore, roughness, lossCoefficient, laminarLoss }],
    valveLoss: 0,
    inletElevation: below,
    outletElevation: below,
  };
}

/** Returns by how much the box inside stands above the box outside while tubes carry a flow between them:
 *  h = (f L/D + sum K + K1/Re) V^2/(2 g), V = Q / (n A).
 *  tubes SiphonTubes   flow through all of them [m3/s]   water DrainWater   -> head [m], with the sign of the flow; 0 without flow,
 *  Infinity for a flow through no tube
 *  Findings: none. Throws: never.
 *  Valid: tubes full of water, all primed and alike, steady flow; as accurate as its K, about 10 %.
 *  Source: energy equation between two surfaces with Darcy-Weisbach friction; K after Crane TP-410.
 *  Example: hangOnSiphonHead({ count: 2, bore: 0.025, length: 0, roughness: 0, lossCoefficient: 2, laminarLoss: 0 }, 0.0005, { kinematicViscosity: 1e-6 })  ->  0.02645 */
export function hangOnSiphonHead(tubes: SiphonTubes, flow: number, water: DrainWater): number {
  if (flow < 0) return -hangOnSiphonHead(tubes, -flow, water);
  if (!(flow > 0)) return 0;
  if (!(tubes.count > 0)) return Number.POSITIVE_INFINITY;
  return drainLineHeadLoss(tubeLine(tubes, 0), flow / tubes.count, water);
}

/** Returns the flow through the tubes of a hang-on overflow between two levels: the exact inverse of hangOnSiphonHead.
 *  tubes SiphonTubes   inside, outside levels of the two boxes [m] on one datum   water DrainWater   guess [m3/s] a flow near by, if known
 *  -> flow [m3/s], negative where it runs back into the tank; 0 at level water
 *  Findings: none. Throws: never.
 *  Valid: as hangOnSiphonHead; both ends of every tube under water.
 *  Source: energy equation, solved for the flow as in siphonFlow.
 *  Example: hangOnSiphonFlow({ count: 2, bore: 0.025, length: 0, roughness: 0, lossCoefficient: 2, laminarLoss: 0 }, 0.52645, 0.5, { kinematicViscosity: 1e-6 })  ->  0.0005 */
export function hangOnSiphonFlow(
  tubes: SiphonTubes,
  inside: number,
  outside: number,
  water: DrainWater,
  guess = 0,
): number {
  if (outside > inside) return -hangOnSiphonFlow(tubes, outside, inside, water, -guess);
  if (!(tubes.count > 0)) return 0;
  return tubes.count * siphonFlow(tubeLine(tubes, outside), inside, water, Math.max(0, guess) / tubes.count);
}

/** Returns the time until a display runs over while its overflow takes nothing: t = A (rim - level) / Q, or less far where the water that
 *  can be pumped up ends first.
 *  area free surface [m2]   room from level to rim [m]   flow pumped up [m3/s]   pumpable water that the pump can lift before it draws
 *  air [m3]   -> seconds and whether the rim is reached; Infinity without flow
 *  Findings: none. Throws: never.
 *  Valid: a flow that stays as it is: it falls a little as the level rises, so that the true time is a little longer.
 *  Source: continuity.
 *  Example: timeToOverflow({ area: 0.5, room: 0.04, flow: 0.0005, pumpable: 0.03 })  ->  { "seconds": 40, "overflows": true }
 *  Example: timeToOverflow({ area: 0.5, room: 0.04, flow: 0.0005, pumpable: 0.01 })  ->  { "seconds": 20, "overflows": false } */
export function timeToOverflow(of: {
  readonly area: number;
  readonly room: number;
  readonly flow: number;
  readonly pumpable: number;
}): { readonly seconds: number; readonly overflows: boolean } {
  const free = of.area * Math.max(0, of.room);
  const overflows = of.flow > 0 && of.pumpable > free;
  if (!(of.flow > 0)) return { seconds: Number.POSITIVE_INFINITY, overflows: false };
  return { seconds: Math.min(free, Math.max(0, of.pumpable)) / of.flow, overflows };
}
