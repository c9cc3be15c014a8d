import { imperialGallonLitres, usGallonLitres } from "./exactFactors.ts";
import { linearUnit, type UnitDefinition } from "./unitDefinition.ts";

/** Lengths in metres. "ft-in" counts feet (3.375 is 3' 4 1/2") and only changes how the length is printed. */
export const lengthUnits: readonly UnitDefinition[] = [
  linearUnit("m", "metre", 1, 1, { aliases: ["metre", "metres", "meter", "meters"], display: { decimals: 3 } }),
  linearUnit("cm", "centimetre", 1, 100, {
    aliases: ["centimetre", "centimetres", "centimeter", "centimeters"],
    display: { decimals: 1 },
  }),
  linearUnit("mm", "millimetre", 1, 1000, {
    aliases: ["millimetre", "millimetres", "millimeter", "millimeters"],
    display: { decimals: 1 },
  }),
  linearUnit("in", "inch", 254, 10_000, {
    aliases: ["inch", "inches", '"', "″", "''"],
    display: { significant: 4, decimals: 3 },
  }),
  linearUnit("ft", "foot", 3048, 10_000, { aliases: ["foot", "feet", "'", "′"], display: { decimals: 2 } }),
  linearUnit("ft-in", "feet and inches (the value counts feet)", 3048, 10_000, {
    aliases: ["ft in", "feet-inches", "feet and inches"],
    display: { decimals: 4 },
  }),
];

/** Areas in square metres. */
export const areaUnits: readonly UnitDefinition[] = [
  linearUnit("m2", "square metre", 1, 1, { aliases: ["sq m", "square metre", "square metres", "square meters"] }),
  linearUnit("cm2", "square centimetre", 1, 10_000, { aliases: ["sq cm"] }),
  linearUnit("mm2", "square millimetre", 1, 1_000_000, { aliases: ["sq mm"], display: { decimals: 1 } }),
  linearUnit("in2", "square inch", 64_516, 100_000_000, { aliases: ["sq in", "square inch", "square inches"] }),
  linearUnit("ft2", "square foot", 9_290_304, 100_000_000, { aliases: ["sq ft", "square foot", "square feet"] }),
];

/** Volumes in cubic metres. Flow units are built from the same rows. */
export const volumeUnits: readonly UnitDefinition[] = [
  linearUnit("L", "litre", 1, 1000, {
    aliases: ["l", "litre", "litres", "liter", "liters", "ltr", "dm3"],
    display: { decimals: 2 },
  }),
  // "ML" could be a megalitre, so the case counts.
  linearUnit("mL", "millilitre", 1, 1_000_000, {
    aliases: ["ml", "millilitre", "millilitres", "milliliter", "milliliters", "cm3", "cc"],
    display: { decimals: 1 },
    caseSensitive: true,
  }),
  linearUnit("m3", "cubic metre", 1, 1, { aliases: ["cubic metre", "cubic metres", "cubic meter", "cubic meters"] }),
  linearUnit("US gal", "US liquid gallon (a plain gal is taken as this)", usGallonLitres, 1000, {
    aliases: ["gal", "gals", "gallon", "gallons", "US gallon", "US gallons", "gal US", "gal (US)"],
    display: { decimals: 2 },
  }),
  linearUnit("imp gal", "imperial gallon", imperialGallonLitres, 1000, {
    aliases: ["imperial gallon", "imperial gallons", "UK gal", "UK gallon", "UK gallons", "gal (UK)", "gal (imp)"],
    display: { decimals: 2 },
  }),
  linearUnit("ft3", "cubic foot", 28_316_846_592, 1e12, { aliases: ["cu ft", "cubic foot", "cubic feet"] }),
  linearUnit("in3", "cubic inch", 16_387_064, 1e12, { aliases: ["cu in", "cubic inch", "cubic inches"] }),
];

/** Angles in radians. */
export const angleUnits: readonly UnitDefinition[] = [
  linearUnit("rad", "radian", 1, 1, { aliases: ["radian", "radians"] }),
  linearUnit("deg", "degree", Math.PI, 180, {
    aliases: ["°", "degree", "degrees"],
    label: "°",
    display: { decimals: 1 },
  }),
];
