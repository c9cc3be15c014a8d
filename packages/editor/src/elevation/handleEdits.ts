import { toSI } from "@tidewright/units";
import type { DragTarget, LineHandle } from "./scene.ts";

/** An edit of the design as the history takes it. */
export interface SetEdit {
  readonly op: "set";
  readonly path: string;
  readonly value: number | Amount | { readonly yaw: Amount; readonly pitch: Amount };
}

interface Amount {
  readonly value: number;
  readonly unit: string;
}

/** Steps that a hand sets in each unit; what is dragged lands on them. */
const steps: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 0.1,
  m: 0.001,
  in: 0.125,
  ft: 0.01,
};

/** Returns the step to which a dragged value is rounded: 1 mm, 1 mm in centimetres and metres, 1/8 in, 0.01 ft, 1 % of speed.
 *  unit of the quantity, none for a share   -> step in that unit
 *  Findings: none. Throws: never.
 *  Valid: any unit of length; others are rounded to a thousandth.
 *  Source: common practice, no source.
 *  Example: stepOf("mm")  ->  1 */
function stepOf(unit: string | undefined): number {
  return unit === undefined ? 0.01 : (steps[unit] ?? 0.001);
}

/** Returns the edits for a handle moved from where it was taken: metres along its axis, or a share of speed.
 *  handle as it was when taken   by way moved along the axis [m, or a share]   -> one edit for each of its targets
 *  Findings: none. Throws: never.
 *  Valid: any move; the first value stays within the handle's bounds and the rest follow it.
 *  Source: own construction. */
export function editsFor(handle: LineHandle, by: number): SetEdit[] {
  const [first] = handle.targets;
  const start = inSI(first, first.value);
  const wished = Math.min(handle.max, Math.max(handle.min, start + first.sign * by));
  const moved = (rounded(first, fromSI(first, wished)) - first.value) * scaleOf(first) * first.sign;
  return handle.targets.map((target, i) => {
    const si = inSI(target, target.value) + target.sign * moved;
    const value = i === 0 ? rounded(target, fromSI(target, wished)) : tidy(fromSI(target, si));
    return { op: "set", path: target.path, value: target.unit === undefined ? value : { value, unit: target.unit } };
  });
}

/** Returns how far one press of an arrow key moves a handle: 5 mm, 1/4 in, or 1 % of speed; ten times that with Shift.
 *  handle which one   large with Shift held   -> way [m, or a share]
 *  Findings: none. Throws: never.
 *  Valid: any handle.
 *  Source: common practice, no source. */
export function nudgeOf(handle: LineHandle, large: boolean): number {
  const [first] = handle.targets;
  const small = first.unit === undefined ? 0.01 : first.unit === "in" || first.unit === "ft" ? 0.00635 : 0.005;
  return large ? small * 10 : small;
}

const scaleOf = (target: DragTarget): number =>
  target.unit === undefined ? 1 : toSI({ value: 1, unit: target.unit }, "length");

const inSI = (target: DragTarget, value: number): number => value * scaleOf(target);
const fromSI = (target: DragTarget, si: number): number => si / scaleOf(target);

function rounded(target: DragTarget, value: number): number {
  const step = stepOf(target.unit);
  return tidy(Math.round(value / step) * step);
}

/** Binary dust from the rounding is no part of what a person would type. */
const tidy = (value: number): number => Number(value.toFixed(6));
