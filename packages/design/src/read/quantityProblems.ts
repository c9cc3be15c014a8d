import type { Dimension } from "@tidewright/units";
import { type Problem, shortened, shown } from "../problem.ts";
import { isUnit, type QuantityFacts, quantityProblem, unitSymbols } from "../schema/quantity.ts";
import { below } from "./jsonPointer.ts";
import { listed, nearest } from "./nearest.ts";
import { isObject } from "./place.ts";

/** Adds everything that is wrong with a quantity: its form, its number, its unit, its range. */
export function quantityProblems(
  facts: QuantityFacts,
  value: unknown,
  path: string,
  add: (problem: Problem) => void,
): void {
  const { dimension } = facts;
  if (!isObject(value)) return add({ path, ...notAQuantity(value, dimension), value });
  const number = value["value"];
  const unit = value["unit"];
  let sound = true;
  const wrong = (problem: Problem) => {
    sound = false;
    add(problem);
  };
  if (!Object.hasOwn(value, "value"))
    wrong({ path: below(path, "value"), message: 'the field "value" is missing', fix: 'add "value" with a number' });
  else if (typeof number !== "number" || !Number.isFinite(number))
    wrong({
      path: below(path, "value"),
      message: `${shown(number)} stands where a ${typeof number === "number" ? "finite number" : "number"} is expected`,
      value: number,
      fix: "write the number alone, without quotes",
    });
  const symbols = unitSymbols(dimension);
  if (!Object.hasOwn(value, "unit"))
    wrong({
      path: below(path, "unit"),
      message: 'the field "unit" is missing',
      fix: `add "unit" with one of ${listed(symbols, 20)}`,
    });
  else if (typeof unit !== "string" || !isUnit(unit, dimension))
    wrong({
      path: below(path, "unit"),
      message: `${shown(unit)} is no unit of ${inWords(dimension)}`,
      value: unit,
      fix: unitFix(unit, symbols),
    });
  for (const name of Object.keys(value)) {
    if (name === "value" || name === "unit") continue;
    // An unknown field leaves the number and its unit readable, so the range is still looked at.
    add({
      path: below(path, name),
      message: `there is no field "${shortened(name)}" here`,
      value: value[name],
      fix: 'remove it; a quantity has "value" and "unit" only',
    });
  }
  if (!sound) return;
  const problem = quantityProblem({ value: number as number, unit: unit as string }, facts);
  if (problem !== undefined) add({ path, ...problem, value });
}

/** A quantity of a dimension as JSON text, for a fix. */
export function quantityExample(dimension: Dimension, name: string): string {
  const unit = unitSymbols(dimension)[0] ?? "";
  return `"${name}": { "value": ..., "unit": "${unit}" } in one of ${listed(unitSymbols(dimension), 20)}`;
}

function notAQuantity(value: unknown, dimension: Dimension): { message: string; fix: string } {
  const symbols = unitSymbols(dimension);
  const units = `one of ${listed(symbols, 20)}`;
  if (typeof value === "number" && Number.isFinite(value))
    return {
      message: `${value} stands without its unit`,
      fix: `write { "value": ${value}, "unit": ... } with ${units}`,
    };
  const split = typeof value === "string" ? /^\s*([+-]?[\d.]+)\s*(\S{1,12})\s*$/.exec(value) : null;
  if (split !== null && Number.isFinite(Number(split[1]))) {
    const unit = nearest(split[2]!, symbols) ?? split[2]!;
    return { message: `${shown(value)} is one text`, fix: `write { "value": ${Number(split[1])}, "unit": "${unit}" }` };
  }
  return {
    message: `${shown(value)} stands where a number with its unit is expected`,
    fix: `write { "value": ..., "unit": ... } with ${units}`,
  };
}

function unitFix(unit: unknown, symbols: readonly string[]): string {
  const choices = `use one of ${listed(symbols, 20)}`;
  const like = typeof unit === "string" ? nearest(unit, symbols) : undefined;
  return like === undefined ? choices : `did you mean "${like}"? ${choices}`;
}

/** "kinematicViscosity" as "kinematic viscosity". */
function inWords(dimension: string): string {
  return dimension.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}
