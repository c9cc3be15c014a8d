import { britishThermalUnit, mechanicalHorsepower, standardGravity } from "./exactFactors.ts";
import { linearUnit, type UnitDefinition } from "./unitDefinition.ts";

/** Powers in watts. */
export const powerUnits: readonly UnitDefinition[] = [
  linearUnit("W", "watt", 1, 1, { aliases: ["watt", "watts"], display: { decimals: 1 } }),
  linearUnit("kW", "kilowatt", 1000, 1, { aliases: ["kilowatt", "kilowatts"], display: { decimals: 3 } }),
  linearUnit("hp", "mechanical horsepower, 550 ft lbf/s", mechanicalHorsepower, 1, { aliases: ["horsepower", "bhp"] }),
  // Metric horsepower: 75 kgf m/s (NIST SP 811, appendix B.8).
  linearUnit("PS", "metric horsepower, 75 kgf m/s", 75 * standardGravity, 1, { aliases: ["metric hp", "hp metric"] }),
  linearUnit("BTU/h", "British thermal units per hour", britishThermalUnit, 3600, {
    aliases: ["BTU/hr", "BTUH", "BTU/hour"],
    display: { decimals: 0 },
  }),
];

/** Energies in joules. The case of M counts: a millijoule is a thousand million times less. */
export const energyUnits: readonly UnitDefinition[] = [
  linearUnit("kWh", "kilowatt hour", 3_600_000, 1, { aliases: ["kW h", "kilowatt hours"], display: { decimals: 2 } }),
  linearUnit("Wh", "watt hour", 3600, 1, { aliases: ["W h", "watt hours"] }),
  linearUnit("MWh", "megawatt hour", 3_600_000_000, 1, { caseSensitive: true }),
  linearUnit("J", "joule", 1, 1, { aliases: ["joule", "joules"] }),
  linearUnit("kJ", "kilojoule", 1000, 1),
  linearUnit("MJ", "megajoule", 1_000_000, 1, { caseSensitive: true }),
  linearUnit("BTU", "British thermal unit", britishThermalUnit, 1),
];

/** Voltages in volts. */
export const voltageUnits: readonly UnitDefinition[] = [
  linearUnit("V", "volt", 1, 1, { aliases: ["volt", "volts", "VAC", "VDC"], display: { decimals: 1 } }),
  linearUnit("kV", "kilovolt", 1000, 1),
];

/** Currents in amperes. */
export const currentUnits: readonly UnitDefinition[] = [
  linearUnit("A", "ampere", 1, 1, { aliases: ["amp", "amps", "ampere", "amperes"], display: { decimals: 2 } }),
  linearUnit("mA", "milliampere", 1, 1000, { caseSensitive: true, display: { decimals: 0 } }),
];

/** Frequencies in hertz. */
export const frequencyUnits: readonly UnitDefinition[] = [
  linearUnit("Hz", "hertz", 1, 1, { aliases: ["hertz", "1/s", "cycles/s"], display: { decimals: 3 } }),
  linearUnit("rpm", "revolutions per minute", 1, 60, {
    aliases: ["1/min", "r/min", "rev/min"],
    display: { decimals: 0 },
  }),
];
