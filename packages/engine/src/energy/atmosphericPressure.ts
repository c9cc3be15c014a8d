/** Air pressure at sea level in the standard atmosphere [Pa].
 *  Source: ISO 2533:1975.
 *  Example: standardAtmosphere  ->  101325 */
export const standardAtmosphere = 101325;

/** g M / (R L) = 9.80665 / (287.05287 x 0.0065) of the lowest layer [-], and the nominal earth radius [m] of the standard. */
const exponent = 9.80665 / (287.05287 * 0.0065);
const earthRadius = 6356766;

/** Returns the air pressure at a height in the standard atmosphere: p = 101325 (1 - 0.0065 H/288.15)^5.25588, H = r z/(r + z).
 *  altitude z [m] above mean sea level   -> absolute pressure [Pa]
 *  Findings: none. Throws: never.
 *  Valid: -2000 to 11000 m, held at these ends; weather adds about 3 %.
 *  Source: ISO 2533:1975 Standard Atmosphere, sections 2.3 and 2.7 (geopotential altitude, layer with a lapse of 6.5 K/km).
 *  Example: atmosphericPressure(1000)  ->  89876 */
export function atmosphericPressure(altitude: number): number {
  const held = Math.min(11000, Math.max(-2000, altitude));
  const geopotential = (earthRadius * held) / (earthRadius + held);
  return standardAtmosphere * (1 - (0.0065 * geopotential) / 288.15) ** exponent;
}
