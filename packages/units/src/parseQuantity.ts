import { checkQuantity } from "./checkQuantity.ts";
import { acceptedUnits, dimensionWords, unitTable } from "./dimensions.ts";
import { parseFeetAndInches, plainMarks } from "./parseFeetAndInches.ts";
import { type DecimalSign, parseNumber, plainText } from "./parseNumber.ts";
import type { Dimension, Parsed, Quantity } from "./quantity.ts";

/** Where a bare number is itself a complete quantity. */
const bareNumber = new Set<Dimension>(["ratio", "speedFraction"]);

/** Returns the quantity a person typed, with its canonical unit, or one problem that names the text and how to mend it.
 *  text such as "25 mm", "3' 4 1/2\"", "800 gph", "25,4 mm", "€0.31/kWh"   dimension what it should measure
 *  defaultUnit taken where the text has none   decimalSign what the writer puts before decimals, a point where left out
 *  -> Parsed<Quantity>; feet with inches come back in "ft-in", counted in feet
 *  Findings: none. Throws: RangeError where the dimension itself is unknown.
 *  Valid: a decimal comma is read where it cannot be a thousands separator; "1,234" is refused and the message says why;
 *  "1.234" is 1.234. With a decimal comma it is the other way round. A fraction may stand with any unit. Texts above 200 letters are refused.
 *  Source: own construction.
 *  Example: parseQuantity("3' 4 1/2\"", "length").value  ->  {"value": 3.375, "unit": "ft-in"}
 *  Example: parseQuantity("25,4 mm", "length").value.value  ->  25.4
 *  Example: parseQuantity("1.026", "salinity", "SG 25/25C").value.unit  ->  "SG 25/25C"
 *  Example: parseQuantity("1,250 L/h", "flow").ok  ->  false
 *  Example: parseQuantity("1,026 m", "length", "m", ",").value.value  ->  1.026 */
export function parseQuantity(
  text: string,
  dimension: Dimension,
  defaultUnit?: string,
  decimalSign: DecimalSign = ".",
): Parsed<Quantity> {
  const hint = `accepted units: ${acceptedUnits(dimension)}`;
  if (text.length > 200)
    return { ok: false, problem: `"${text.slice(0, 40)}…" is too long for ${dimensionWords[dimension]}; ${hint}` };
  const isLength = dimension === "length" || dimension === "head";
  const plain = signAfterNumber(plainText(isLength ? plainMarks(text) : text), dimension);
  if (plain === "") return { ok: false, problem: `nothing was entered; write a number and a unit; ${hint}` };

  const feet = isLength ? parseFeetAndInches(plain, decimalSign) : undefined;
  if (feet !== undefined)
    return feet.ok ? checkQuantity({ value: feet.value, unit: "ft-in" }, dimension) : withHint(feet.problem, hint);

  const number = parseNumber(plain, decimalSign);
  if (!number.ok) return withHint(number.problem, hint);
  const { value, rest } = number.value;
  const unit = rest !== "" ? rest : (defaultUnit ?? (bareNumber.has(dimension) ? "1" : undefined));
  if (unit === undefined)
    return {
      ok: false,
      problem: `"${text.trim()}" has no unit; add one, as in "${value} ${unitTable[dimension][0]!.symbol}"; ${hint}`,
    };
  return checkQuantity({ value, unit }, dimension);
}

const withHint = (problem: string, hint: string): Parsed<never> => ({ ok: false, problem: `${problem}; ${hint}` });

/** "€0.31/kWh" and "EUR 12" -> "0.31 €/kWh" and "12 EUR": the only units written before their number. */
function signAfterNumber(text: string, dimension: Dimension): string {
  if (dimension !== "money" && dimension !== "tariff") return text;
  return text.replace(/^(-?)\s*([€$£¥₹]|[a-z]{3})\s*(-?[\d.,][\d.,]*)\s*/i, "$1$3 $2");
}
