const criticalTemperature = 647.096; // K
const criticalPressure = 22.064e6; // Pa

/** Vapour pressure of sea water: that of pure water over 1 + 0.57357 S/(1 - S) (Raoult), S in kg/kg; pure water from
 *  ln(p/pc) = (Tc/T)(a1 x + a2 x^1.5 + a3 x^3 + a4 x^3.5 + a5 x^4 + a6 x^7.5), x = 1 - T/Tc.
 *  salinity [g/kg]   temperature [C]   -> absolute pressure [Pa]
 *  Findings: none. Throws: never.
 *  Valid: 0 to 160 g/kg, 0 to 100 C and more; pure water 0.03 %, salt 0.1 %.
 *  Source: W. Wagner and A. Pruss, J. Phys. Chem. Ref. Data 31 (2002) 387-535, eq. 2.5 (IAPWS SR1-86); Raoult form in
 *  Sharqawy, Lienhard, Zubair 2010 (formula from memory, value checked).
 *  Example: seaWaterVapourPressure(35, 25)  ->  3105.2 */
export function seaWaterVapourPressure(salinity: number, temperature: number): number {
  const kelvin = temperature + 273.15;
  const x = 1 - kelvin / criticalTemperature;
  const root = Math.sqrt(x);
  const x2 = x * x;
  const x3 = x2 * x;
  const sum =
    -7.85951783 * x +
    1.84408259 * x * root -
    11.7866497 * x3 +
    22.6807411 * x3 * root -
    15.9618719 * x2 * x2 +
    1.80122502 * x2 * x2 * x3 * root;
  const pure = criticalPressure * Math.exp((criticalTemperature / kelvin) * sum);
  const s = salinity / 1000;
  return pure / (1 + (0.57357 * s) / (1 - s));
}
