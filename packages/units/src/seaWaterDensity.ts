/** Returns the density of pure water at one atmosphere, the fifth-degree polynomial of EOS-80:
 *  rho_w = 999.842594 + 6.793952e-2 t - 9.09529e-3 t^2 + 1.001685e-4 t^3 - 1.120083e-6 t^4 + 6.536332e-9 t^5.
 *  temperature t [C, IPTS-68]   -> density [kg/m3]
 *  Findings: none. Throws: never.
 *  Valid: -2 to 40 C. The 1990 scale may be used unchanged: 0.002 kg/m3 at 25 C.
 *  Source: UNESCO Technical Papers in Marine Science 44 (1983), eq. 14 (number from memory).
 *  Example: pureWaterDensity(25)  ->  997.04796 */
export function pureWaterDensity(temperature: number): number {
  const t = temperature;
  return 999.842594 + t * (6.793952e-2 + t * (-9.09529e-3 + t * (1.001685e-4 + t * (-1.120083e-6 + t * 6.536332e-9))));
}

const linearTerm = (t: number): number =>
  0.824493 + t * (-4.0899e-3 + t * (7.6438e-5 + t * (-8.2467e-7 + t * 5.3875e-9)));
const powerTerm = (t: number): number => -5.72466e-3 + t * (1.0227e-4 - t * 1.6546e-6);
const squareTerm = 4.8314e-4;

/** Returns what the salt adds to the density: A S + B S^1.5 + C S^2. */
const saltExcess = (salinity: number, t: number): number =>
  salinity * (linearTerm(t) + powerTerm(t) * Math.sqrt(salinity) + squareTerm * salinity);

/** Returns the density of sea water at one atmosphere by EOS-80: rho = rho_w + A S + B S^1.5 + 4.8314e-4 S^2.
 *  The engine holds the same equation; this package imports nothing, so it has its own copy for specific gravity,
 *  and a check compares the two.
 *  practicalSalinity S [PSS-78, no unit]   temperature t [C, IPTS-68]   -> density [kg/m3]
 *  Findings: none. Throws: never; a negative salinity gives NaN.
 *  Valid: S 0 to 42, -2 to 40 C; standard error 0.0036 kg/m3.
 *  Source: UNESCO Technical Papers in Marine Science 44 (1983), eq. 13 (number from memory); Millero and Poisson (1981).
 *  Example: seaWaterDensity(35, 25)  ->  1023.34306 */
export function seaWaterDensity(practicalSalinity: number, temperature: number): number {
  return pureWaterDensity(temperature) + saltExcess(practicalSalinity, temperature);
}

/** Returns the practical salinity of water of a given density, EOS-80 solved for S by Newton's method to rounding.
 *  density [kg/m3]   temperature t [C, IPTS-68]   -> practical salinity [PSS-78, no unit]
 *  Findings: none. Throws: never; a density below pure water gives NaN.
 *  Valid: results 0 to 42, -2 to 40 C.
 *  Source: inverse of UNESCO Technical Papers in Marine Science 44 (1983), eq. 13 (number from memory).
 *  Example: salinityFromDensity(1023.34306, 25)  ->  35.000 */
export function salinityFromDensity(density: number, temperature: number): number {
  const excess = density - pureWaterDensity(temperature);
  if (!(excess >= 0)) return Number.NaN;
  const a = linearTerm(temperature);
  const b = powerTerm(temperature);
  let s = excess / a;
  // The excess bends so little that each step doubles the digits: four are plenty, the rest cost nothing.
  for (let step = 0; step < 12; step++) {
    const error = saltExcess(s, temperature) - excess;
    s = Math.max(0, s - error / (a + 1.5 * b * Math.sqrt(s) + 2 * squareTerm * s));
  }
  return s;
}
