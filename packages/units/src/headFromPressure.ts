import { standardGravity } from "./exactFactors.ts";

/** Returns the density assumed between head and pressure where none is given: 1025 kg/m3, sea water near 18 C.
 *  no arguments   -> density [kg/m3]
 *  Findings: none. Throws: never.
 *  Valid: within 0.3 % for water of 33 to 36 g/kg from 10 to 30 C; fresh water is 2.5 % lighter, so give its own.
 *  Source: EOS-80, UNESCO Technical Papers in Marine Science 44 (1983), rounded.
 *  Example: defaultLiquidDensity  ->  1025 */
export const defaultLiquidDensity = 1025;

function requireDensity(density: number): void {
  if (!(density > 0 && density < Number.POSITIVE_INFINITY))
    throw new RangeError(`density ${density} kg/m3 must be a finite number above zero, such as 1025 for sea water`);
}

/** Returns the head of liquid that a pressure holds up: H = p / (rho g0).
 *  pressure p [Pa]   density rho [kg/m3]   -> head [m of that liquid]
 *  Findings: none. Throws: RangeError where the density is not a finite number above zero.
 *  Valid: any pressure; g0 9.80665 m/s2, local gravity differs by up to 0.3 %.
 *  Source: hydrostatics, analytic; g0 of the 3rd CGPM (1901).
 *  Example: headFromPressure(9806.65, 1000)  ->  1
 *  Example: headFromPressure(6894.757, 1025)  ->  0.68592 */
export function headFromPressure(pressure: number, density: number): number {
  requireDensity(density);
  return pressure / (density * standardGravity);
}

/** Returns the pressure under a head of liquid: p = rho g0 H.
 *  head H [m of that liquid]   density rho [kg/m3]   -> pressure [Pa]
 *  Findings: none. Throws: RangeError where the density is not a finite number above zero.
 *  Valid: any head; g0 9.80665 m/s2, local gravity differs by up to 0.3 %.
 *  Source: hydrostatics, analytic; g0 of the 3rd CGPM (1901).
 *  Example: pressureFromHead(1, 1000)  ->  9806.65 */
export function pressureFromHead(head: number, density: number): number {
  requireDensity(density);
  return head * (density * standardGravity);
}
