/** Returns the current a device draws from the mains: I = P / (U cos phi).
 *  watts P [W]   voltage U [V, effective]   powerFactor cos phi [-], 1 unless given   -> current [A]; Infinity at no voltage
 *  Findings: none. Throws: never.
 *  Valid: one phase; small pump supplies often have a power factor of 0.5 to 0.6, which draws twice the current.
 *  Source: definition of power factor, IEC 60050-131.
 *  Example: circuitCurrent(460, 230, 0.8)  ->  2.5 */
export function circuitCurrent(watts: number, voltage: number, powerFactor = 1): number {
  return watts === 0 ? 0 : watts / (voltage * powerFactor);
}

/** Returns the largest load a circuit should carry for three hours or more: 80 % of its breaker.
 *  rating [A]   -> current [A]
 *  Findings: none. Throws: never.
 *  Valid: US rule, common practice elsewhere; local code and an electrician decide.
 *  Source: US National Electrical Code (NFPA 70) section 210.20(A): a breaker is rated at 125 % of the continuous load.
 *  Example: continuousLoadLimit(20)  ->  16 */
export function continuousLoadLimit(rating: number): number {
  return rating / 1.25;
}
