import { seaWaterDensity } from "./seaWaterDensity.ts";
import { seaWaterDynamicViscosity } from "./seaWaterDynamicViscosity.ts";
import { seaWaterSpecificHeat } from "./seaWaterSpecificHeat.ts";
import { seaWaterVapourPressure } from "./seaWaterVapourPressure.ts";

/** Water as every other formula needs it, at one atmosphere. */
export interface Water {
  /** Dissolved salt [g/kg]. */
  readonly salinity: number;
  /** Temperature [C]. */
  readonly temperature: number;
  /** Density [kg/m3]. */
  readonly density: number;
  /** Dynamic viscosity [Pa s]. */
  readonly dynamicViscosity: number;
  /** Kinematic viscosity [m2/s]. */
  readonly kinematicViscosity: number;
  /** Vapour pressure, absolute [Pa]. */
  readonly vapourPressure: number;
  /** Specific heat at constant pressure [J/(kg K)]. */
  readonly specificHeat: number;
}

/** All properties of sea water (or fresh water, salinity 0) at one atmosphere; kinematic viscosity nu = mu / rho.
 *  salinity [g/kg]   temperature [C]   -> Water
 *  Findings: none. Throws: never.
 *  Valid: 0 to 40 g/kg, 0 to 35 C; accuracy as each property states, viscosity (1.5 %) being the least certain.
 *  Source: the functions named seaWater... beside this one.
 *  Example: seaWater(35, 25).kinematicViscosity  ->  9.3696e-7
 *  Example: seaWater(0, 25).density  ->  997.048 */
export function seaWater(salinity: number, temperature: number): Water {
  const density = seaWaterDensity(salinity, temperature);
  const dynamicViscosity = seaWaterDynamicViscosity(salinity, temperature);
  return {
    salinity,
    temperature,
    density,
    dynamicViscosity,
    kinematicViscosity: dynamicViscosity / density,
    vapourPressure: seaWaterVapourPressure(salinity, temperature),
    specificHeat: seaWaterSpecificHeat(salinity, temperature),
  };
}
