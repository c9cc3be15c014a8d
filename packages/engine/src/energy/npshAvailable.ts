import { standardGravity } from "../water/index.ts";

/** The suction side of a pump. */
export interface Suction {
  /** Absolute pressure on the water that the pump draws from [Pa]. */
  readonly surfacePressure: number;
  /** Absolute vapour pressure of the water [Pa]. */
  readonly vapourPressure: number;
  /** Density [kg/m3]. */
  readonly density: number;
  /** Level of that water [m]. */
  readonly surfaceElevation: number;
  /** Reference height of the pump, the middle of its impeller eye [m], same datum. */
  readonly pumpElevation: number;
  /** Head lost from the intake to the pump [m]. */
  readonly headLoss: number;
}

/** Returns the net positive suction head available at a pump: NPSHa = (p_surface - p_v)/(rho g) + z_surface - z_pump - h_loss.
 *  suction Suction   -> head [m]; negative where the suction cannot work
 *  Findings: none. Throws: never.
 *  Valid: steady flow of water free of air; air drawn in at the intake harms a small pump long before this runs out.
 *  Source: ISO 9906:2012 section 3.2; ISO 17769-1:2012.
 *  Example: npshAvailable({ surfacePressure: 101325, vapourPressure: 3105.2, density: 1023.34, surfaceElevation: 0.3, pumpElevation: 0, headLoss: 0.2 })  ->  9.887 */
export function npshAvailable(suction: Suction): number {
  const pressureHead = (suction.surfacePressure - suction.vapourPressure) / (suction.density * standardGravity);
  return pressureHead + suction.surfaceElevation - suction.pumpElevation - suction.headLoss;
}
