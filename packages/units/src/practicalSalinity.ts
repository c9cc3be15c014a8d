const a = [0.008, -0.1692, 25.3851, 14.0941, -7.0261, 2.7081] as const;
const b = [0.0005, -0.0056, -0.0066, -0.0375, 0.0636, -0.0144] as const;

const polynomial = (c: readonly number[], x: number): number => c.reduceRight((sum, term) => sum * x + term, 0);
const slope = (c: readonly number[], x: number): number =>
  c.reduceRight((sum, term, power) => (power === 0 ? sum : sum * x + power * term), 0);

/** C(35, t, 0) / C(35, 15, 0), eq. 3. */
const temperatureRatio = (t: number): number =>
  polynomial([0.6766097, 2.00564e-2, 1.104259e-4, -6.9698e-7, 1.0031e-9], t);

/** Weight of the second polynomial away from 15 C, eq. 2. */
const temperatureWeight = (t: number): number => (t - 15) / (1 + 0.0162 * (t - 15));

/** Returns the conductivity of standard sea water, C(35, 15 C, 0 dbar) = 42.914 mS/cm, the anchor of PSS-78.
 *  no arguments   -> conductivity [mS/cm]
 *  Findings: none. Throws: never.
 *  Valid: Culkin and Smith's measured value.
 *  Source: Culkin and Smith, IEEE Journal of Oceanic Engineering 5 (1980), 22-23.
 *  Example: standardSeaWaterConductivity  ->  42.914 */
export const standardSeaWaterConductivity = 42.914;

/** Returns practical salinity from a conductivity ratio by PSS-78: S = sum a_i Rt^(i/2) + (t - 15)/(1 + k (t - 15)) sum b_i Rt^(i/2),
 *  with Rt = R / (Rp rt).
 *  ratio R = C(S, t, p) / C(35, 15, 0) [-]   temperature t [C, IPTS-68]   pressure p [dbar above one atmosphere]   -> salinity [PSS-78]
 *  Findings: none. Throws: never; a negative ratio gives NaN.
 *  Valid: S 2 to 42, -2 to 35 C, 0 to 10000 dbar.
 *  Source: UNESCO Technical Papers in Marine Science 44 (1983), eq. 1 to 4, check values on page 9.
 *  Example: practicalSalinity(1, 15)  ->  35.000000
 *  Example: practicalSalinity(1.2, 20, 2000)  ->  37.245628
 *  Example: practicalSalinity(0.65, 5, 1500)  ->  27.995347 */
export function practicalSalinity(ratio: number, temperature: number, pressure = 0): number {
  const t = temperature;
  const p = pressure;
  const pressureRatio =
    1 +
    (p * (2.07e-5 + p * (-6.37e-10 + p * 3.989e-15))) /
      (1 + t * (3.426e-2 + t * 4.464e-4) + (4.215e-1 - 3.107e-3 * t) * ratio);
  const root = Math.sqrt(ratio / (pressureRatio * temperatureRatio(t)));
  return polynomial(a, root) + temperatureWeight(t) * polynomial(b, root);
}

/** Returns the conductivity ratio of water of a given practical salinity at one atmosphere: PSS-78 solved by Newton's method.
 *  salinity S [PSS-78]   temperature t [C, IPTS-68]   -> ratio C(S, t, 0) / C(35, 15, 0) [-]
 *  Findings: none. Throws: never; below the 0.01 that the polynomial gives without any salt the ratio is 0.
 *  Valid: S 2 to 42, -2 to 35 C.
 *  Source: inverse of UNESCO Technical Papers in Marine Science 44 (1983), eq. 1 to 3.
 *  Example: conductivityRatio(35, 15)  ->  1.000000 */
export function conductivityRatio(salinity: number, temperature: number): number {
  const weight = temperatureWeight(temperature);
  const terms = a.map((term, i) => term + weight * (b[i] ?? 0));
  if (salinity <= (terms[0] ?? 0)) return 0;
  let root = Math.sqrt(salinity / 35);
  for (let step = 0; step < 20; step++)
    root = Math.max(1e-6, root - (polynomial(terms, root) - salinity) / slope(terms, root));
  return root * root * temperatureRatio(temperature);
}
