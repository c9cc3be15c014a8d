import { unitTable } from "./dimensions.ts";
import { findUnit } from "./findUnit.ts";
import { formatFeetAndInches } from "./formatFeetAndInches.ts";
import type { ConversionOptions, Dimension } from "./quantity.ts";
import { fromSI } from "./toSI.ts";
import type { DisplayRule } from "./unitDefinition.ts";

/** How a quantity is printed. */
export interface FormatOptions extends ConversionOptions {
  /** Significant digits, zeros kept, so that a changing number keeps its width; left out: what the unit deserves, zeros dropped. */
  readonly digits?: number;
  /** False prints the number alone. Default true. */
  readonly withUnit?: boolean;
}

const narrowNoBreakSpace = "\u202f";
const raised = "⁰¹²³⁴⁵⁶⁷⁸⁹";

/** Returns a number in SI as a person reads it: converted, rounded to the digits its unit deserves, with the unit's label.
 *  si number [siUnit of the dimension]   dimension   unit symbol or alias   options digits, withUnit, density (as toSI)
 *  -> text with a narrow no-break space before the unit and a true minus sign, never "-0"; "—" where the number is not finite
 *  Findings: none. Throws: RangeError where the unit is unknown for the dimension.
 *  Valid: digits before the decimal point are never rounded away, whatever `digits` says; at most 15 significant digits.
 *  Source: BIPM SI Brochure, 9th edition, 5.4.3 (space before the unit); rounding is own choice.
 *  Example: formatQuantity(0.0254, "length", "mm", { withUnit: false })  ->  "25.4"
 *  Example: formatQuantity(0.001, "flow", "L/h", { withUnit: false })  ->  "3600"
 *  Example: formatQuantity(-1e-9, "temperature", "C", { withUnit: false })  ->  "0" */
export function formatQuantity(si: number, dimension: Dimension, unit: string, options: FormatOptions = {}): string {
  const value = fromSI(si, unit, dimension, options);
  if (!Number.isFinite(value)) return "—";
  const definition = findUnit(unit, dimension) ?? unitTable[dimension][0]!;
  if (definition.symbol === "ft-in") return formatFeetAndInches(value * 0.3048);
  const number = formatNumber(value, definition.display, options.digits);
  if (options.withUnit === false || definition.label === "") return number;
  return `${number}${narrowNoBreakSpace}${definition.label}`;
}

/** A finite number as digits, rounded as the rule says; with explicit digits zeros are kept. */
function formatNumber(value: number, rule: DisplayRule = {}, digits?: number): string {
  const significant = Math.min(15, Math.max(1, Math.round(digits ?? rule.significant ?? 3)));
  if (value === 0 && digits === undefined) return (0).toFixed(rule.fixed ?? 0);
  // The size after rounding decides: 9.996 to three digits is 10.0, not 10.00.
  const size = Math.abs(Number(value.toPrecision(significant)));
  const limited = digits === undefined && (rule.decimals ?? rule.fixed) !== undefined;
  if (size >= 1e15 || (size > 0 && size < 1e-4 && !limited))
    return scientific(value, significant - 1, digits === undefined);

  const power = size === 0 ? 0 : Math.floor(Math.log10(size));
  const wanted = Math.max(0, significant - 1 - power);
  const decimals = digits === undefined ? (rule.fixed ?? Math.min(wanted, rule.decimals ?? wanted)) : wanted;
  const text = value.toFixed(Math.min(100, decimals));
  return trueMinus(digits === undefined && rule.fixed === undefined ? withoutZeros(text) : text);
}

function scientific(value: number, decimals: number, trim: boolean): string {
  const [mantissa = "", exponent = ""] = value.toExponential(decimals).split("e");
  const power = [...exponent].map((sign) => (sign === "-" ? "⁻" : (raised[Number(sign)] ?? ""))).join("");
  return trueMinus(
    `${trim ? withoutZeros(mantissa) : mantissa}×10${exponent.startsWith("+") ? power.replace(/^⁰/, "") : power}`,
  );
}

const withoutZeros = (text: string): string => (text.includes(".") ? text.replace(/\.?0+$/, "") : text);

/** "-0.0" says nothing that "0.0" does not; everything else negative gets the true minus sign. */
const trueMinus = (text: string): string => {
  if (!text.startsWith("-")) return text;
  return /[1-9]/.test(text) ? `−${text.slice(1)}` : text.slice(1);
};
