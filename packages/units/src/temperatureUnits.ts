import type { UnitDefinition } from "./unitDefinition.ts";

/** Absolute zero [C] and the zero of each scale; exact by definition (NIST SP 811, appendix B.8 and 8.5). */
const absoluteZero = -273.15;

function scale(
  symbol: string,
  label: string,
  name: string,
  aliases: readonly string[],
  toBase: (value: number) => number,
  fromBase: (base: number) => number,
): UnitDefinition {
  return {
    symbol,
    label,
    name,
    aliases,
    display: { decimals: 1 },
    toBase,
    fromBase,
    refuse: (value) => (toBase(value) < absoluteZero ? "is below absolute zero (-273.15 C)" : undefined),
  };
}

/** Temperatures in degrees Celsius; points on a scale, not differences. */
export const temperatureUnits: readonly UnitDefinition[] = [
  scale(
    "C",
    "°C",
    "degree Celsius",
    ["°C", "℃", "degC", "deg C", "celsius"],
    (value) => value,
    (base) => base,
  ),
  scale(
    "F",
    "°F",
    "degree Fahrenheit",
    ["°F", "℉", "degF", "deg F", "fahrenheit"],
    (value) => ((value - 32) * 5) / 9,
    (base) => (base * 9) / 5 + 32,
  ),
  scale(
    "K",
    "K",
    "kelvin",
    ["kelvin"],
    (value) => value + absoluteZero,
    (base) => base - absoluteZero,
  ),
];
