import { conductivityRatio, practicalSalinity, standardSeaWaterConductivity } from "./practicalSalinity.ts";
import { pureWaterDensity, salinityFromDensity, seaWaterDensity } from "./seaWaterDensity.ts";
import { linearUnit, type UnitDefinition } from "./unitDefinition.ts";

// Salinity has one number here: g/kg, ppt and practical salinity count alike, as instruments and the engine's EOS-80 do.
// TEOS-10 puts 35.16504 g/kg of salt into water of practical salinity 35 (Millero et al. 2008), 0.47 % more; applying that
// factor here but not in the engine would give a measured specific gravity back 0.0001 too high.

/** The scales stop here: EOS-80 and PSS-78 both end at a practical salinity of 42. */
const highest = 42;
/** PSS-78 begins at a practical salinity of 2. */
const lowestByConductivity = 2;

/** Specific gravity: density of the sample over density of pure water, both at one stated temperature [C]. */
function specificGravityUnit(symbol: string, temperature: number, aliases: readonly string[]): UnitDefinition {
  const water = pureWaterDensity(temperature);
  const most = seaWaterDensity(highest, temperature) / water;
  return {
    symbol,
    label: symbol,
    name: `specific gravity, sea water at ${temperature.toFixed(2)} C over pure water at the same temperature`,
    aliases,
    display: { significant: 5, fixed: 4 },
    toBase: (value) => salinityFromDensity(value * water, temperature),
    fromBase: (base) => seaWaterDensity(base, temperature) / water,
    refuse: (value) =>
      value < 1
        ? "is lighter than fresh water; sea water reads about 1.026"
        : value > most
          ? `is beyond ${most.toFixed(4)}, where the sea-water equation ends (salinity ${highest}); sea water reads about 1.026`
          : undefined,
  };
}

/** Probes compensate to 25 C on the 1990 scale; PSS-78 is written in the 1968 one. */
const probeTemperature = 25 * 1.00024;
const conductivityAt = (salinity: number): number =>
  standardSeaWaterConductivity * conductivityRatio(salinity, probeTemperature);

const conductivityUnit: UnitDefinition = {
  symbol: "mS/cm",
  label: "mS/cm",
  name: "electrical conductivity at (or compensated to) 25 C, PSS-78",
  aliases: ["mS/cm at 25C", "mS/cm @ 25C"],
  display: { decimals: 1 },
  caseSensitive: true,
  toBase: (value) => practicalSalinity(value / standardSeaWaterConductivity, probeTemperature),
  fromBase: (base) => conductivityAt(base),
  refuse: (value) => {
    const low = conductivityAt(lowestByConductivity);
    const high = conductivityAt(highest);
    return value < low || value > high
      ? `is outside ${low.toFixed(1)} to ${high.toFixed(1)} mS/cm, the range of the practical salinity scale; sea water reads about 53`
      : undefined;
  },
};

/** Salinities in grams of salt per kilogram of sea water, taken as practical salinity. */
export const salinityUnits: readonly UnitDefinition[] = [
  linearUnit("g/kg", "grams of salt per kilogram of sea water, taken as practical salinity", 1, 1, {
    display: { decimals: 1 },
  }),
  linearUnit("ppt", "parts per thousand, taken as g/kg", 1, 1, { aliases: ["‰", "o/oo"], display: { decimals: 1 } }),
  linearUnit("PSU", "practical salinity (PSS-78), taken as g/kg", 1, 1, {
    aliases: ["psu", "PSS-78", "PSS"],
    display: { decimals: 1 },
  }),
  specificGravityUnit("SG 25/25C", 25, ["SG 25C/25C", "SG 25/25", "SG 77/77F", "SG 77F/77F"]),
  specificGravityUnit("SG 20/20C", 20, ["SG 20C/20C", "SG 20/20", "SG 68/68F", "SG 68F/68F"]),
  specificGravityUnit("SG 15.56/15.56C", 28 / 1.8, ["SG 15.56C/15.56C", "SG 15.6/15.6C", "SG 60/60F", "SG 60F/60F"]),
  conductivityUnit,
];
