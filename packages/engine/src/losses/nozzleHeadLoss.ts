import { standardGravity } from "../water/index.ts";
import { type ContractionMethod, suddenContractionLoss } from "./areaChange.ts";
import { exitLoss } from "./entranceLoss.ts";

/** Head lost in an outlet nozzle under water: the contraction to its mouth and all the speed of its jet,
 *  h = (K + 1) v|v|/(2 g), v the speed in the mouth.
 *  pipeDiameter bore before it [m]   nozzleDiameter of its mouth [m]   flow [m3/s]   method of the contraction, "crane" if left out
 *  -> head [m], with the sign of the flow
 *  Findings: none. Throws: never.
 *  Valid: square-edged reduction, turbulent flow; a tapered nozzle loses little more than the exit.
 *  Source: `suddenContractionLoss` and `exitLoss`.
 *  Example: nozzleHeadLoss(0.02614, 0.02, 0.0004)  ->  0.09979 */
export function nozzleHeadLoss(
  pipeDiameter: number,
  nozzleDiameter: number,
  flow: number,
  method: ContractionMethod = "crane",
): number {
  const velocity = flow / ((Math.PI / 4) * nozzleDiameter * nozzleDiameter);
  const k = suddenContractionLoss(pipeDiameter, nozzleDiameter, method) + exitLoss;
  return (k * velocity * Math.abs(velocity)) / (2 * standardGravity);
}
