import { checkQuantity, type Dimension, fromSI, toSI, unitLabel, unitsOf } from "@tidewright/units";
import { z } from "zod";

/** What a quantity may be: bounds in SI. */
export interface QuantityRange {
  /** Smallest value allowed [SI unit of the dimension]. */
  readonly min?: number;
  /** Largest value allowed [SI unit of the dimension]. */
  readonly max?: number;
  /** True where zero itself makes no sense (a bore, a tank length). */
  readonly positive?: boolean;
}

/** A quantity as the document holds it: a number in the unit that was typed. */
export interface TypedQuantity {
  value: number;
  unit: string;
}

/** What a schema of a quantity stands for. */
export interface QuantityFacts {
  readonly dimension: Dimension;
  readonly range: QuantityRange;
}

// zod keeps no room for facts of ours that would not also end up in the published JSON Schema.
const facts = new WeakMap<object, QuantityFacts>();

/** Returns a zod schema of `{ value, unit }` for one dimension, with its range checked in SI.
 *  The document keeps what was typed: "25 mm" stays 25 mm; only `engineModel` converts.
 *  dimension which units are accepted   range bounds in SI   -> zod schema
 *  Findings: none. Throws: never; problems are zod issues that name value and fix.
 *  Valid: any dimension of the units package.
 *  Source: own construction.
 *  Example: quantity("length").safeParse({ value: 25, unit: "mm" }).success  ->  true
 *  Example: quantity("length", { min: 0 }).safeParse({ value: -1, unit: "in" }).success  ->  false */
export function quantity(dimension: Dimension, range: QuantityRange = {}) {
  const schema = z
    .strictObject({ value: z.number(), unit: z.string() })
    .superRefine((q, context) => {
      const problem = quantityProblem(q, { dimension, range });
      if (problem !== undefined) context.addIssue({ code: "custom", message: problem.message });
    })
    .meta({ description: `${dimension} in ${unitSymbols(dimension).slice(0, 20).join(", ")}` });
  facts.set(schema, { dimension, range });
  return schema;
}

/** Returns dimension and range of a schema made by `quantity`, or undefined for any other schema.
 *  schema any zod schema   -> QuantityFacts, bounds in SI
 *  Findings: none. Throws: never.
 *  Valid: the very schema `quantity` returned, not one wrapped around it.
 *  Source: own construction.
 *  Example: quantityFacts(quantity("flow")).dimension  ->  "flow" */
export function quantityFacts(schema: object): QuantityFacts | undefined {
  return facts.get(schema);
}

/** Returns the unit symbols of a dimension, as a document may hold them.
 *  dimension   -> list of symbols
 *  Findings: none. Throws: never.
 *  Valid: any dimension of the units package.
 *  Source: the units package.
 *  Example: unitSymbols("length").includes("mm")  ->  true */
export function unitSymbols(dimension: Dimension): string[] {
  return unitsOf(dimension).map((unit) => unit.symbol);
}

/** Returns what is wrong with a quantity whose value is a finite number, or undefined for a sound one.
 *  q value and unit   facts dimension and SI bounds   -> message and fix
 *  Findings: none. Throws: never.
 *  Valid: any unit text.
 *  Source: own construction.
 *  Example: quantityProblem({ value: 0, unit: "mm" }, { dimension: "length", range: { positive: true } }).message  ->  "0 mm must be greater than zero" */
export function quantityProblem(
  q: TypedQuantity,
  { dimension, range }: QuantityFacts,
): { message: string; fix: string } | undefined {
  const given = `${q.value} ${q.unit}`;
  if (!isUnit(q.unit, dimension)) {
    const units = unitSymbols(dimension).slice(0, 20).join(", ");
    return { message: `"${q.unit}" is no unit here`, fix: `use one of the units ${units}` };
  }
  // What is left to refuse is a value off its scale, as a temperature below absolute zero; the first part says so.
  const checked = checkQuantity(q, dimension);
  if (!checked.ok) return { message: checked.problem.split("; ")[0]!, fix: "correct the value or the unit" };
  const si = toSI(q, dimension);
  const { min, max } = range;
  if (range.positive && !(si > 0))
    return { message: `${given} must be greater than zero`, fix: "give a value above zero" };
  if (min !== undefined && si < min) {
    if (min === 0) return { message: `${given} is negative`, fix: "give zero or more" };
    const least = bound(min, q, dimension);
    return { message: `${given} is less than ${least}, the least that makes sense here`, fix: `give ${least} or more` };
  }
  if (max !== undefined && si > max) {
    const most = bound(max, q, dimension);
    return {
      message: `${given} is more than ${most}, the most that makes sense here`,
      fix: `give ${most} or less; check the unit`,
    };
  }
  return undefined;
}

/** Returns whether a text is a unit of a dimension, in any spelling the units package takes.
 *  unit text   dimension   -> true or false
 *  Findings: none. Throws: never.
 *  Valid: any text.
 *  Source: the units package.
 *  Example: isUnit("inches", "length")  ->  true
 *  Example: isUnit("L", "length")  ->  false */
export function isUnit(unit: string, dimension: Dimension): boolean {
  try {
    unitLabel(unit, dimension);
    return true;
  } catch {
    return false;
  }
}

/** A bound in the unit that was typed. */
function bound(si: number, q: TypedQuantity, dimension: Dimension): string {
  return `${Number(fromSI(si, q.unit, dimension).toPrecision(4))} ${q.unit}`;
}
