import { poundPerSquareInch, standardGravity } from "./exactFactors.ts";
import { headFromPressure, pressureFromHead } from "./headFromPressure.ts";
import { lengthUnits } from "./lengthUnits.ts";
import { linearUnit, type UnitDefinition } from "./unitDefinition.ts";

/** Pressures in pascals. */
export const pressureUnits: readonly UnitDefinition[] = [
  linearUnit("Pa", "pascal", 1, 1, { aliases: ["pascal", "pascals"] }),
  linearUnit("hPa", "hectopascal", 100, 1),
  linearUnit("kPa", "kilopascal", 1000, 1, { aliases: ["kilopascal", "kilopascals"], display: { decimals: 3 } }),
  // "mPa" is a thousandth of a pascal, a thousand million times less: the case counts.
  linearUnit("MPa", "megapascal", 1_000_000, 1, { caseSensitive: true }),
  linearUnit("mbar", "millibar", 100, 1, { aliases: ["millibar", "millibars"], display: { decimals: 1 } }),
  linearUnit("bar", "bar", 100_000, 1, { aliases: ["bars"], display: { decimals: 4 } }),
  linearUnit("psi", "pound-force per square inch", poundPerSquareInch, 1, {
    aliases: ["psig", "lbf/in2", "lb/in2", "pounds per square inch"],
    display: { decimals: 3 },
  }),
  linearUnit("atm", "standard atmosphere", 101_325, 1, { aliases: ["atmosphere", "atmospheres"] }),
  // Conventional columns: water at 1000 kg/m3, mercury at 13595.1 kg/m3, under g0 (NIST SP 811, appendix B.8).
  linearUnit("mH2O", "conventional metre of fresh water", 1000 * standardGravity, 1, {
    aliases: ["m H2O"],
    label: "mH₂O",
  }),
  linearUnit("inH2O", "conventional inch of fresh water", 25.4 * standardGravity, 1, {
    aliases: ["in H2O"],
    label: "inH₂O",
  }),
  linearUnit("mmHg", "conventional millimetre of mercury", 13.5951 * standardGravity, 1, { aliases: ["mm Hg"] }),
  linearUnit("inHg", "conventional inch of mercury", 13.5951 * 25.4 * standardGravity, 1, { aliases: ["in Hg"] }),
];

const headAsPressure = new Set(["Pa", "kPa", "mbar", "bar", "psi"]);

/** A head written as a pressure: the column of working liquid that stands on it. */
const columnUnit = (unit: UnitDefinition): UnitDefinition => ({
  ...unit,
  name: `${unit.name}, as a column of the working liquid`,
  toBase: (value, options) => headFromPressure(unit.toBase(value, options), options.density),
  fromBase: (base, options) => unit.fromBase(pressureFromHead(base, options.density), options),
});

/** Heads in metres of the working liquid. */
export const headUnits: readonly UnitDefinition[] = [
  ...lengthUnits.map((unit) => ({ ...unit, name: `${unit.name} of the working liquid` })),
  ...pressureUnits.filter((unit) => headAsPressure.has(unit.symbol)).map(columnUnit),
];
