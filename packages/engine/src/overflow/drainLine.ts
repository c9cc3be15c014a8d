import { darcyFrictionFactor } from "../losses/index.ts";
import { boreVelocityHead } from "./boreVelocityHead.ts";

/** A stretch of a drain with one inner diameter. */
export interface DrainSegment {
  /** Length [m]. */
  readonly length: number;
  /** Inner diameter [m]. */
  readonly diameter: number;
  /** Wall roughness [m]. */
  readonly roughness: number;
  /** Sum of K [-] on the speed in this diameter: fittings, and the entrance and exit where they are here. */
  readonly lossCoefficient: number;
  /** Sum of the K1 [-] of two- and three-constant fittings, which adds K1 / Re to the K of this stretch. */
  readonly laminarLoss: number;
}

/** A drain from its rim in the box or display down to the sump. Elevations share one datum with every level. */
export interface DrainLine {
  /** Inner diameter of the drain pipe [m]: Froude numbers and the vented stack refer to it. */
  readonly bore: number;
  /** Diameter of the rim [m]; the bore, or more when enlarged or under a strainer. */
  readonly inletDiameter: number;
  /** From inlet to outlet, in any order. */
  readonly segments: readonly DrainSegment[];
  /** K [-] of a throttling valve on the speed in the bore; 0 is open or none. */
  readonly valveLoss: number;
  /** Rim of the inlet [m]. */
  readonly inletElevation: number;
  /** Effective level downstream [m]: the sump's where the pipe ends below it, else the outlet's own height. */
  readonly outletElevation: number;
}

/** What a drain needs to know of its water. */
export interface DrainWater {
  /** Kinematic viscosity [m2/s], above 0. */
  readonly kinematicViscosity: number;
}

/** Returns the head a drain loses when it runs full: h = sum (f L/D + K + K1/Re) V^2/(2 g), plus the valve on the bore.
 *  line DrainLine   flow [m3/s]   water DrainWater   -> head [m]; 0 without flow; rising with flow
 *  Findings: none. Throws: never.
 *  Valid: full pipe, steady. A line that names no exit loses at least the velocity head in its widest bore, since the water leaves
 *  with that; the valve comes on top.
 *  Source: Darcy-Weisbach; K1/Re after W. B. Hooper, Chemical Engineering 24 Aug 1981.
 *  Example: drainLineHeadLoss({ bore: 0.05, inletDiameter: 0.05, segments: [{ length: 0, diameter: 0.05, roughness: 0, lossCoefficient: 1.5, laminarLoss: 0 }], valveLoss: 0, inletElevation: 1, outletElevation: 0 }, 0.002, { kinematicViscosity: 1e-6 })  ->  0.07935 */
export function drainLineHeadLoss(line: DrainLine, flow: number, water: DrainWater): number {
  // Below this Reynolds number and velocity head underflow to 0/0.
  if (!(flow > 1e-100)) return 0;
  let loss = 0;
  let widest = line.bore;
  const { segments } = line;
  for (let i = 0; i < segments.length; ) {
    // Neighbours of one pipe share their friction factor, which is what costs time here.
    const { diameter, roughness } = segments[i];
    if (diameter > widest) widest = diameter;
    let length = 0;
    let k = 0;
    let laminar = 0;
    for (; i < segments.length && segments[i].diameter === diameter && segments[i].roughness === roughness; i++) {
      length += segments[i].length;
      k += segments[i].lossCoefficient;
      laminar += segments[i].laminarLoss;
    }
    const reynolds = (4 * flow) / (Math.PI * diameter * water.kinematicViscosity);
    if (length > 0) k += (darcyFrictionFactor(reynolds, roughness / diameter) * length) / diameter;
    if (laminar > 0) k += laminar / reynolds;
    loss += k * boreVelocityHead(flow, diameter);
  }
  const valve = line.valveLoss > 0 ? line.valveLoss * boreVelocityHead(flow, line.bore) : 0;
  return Math.max(loss, boreVelocityHead(flow, widest)) + valve;
}
