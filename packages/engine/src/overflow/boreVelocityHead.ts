import { standardGravity } from "../water/index.ts";

/** V^2 / (2 g) [m] of a flow [m3/s] in a full bore [m]. */
export function boreVelocityHead(flow: number, diameter: number): number {
  const velocity = (4 * flow) / (Math.PI * diameter * diameter);
  return (velocity * velocity) / (2 * standardGravity);
}
