/** Specific heat of sea water at one atmosphere: cp = cp_w(t) + A(t) S + B(t) S^1.5.
 *  salinity S [g/kg, taken as practical salinity]   temperature t [C]   -> specific heat at constant pressure [J/(kg K)]
 *  Findings: none. Throws: never.
 *  Valid: S 0 to 40, t 0 to 35 C; standard error 0.5 J/(kg K). Within 0.05 % of TEOS-10 from 15 to 30 C.
 *  Source: F. J. Millero, G. Perron, J. E. Desnoyers, J. Geophysical Research 78 (1973) 4499; UNESCO Technical Papers in
 *  Marine Science 44 (1983), section 5.
 *  Example: seaWaterSpecificHeat(35, 25)  ->  3997.7 */
export function seaWaterSpecificHeat(salinity: number, temperature: number): number {
  const s = salinity;
  const t = temperature;
  const pure = 4217.4 + t * (-3.720283 + t * (0.1412855 + t * (-2.654387e-3 + t * 2.093236e-5)));
  const a = -7.643575 + t * (0.1072763 - t * 1.38385e-3);
  const b = 0.1770383 + t * (-4.07718e-3 + t * 5.148e-5);
  return pure + s * (a + b * Math.sqrt(s));
}
