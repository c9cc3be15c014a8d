import { inch, pound } from "./exactFactors.ts";
import { linearUnit, type UnitDefinition } from "./unitDefinition.ts";

/** Times in seconds. A year has 365 days, 8760 h (NIST SP 811 appendix B, "year (365 days)"), as energy and cost a year are reckoned. */
export const timeUnits: readonly UnitDefinition[] = [
  linearUnit("s", "second", 1, 1, { aliases: ["sec", "second", "seconds"], display: { decimals: 2 } }),
  linearUnit("min", "minute", 60, 1, { aliases: ["mins", "minute", "minutes"], display: { decimals: 2 } }),
  linearUnit("h", "hour", 3600, 1, { aliases: ["hr", "hrs", "hour", "hours"], display: { decimals: 2 } }),
  linearUnit("d", "day", 86_400, 1, { aliases: ["day", "days"], display: { decimals: 2 } }),
  linearUnit("a", "year of 365 days", 31_536_000, 1, {
    aliases: ["yr", "yrs", "year", "years"],
    display: { decimals: 2 },
  }),
];

/** Masses in kilograms. */
export const massUnits: readonly UnitDefinition[] = [
  linearUnit("kg", "kilogram", 1, 1, { aliases: ["kilogram", "kilograms", "kilo", "kilos"] }),
  linearUnit("g", "gram", 1, 1000, { aliases: ["gram", "grams"], display: { decimals: 2 } }),
  linearUnit("t", "tonne", 1000, 1, { aliases: ["tonne", "tonnes"] }),
  linearUnit("lb", "avoirdupois pound", pound, 1, { aliases: ["lbs", "pound", "pounds"] }),
  linearUnit("oz", "avoirdupois ounce", pound, 16, { aliases: ["ounce", "ounces"], display: { decimals: 2 } }),
];

/** Densities in kilograms per cubic metre. */
export const densityUnits: readonly UnitDefinition[] = [
  linearUnit("kg/m3", "kilograms per cubic metre", 1, 1, { display: { significant: 5, decimals: 1 } }),
  linearUnit("g/cm3", "grams per cubic centimetre", 1000, 1, {
    aliases: ["g/mL", "g/cc"],
    display: { significant: 5 },
  }),
  linearUnit("kg/L", "kilograms per litre", 1000, 1, { aliases: ["kg/litre"], display: { significant: 5 } }),
  linearUnit("lb/ft3", "pounds per cubic foot", pound, (12 * inch) ** 3, {
    aliases: ["lb/cu ft", "pcf"],
    display: { significant: 4 },
  }),
];

/** Sound levels in A-weighted decibels; makers who print plain dB mean these (common practice, no source). */
export const soundLevelUnits: readonly UnitDefinition[] = [
  linearUnit("dB(A)", "A-weighted decibel (a plain dB is taken as this)", 1, 1, {
    aliases: ["dBA", "dB", "decibel", "decibels"],
    display: { decimals: 1 },
  }),
];

const share = (what: string): readonly UnitDefinition[] => [
  linearUnit("1", `${what} as a plain number`, 1, 1, { label: "", display: { decimals: 3 } }),
  linearUnit("%", `${what} in per cent`, 1, 100, { aliases: ["percent", "per cent", "pct"], display: { decimals: 1 } }),
];

/** Ratios as plain numbers. */
export const ratioUnits: readonly UnitDefinition[] = share("ratio");

/** Pump speeds as a fraction of full speed. */
export const speedFractionUnits: readonly UnitDefinition[] = share("fraction of full speed");
