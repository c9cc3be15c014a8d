import { acceptedUnits, dimensionWords } from "./dimensions.ts";
import { findUnit, nearestUnit, otherDimensionsOf } from "./findUnit.ts";
import { defaultLiquidDensity } from "./headFromPressure.ts";
import type { Dimension, Parsed, Quantity } from "./quantity.ts";

const nominal = { density: defaultLiquidDensity };

/** Returns the quantity with its canonical unit symbol, or one problem that names everything wrong with it and how to mend it.
 *  q anything, meant to be `{ value, unit }`   dimension what it should measure   -> Parsed<Quantity>
 *  Findings: none. Throws: RangeError where the dimension itself is unknown.
 *  Valid: refuses NaN, infinity, missing, unknown or foreign units, temperatures below absolute zero, specific gravities and
 *  conductivities outside EOS-80 and PSS-78; whether a negative length makes sense is for the caller to say.
 *  Source: own construction.
 *  Example: checkQuantity({ value: 25, unit: "inches" }, "length").value.unit  ->  "in"
 *  Example: checkQuantity({ value: 25, unit: "L" }, "length").ok  ->  false */
export function checkQuantity(q: unknown, dimension: Dimension): Parsed<Quantity> {
  const accepted = `accepted units: ${acceptedUnits(dimension)}`;
  if (typeof q === "number") return failed(`${q} has no unit; write it as { "value": ${q}, "unit": ... }; ${accepted}`);
  if (typeof q !== "object" || q === null || Array.isArray(q))
    return failed(
      `${shown(q)} is not ${dimensionWords[dimension]}; write it as { "value": 25, "unit": ... }; ${accepted}`,
    );

  const { value, unit } = q as Partial<Record<keyof Quantity, unknown>>;
  const problems = [valueProblem(value, unit), unitProblem(value, unit, dimension)].filter(
    (text) => text !== undefined,
  );
  if (problems.length > 0) return failed(`${problems.join("; ")}; ${accepted}`);

  const number = value as number;
  const definition = findUnit(unit as string, dimension)!;
  const written = `${number} ${definition.symbol}`;
  const refusal = definition.refuse?.(number);
  if (refusal !== undefined) return failed(`${written} ${refusal}; correct the value or the unit; ${accepted}`);
  if (!Number.isFinite(definition.toBase(number, nominal)))
    return failed(`${written} is too large to compute with; write a smaller value; ${accepted}`);
  return { ok: true, value: { value: number, unit: definition.symbol } };
}

function valueProblem(value: unknown, unit: unknown): string | undefined {
  if (typeof value === "number" && Number.isFinite(value)) return undefined;
  const of = typeof unit === "string" && unit !== "" ? ` (in ${shorten(unit)})` : "";
  if (value === undefined) return `the value is missing${of}; give a number such as 25`;
  if (typeof value === "string")
    return `the value "${shorten(value)}"${of} is text; give a number without quotes, such as 25`;
  return `the value ${shown(value)}${of} is not a finite number; give a number such as 25`;
}

function unitProblem(value: unknown, unit: unknown, dimension: Dimension): string | undefined {
  if (unit === undefined || unit === "") return `${shown(value)} has no unit; add one`;
  if (typeof unit !== "string") return `the unit ${shown(unit)} of ${shown(value)} is not text; give it in quotes`;
  if (findUnit(unit, dimension) !== undefined) return undefined;

  const written = `${shown(value)} ${shorten(unit)}`;
  if (dimension === "salinity" && /^\s*(sg|s\.g\.?|specific gravity)\s*$/i.test(unit))
    return `${written} does not say at which temperature; write SG 25/25C, SG 20/20C or SG 15.56/15.56C (60 F) as the instrument states`;
  const near = nearestUnit(unit, dimension);
  const others = otherDimensionsOf(unit, dimension);
  if (others.length > 0 && near?.toLowerCase() !== unit.toLowerCase())
    return `${written} is ${others.map((other) => dimensionWords[other]).join(" or ")}, not ${dimensionWords[dimension]}; use another unit`;
  const fix = near === undefined ? "use an accepted unit" : `did you mean "${near}"?`;
  return `${written} is not ${dimensionWords[dimension]}: unknown unit "${shorten(unit)}", ${fix}`;
}

const failed = (problem: string): Parsed<never> => ({ ok: false, problem });

/** Problems quote what was given, but never pages of it. */
const shorten = (text: string): string => (text.length > 40 ? `${text.slice(0, 40)}…` : text);

function shown(value: unknown): string {
  if (value === undefined) return "nothing";
  if (typeof value === "string") return `"${shorten(value)}"`;
  if (typeof value === "object" && value !== null) return Array.isArray(value) ? "a list" : "an object";
  return shorten(String(value));
}
