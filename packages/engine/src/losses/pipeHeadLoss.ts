import { standardGravity } from "../water/index.ts";
import { darcyFrictionFactor, darcyFrictionFactorSlope } from "./darcyFrictionFactor.ts";

/** Head lost to wall friction in a full straight pipe: h = f (L/D) V^2/(2 g).
 *  f darcyFrictionFactor [-]   L length [m]   D inner diameter [m]   V mean velocity [m/s]   -> head [m]
 *  Findings: none. Throws: never.
 *  Valid: steady, incompressible, fully developed flow; as accurate as f.
 *  Source: Darcy-Weisbach; F. M. White, Fluid Mechanics, 7th edition, eq. 6.10.
 *  Example: darcyWeisbachHeadLoss(0.02, 3, 0.03, 1)  ->  0.10197 */
export function darcyWeisbachHeadLoss(f: number, length: number, diameter: number, velocity: number): number {
  return (f * length * velocity * velocity) / (diameter * 2 * standardGravity);
}

/** A straight pipe and its flow. */
export interface PipeFlow {
  /** Length [m]. */
  readonly length: number;
  /** Inner diameter [m]. */
  readonly diameter: number;
  /** Wall roughness [m]. */
  readonly roughness: number;
  /** Flow [m3/s], negative when it runs backward. */
  readonly flow: number;
  /** Kinematic viscosity [m2/s]. */
  readonly kinematicViscosity: number;
}

/** What friction does to that flow. */
export interface PipeHeadLoss {
  /** Head loss [m], with the sign of the flow. */
  readonly headLoss: number;
  /** dh/dQ [s/m2], never negative. */
  readonly slope: number;
  /** Mean velocity [m/s], with the sign of the flow. */
  readonly velocity: number;
  /** Reynolds number [-], never negative. */
  readonly reynolds: number;
  /** Darcy friction factor [-]; Infinity without flow. */
  readonly darcyFrictionFactor: number;
}

/** Friction loss of a pipe at a flow and its derivative: h = f (L/D) V|V|/(2 g), dh/dQ = (L/D) |V| (2 f + Re df/dRe)/(2 g A).
 *  pipe PipeFlow   -> PipeHeadLoss
 *  Findings: none. Throws: never.
 *  Valid: full pipe, steady flow, diameter and viscosity above 0; Re 2000 to 4000 is uncertain by 30 %.
 *  Source: Darcy-Weisbach with `darcyFrictionFactor`; derivative analytic.
 *  Example: pipeHeadLoss({ length: 3, diameter: 0.03, roughness: 0, flow: 7.0686e-6, kinematicViscosity: 1e-6 }).headLoss  ->  0.00010877 */
export function pipeHeadLoss(pipe: PipeFlow): PipeHeadLoss {
  const { length, diameter, roughness, flow, kinematicViscosity } = pipe;
  const area = (Math.PI / 4) * diameter * diameter;
  const velocity = flow / area;
  const speed = Math.abs(velocity);
  const reynolds = (speed * diameter) / kinematicViscosity;
  const relativeRoughness = roughness / diameter;
  const f = darcyFrictionFactor(reynolds, relativeRoughness);
  const scale = length / (diameter * 2 * standardGravity);
  if (reynolds <= 2000) {
    // f V = 64 nu / D: finite without flow, where f itself is not.
    const slope = (scale * 64 * kinematicViscosity) / (diameter * area);
    return { headLoss: slope * flow, slope, velocity, reynolds, darcyFrictionFactor: f };
  }
  const slopeOfF = darcyFrictionFactorSlope(reynolds, relativeRoughness);
  return {
    headLoss: scale * f * speed * velocity,
    slope: (scale * speed * (2 * f + reynolds * slopeOfF)) / area,
    velocity,
    reynolds,
    darcyFrictionFactor: f,
  };
}
