import { standardGravity } from "@tidewright/engine";
import type { PreparedLoop } from "../system/prepare.ts";

/** What water loses on its way from one pump to where the pumps' water joins: linear Q + quadratic Q^2 [m]. */
export interface BranchLoss {
  readonly linear: number;
  readonly quadratic: number;
}

/** Returns the loss of each pump's own check valve, none where it has none: h = (K + K1/Re) V^2/2g.
 *  prepared PreparedLoop   viscosity kinematic [m2/s]   -> BranchLoss [s/m2, s2/m5]
 *  Source: as the engine's valves; a pump put in takes the place, and the valve, of the loop's first. */
export function branchLoss({ loop }: PreparedLoop, viscosity: number): BranchLoss {
  const out = `${loop.pumps[0]?.link}out`;
  let linear = 0;
  let quadratic = 0;
  for (const link of loop.model.links) {
    if (link.from !== out || link.kind !== "valve") continue;
    const area = (Math.PI / 4) * link.diameter ** 2;
    const velocityHead = 1 / (2 * standardGravity * area ** 2);
    quadratic += link.lossCoefficient * velocityHead;
    linear += (((link.laminarLoss ?? 0) * area * viscosity) / link.diameter) * velocityHead;
  }
  return { linear, quadratic };
}

/** Loss at one pump's flow [m3/s -> m]. */
export function lossAt({ linear, quadratic }: BranchLoss, flow: number): number {
  return (linear + quadratic * flow) * flow;
}
