import { toSI } from "@tidewright/units";

/** What a moved place is rounded to [m]. Source: common practice, no source. */
export const placeStep = 0.005;
/** What a turned aim is rounded to [deg]. Source: common practice, no source. */
export const turnStep = 5;

/** Returns a place to the step of its unit, as a person would type it: 5 mm, 1/8 in, 0.01 ft.
 *  si length [m]   unit in which the document has it   -> quantity
 *  Findings: none. Throws: where the unit is no length.
 *  Valid: every length unit of the units package.
 *  Source: common practice, no source.
 *  Example: typedPlace(0.3018, "mm")  ->  {"value": 300, "unit": "mm"} */
export function typedPlace(si: number, unit: string): { value: number; unit: string } {
  const factor = toSI({ value: 1, unit }, "length");
  const step = unit === "in" || unit === "ft" ? (unit === "in" ? 0.125 : 0.01) : placeStep / factor;
  return { value: Number((Math.round(si / factor / step) * step).toFixed(6)) || 0, unit };
}
