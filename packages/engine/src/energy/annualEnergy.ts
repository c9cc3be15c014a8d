/** Seconds in a year of 365 days, 8760 h: the one year of this project. Yearly energy and cost rest on it, and so does the unit
 *  "a" of wishes, so that n years cost n times the yearly cost exactly; a leap year adds 0.3 %.
 *  Source: NIST Special Publication 811 (2008) appendix B.8, "year (365 days)" = 3.1536e7 s.
 *  Example: secondsPerYear  ->  31536000 */
export const secondsPerYear = 365 * 24 * 3600;

const joulesPerKilowattHour = 3.6e6;

/** Returns the energy a device takes in a year: E = P t, t = 365 days of hoursPerDay.
 *  watts [W] while running   hoursPerDay [h, 0 to 24], 24 unless given   -> energy [J]
 *  Findings: none. Throws: never.
 *  Valid: steady power; give the mean power of a programme.
 *  Source: definition.
 *  Example: annualEnergy(40) / 3.6e6  ->  350.4 */
export function annualEnergy(watts: number, hoursPerDay = 24): number {
  return (watts * secondsPerYear * hoursPerDay) / 24;
}

/** Returns what a device costs to run for a year: cost = E [kWh] x tariff.
 *  watts [W]   tariffPerKwh [currency per kWh]   hoursPerDay [h], 24 unless given   -> cost [currency]
 *  Findings: none. Throws: never.
 *  Valid: one flat tariff, no standing charge.
 *  Source: definition.
 *  Example: annualCost(40, 0.31)  ->  108.624 */
export function annualCost(watts: number, tariffPerKwh: number, hoursPerDay = 24): number {
  return (annualEnergy(watts, hoursPerDay) / joulesPerKilowattHour) * tariffPerKwh;
}
