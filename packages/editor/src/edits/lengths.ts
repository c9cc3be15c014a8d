import { fromSI, type Quantity } from "@tidewright/units";

/** Returns a length measured off the drawing as a person would write it: to 5 mm or 1/4 in, in the design's unit.
 *  metres length [m]   unit of lengths in the design   -> quantity
 *  Example: typedLength(0.3021, "mm")  ->  {"value": 300, "unit": "mm"}
 *  Example: typedLength(0.3021, "in")  ->  {"value": 12, "unit": "in"} */
export function typedLength(metres: number, unit: string): Quantity {
  const step = steps[unit] ?? 0.005;
  const own = steps[unit] === undefined ? "m" : unit;
  return { value: Number((Math.round(fromSI(metres, own, "length") / step) * step).toFixed(6)) + 0, unit: own };
}

const steps: Readonly<Record<string, number>> = { mm: 5, cm: 0.5, m: 0.005, in: 0.25, ft: 0.02 };
