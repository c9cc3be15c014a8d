import { standardGravity } from "../water/index.ts";

/** Returns the power that a flow gains through a head: P = rho g Q H.
 *  density rho [kg/m3]   flow Q [m3/s]   head H [m]   -> power [W]
 *  Findings: none. Throws: never.
 *  Valid: incompressible water; exact.
 *  Source: definition; ISO 9906:2012 section 3.2 (pump power output).
 *  Example: hydraulicPower(1023.34, 3 / 3600, 2.5)  ->  20.91 */
export function hydraulicPower(density: number, flow: number, head: number): number {
  return density * standardGravity * flow * head;
}
