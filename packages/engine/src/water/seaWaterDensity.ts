/** Density of sea water at one atmosphere: rho = rho_w(t) + A(t) S + B(t) S^1.5 + 4.8314e-4 S^2 (EOS-80).
 *  salinity S [g/kg, taken as practical salinity]   temperature t [C]   -> density [kg/m3]
 *  Findings: none. Throws: never.
 *  Valid: S 0 to 42, t -2 to 40 C. Within 0.01 kg/m3 of TEOS-10 for sea salt; taking t as the 1968 scale costs 0.002 kg/m3.
 *  Source: F. J. Millero and A. Poisson, Deep-Sea Research 28A (1981) 625-629; UNESCO Technical Papers in Marine Science 44 (1983).
 *  Example: seaWaterDensity(35, 25)  ->  1023.3431 */
export function seaWaterDensity(salinity: number, temperature: number): number {
  const s = salinity;
  const t = temperature;
  const pure =
    999.842594 + t * (6.793952e-2 + t * (-9.09529e-3 + t * (1.001685e-4 + t * (-1.120083e-6 + t * 6.536332e-9))));
  const a = 0.824493 + t * (-4.0899e-3 + t * (7.6438e-5 + t * (-8.2467e-7 + t * 5.3875e-9)));
  const b = -5.72466e-3 + t * (1.0227e-4 - t * 1.6546e-6);
  return pure + s * (a + b * Math.sqrt(s) + 4.8314e-4 * s);
}
