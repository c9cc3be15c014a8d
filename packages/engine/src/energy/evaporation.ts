import { seaWaterDensity, seaWaterVapourPressure } from "../water/index.ts";

/** Open water and the air above it. */
export interface OpenWater {
  /** Open surface [m2]. */
  readonly area: number;
  /** Temperature of the water [C]. */
  readonly waterTemperature: number;
  /** Dissolved salt [g/kg]. */
  readonly salinity: number;
  /** Temperature of the room's air [C]. */
  readonly airTemperature: number;
  /** Relative humidity of the room's air [-], 0 to 1. */
  readonly relativeHumidity: number;
  /** Speed of the air over the surface [m/s]; absent: stillAirSpeed. */
  readonly airSpeed?: number;
}

/** Speed of air over water in a room without draught [m/s].
 *  Source: ASHRAE Handbook HVAC Applications, Natatoriums: 0.05 to 0.15 m/s, of which the short form of its equation takes 0.10.
 *  Example: stillAirSpeed  ->  0.1 */
export const stillAirSpeed = 0.1;

/** Returns how much fresh water an open surface gives to the air: w = A (pw - pa) (0.089 + 0.0782 V) / Y, with the vapour pressure
 *  pw at the water, lowered by its salt, pa in the room, and the latent heat Y = 2500.9 - 2.37 t kJ/kg; over the density of fresh water.
 *  surface OpenWater   -> fresh water to top up [m3/s]; 0 where the air would give water to the surface
 *  Findings: none. Throws: never.
 *  Valid: open pools with light use, water 15 to 35 C, air speed up to 0.7 m/s. Quiet pools gave 74 % of it (Smith, Loef and Jones 1998);
 *  splashing overflows and surface agitation bring more, fans over the water much more. Lids, hoods and tight canopies bring
 *  less, often under half: for a covered aquarium this is an upper estimate. Surfaces of weirs, boxes and sump count too.
 *  Source: ASHRAE Handbook HVAC Applications, chapter Natatoriums, evaporation rate, after W. H. Carrier 1918; latent heat from the
 *  IAPWS steam tables (2500.9, 2441.7 and 2429.8 kJ/kg at 0, 25 and 30 C, from memory).
 *  Example: evaporationRate({ area: 1, waterTemperature: 25, salinity: 35, airTemperature: 22, relativeHumidity: 0.5 }) * 86400 * 1000  ->  6.1254 */
export function evaporationRate(surface: OpenWater): number {
  const { area, waterTemperature, salinity, airTemperature, relativeHumidity } = surface;
  const speed = surface.airSpeed ?? stillAirSpeed;
  const atWater = seaWaterVapourPressure(salinity, waterTemperature);
  const inAir = relativeHumidity * seaWaterVapourPressure(0, airTemperature);
  // kPa over kJ/kg equals Pa over J/kg: the printed constants hold in SI.
  const latentHeat = 2500.9e3 - 2.37e3 * waterTemperature;
  const rate = (area * (atWater - inAir) * (0.089 + 0.0782 * speed)) / latentHeat;
  return Math.max(0, rate) / seaWaterDensity(0, waterTemperature);
}
