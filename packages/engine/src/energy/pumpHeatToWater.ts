/** Watts in one BTU (international table) per hour [W].
 *  Source: NIST Special Publication 811 (2008) appendix B: 1 BTU_IT = 1055.05585262 J.
 *  Example: wattsPerBtuPerHour  ->  0.293071 */
export const wattsPerBtuPerHour = 1055.05585262 / 3600;

/** One ton of refrigeration, 12000 BTU/h [W].
 *  Source: NIST Special Publication 811 (2008) appendix B.9.
 *  Example: tonOfRefrigeration  ->  3516.85 */
export const tonOfRefrigeration = 12000 * wattsPerBtuPerHour;

/** A running pump as a source of heat. */
export interface PumpHeat {
  /** Electrical power taken [W]. */
  readonly electricalPower: number;
  /** Hydraulic power rho g Q H [W]. */
  readonly hydraulicPower: number;
  /** Under water, or beside it in the air. */
  readonly placed: "inWater" | "external";
  /** Share of an external pump's losses that reach the water [-], 0 to 1: high for wet rotors, low for fan-cooled motors. */
  readonly motorLossShareToWater: number;
}

/** Returns the heat a pump gives to the water: all of P_el under water; outside P_h + share (P_el - P_h), since the hydraulic power
 *  too ends as friction in the water.
 *  pump PumpHeat   -> heat [W], never above the electrical power
 *  Findings: none. Throws: never.
 *  Valid: steady state; heat that pipes and sump give back to the room is not taken off.
 *  Source: energy balance; the share is an estimate of the user's.
 *  Example: pumpHeatToWater({ electricalPower: 60, hydraulicPower: 20, placed: "external", motorLossShareToWater: 0.25 })  ->  30 */
export function pumpHeatToWater(pump: PumpHeat): number {
  const { electricalPower, placed } = pump;
  if (placed === "inWater") return electricalPower;
  const hydraulic = Math.min(electricalPower, Math.max(0, pump.hydraulicPower));
  const share = Math.min(1, Math.max(0, pump.motorLossShareToWater));
  return hydraulic + share * (electricalPower - hydraulic);
}

/** Returns how fast a power warms a body of water: dT/dt = P / (rho c V).
 *  watts P [W]   volume V [m3]   density rho [kg/m3]   specificHeat c [J/(kg K)]   -> rate [K/s]
 *  Findings: none. Throws: never.
 *  Valid: well mixed, no losses: an upper bound; sea water has c near 4000 J/(kg K).
 *  Source: heat balance.
 *  Example: temperatureRiseRate(341, 0.3, 1025, 4000) * 3600  ->  0.99805 */
export function temperatureRiseRate(watts: number, volume: number, density: number, specificHeat: number): number {
  return watts / (density * specificHeat * volume);
}
