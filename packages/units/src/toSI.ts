import { acceptedUnits, dimensions, dimensionWords, unitTable } from "./dimensions.ts";
import { findUnit } from "./findUnit.ts";
import { defaultLiquidDensity } from "./headFromPressure.ts";
import { currencyOf } from "./moneyUnits.ts";
import type { ConversionOptions, Dimension, Parsed, Quantity, UnitInfo } from "./quantity.ts";
import type { UnitDefinition } from "./unitDefinition.ts";

/** Returns for each dimension the unit that toSI answers in: SI, but for degrees Celsius, g/kg, volumes per hour and money.
 *  no arguments   -> record of unit symbols, one per dimension
 *  Findings: none. Throws: never.
 *  Valid: money and tariff stay in the currency of the quantity; EUR stands for "whatever was given".
 *  Source: BIPM SI Brochure, 9th edition; the exceptions are what the engine's functions take.
 *  Example: siUnit.flow  ->  "m3/s" */
export const siUnit: Readonly<Record<Dimension, string>> = {
  length: "m",
  area: "m2",
  volume: "m3",
  flow: "m3/s",
  head: "m",
  pressure: "Pa",
  velocity: "m/s",
  salinity: "g/kg",
  temperature: "C",
  power: "W",
  energy: "J",
  tariff: "EUR/kWh",
  soundLevel: "dB(A)",
  ratio: "1",
  angle: "rad",
  time: "s",
  voltage: "V",
  current: "A",
  frequency: "Hz",
  mass: "kg",
  money: "EUR",
  density: "kg/m3",
  kinematicViscosity: "m2/s",
  turnover: "1/h",
  speedFraction: "1",
};

function unitOrThrow(unit: string, dimension: Dimension): UnitDefinition {
  const found = findUnit(unit, dimension);
  if (found === undefined)
    throw new RangeError(
      `"${unit}" is not a unit of ${dimensionWords[dimension]}; use one of: ${acceptedUnits(dimension)}`,
    );
  return found;
}

const complete = (options: ConversionOptions | undefined): Required<ConversionOptions> => ({
  density: options?.density ?? defaultLiquidDensity,
});

/** Returns a quantity in the base unit of its dimension (see siUnit): value * factor, or the scale's own equation.
 *  q quantity as written   dimension what it measures   options.density of the working liquid [kg/m3], only for a head
 *  written as a pressure, 1025 where left out   -> number [siUnit of the dimension]
 *  Findings: none. Throws: RangeError where the unit is unknown for the dimension, or a specific gravity or conductivity
 *  lies outside its scale; checkQuantity tells beforehand.
 *  Valid: exact to the last binary digits; salinity from specific gravity follows EOS-80, from conductivity PSS-78.
 *  Source: NIST Special Publication 811 (2008), appendix B.8; see each factor.
 *  Example: toSI({ value: 25, unit: "mm" }, "length")  ->  0.025
 *  Example: toSI({ value: 1000, unit: "US gal/h" }, "flow") * 3600  ->  3.785411784
 *  Example: toSI({ value: 1, unit: "psi" }, "head", { density: 1000 })  ->  0.703070 */
export function toSI(q: Quantity, dimension: Dimension, options?: ConversionOptions): number {
  const unit = unitOrThrow(q.unit, dimension);
  const refusal = unit.refuse?.(q.value);
  if (refusal !== undefined) throw new RangeError(`${q.value} ${unit.symbol} ${refusal}`);
  return unit.toBase(q.value, complete(options));
}

/** Returns a number in a chosen unit, the inverse of toSI.
 *  si number [siUnit of the dimension]   unit symbol or alias   dimension   options.density as in toSI   -> number [unit]
 *  Findings: none. Throws: RangeError where the unit is unknown for the dimension.
 *  Valid: exact to the last binary digits; a negative salinity has no specific gravity and gives NaN.
 *  Source: NIST Special Publication 811 (2008), appendix B.8; see each factor.
 *  Example: fromSI(0.0254, "mm", "length")  ->  25.4
 *  Example: fromSI(35, "SG 25/25C", "salinity")  ->  1.02637 */
export function fromSI(si: number, unit: string, dimension: Dimension, options?: ConversionOptions): number {
  return unitOrThrow(unit, dimension).fromBase(si, complete(options));
}

/** Returns a quantity in another unit of the same dimension, or the problem; there is no conversion between currencies.
 *  q quantity   unit wanted   dimension   options.density as in toSI   -> Parsed<Quantity>
 *  Findings: none. Throws: RangeError where the quantity's own unit is unknown.
 *  Valid: as toSI and fromSI.
 *  Source: NIST Special Publication 811 (2008), appendix B.8.
 *  Example: convertQuantity({ value: 1, unit: "ft" }, "in", "length").value.value  ->  12
 *  Example: convertQuantity({ value: 1, unit: "EUR" }, "USD", "money").ok  ->  false */
export function convertQuantity(
  q: Quantity,
  unit: string,
  dimension: Dimension,
  options?: ConversionOptions,
): Parsed<Quantity> {
  const target = findUnit(unit, dimension);
  if (target === undefined)
    return {
      ok: false,
      problem: `"${unit}" is not a unit of ${dimensionWords[dimension]}; use one of: ${acceptedUnits(dimension)}`,
    };
  const [from, to] = [currencyOf(q.unit), currencyOf(target.symbol)];
  if ((dimension === "money" || dimension === "tariff") && from !== to)
    return {
      ok: false,
      problem: `${q.value} ${q.unit} cannot be turned into ${target.symbol}: exchange rates change daily; enter the sum in ${to}`,
    };
  return {
    ok: true,
    value: { value: fromSI(toSI(q, dimension, options), unit, dimension, options), unit: target.symbol },
  };
}

const infos = Object.fromEntries(
  dimensions.map((dimension) => [
    dimension,
    unitTable[dimension].map(({ symbol, label, name, aliases }) => ({ symbol, label, name, aliases })),
  ]),
) as unknown as Record<Dimension, readonly UnitInfo[]>;

/** Returns every unit accepted for a dimension, in menu order.
 *  dimension   -> list of { symbol, label, name, aliases }
 *  Findings: none. Throws: never.
 *  Valid: any dimension.
 *  Source: own construction.
 *  Example: unitsOf("angle").map((unit) => unit.symbol)  ->  ["rad", "deg"] */
export function unitsOf(dimension: Dimension): readonly UnitInfo[] {
  return infos[dimension];
}

/** Returns the unit as screens and papers print it: "m³" for "m3", "°C" for "C", nothing for a bare number.
 *  unit symbol or alias   dimension   -> label, possibly empty
 *  Findings: none. Throws: RangeError where the unit is unknown for the dimension.
 *  Valid: any unit of the dimension.
 *  Source: BIPM SI Brochure, 9th edition, chapter 5 (writing unit symbols).
 *  Example: unitLabel("m3/h", "flow")  ->  "m³/h" */
export function unitLabel(unit: string, dimension: Dimension): string {
  return unitOrThrow(unit, dimension).label;
}
