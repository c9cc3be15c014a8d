/** Dynamic viscosity of sea water: mu = mu_w (1 + A S + B S^2), mu_w = 4.2844e-5 + 1/(0.157 (t + 64.993)^2 - 91.296), S in kg/kg.
 *  salinity [g/kg]   temperature t [C]   -> dynamic viscosity [Pa s]
 *  Findings: none. Throws: never.
 *  Valid: 0 to 150 g/kg, 0 to 180 C; 1.5 %. Older formulas lie up to 0.6 % lower.
 *  Source: M. H. Sharqawy, J. H. Lienhard V, S. M. Zubair, Desalination and Water Treatment 16 (2010) 354-380, eq. 22-23.
 *  Example: seaWaterDynamicViscosity(35, 25)  ->  0.00095883 */
export function seaWaterDynamicViscosity(salinity: number, temperature: number): number {
  const s = salinity / 1000;
  const t = temperature;
  const pure = 4.2844e-5 + 1 / (0.157 * (t + 64.993) ** 2 - 91.296);
  const a = 1.541 + t * (1.998e-2 - t * 9.52e-5);
  const b = 7.974 + t * (-7.561e-2 + t * 4.724e-4);
  return pure * (1 + s * (a + s * b));
}
