import type { Format } from "@tidewright/editor";
import { siUnit, unitsOf } from "@tidewright/units";

/** Returns the unit that a format writes a dimension in, so that an axis can carry round numbers of it.
 *  format the user's units   dimension flow or head   -> unit symbol; the SI unit where the format's is not known
 *  Findings: none. Throws: never.
 *  Valid: formats that end in the unit's label.
 *  Source: own construction. */
export function unitOfFormat(format: Format, dimension: "flow" | "head"): string {
  const text = format(1, dimension);
  const known = unitsOf(dimension)
    .filter(({ label }) => label !== "" && text.endsWith(label))
    // "US gal/h" ends in "gal/h" as well: the longest label is meant.
    .sort((a, b) => b.label.length - a.label.length);
  return known[0]?.symbol ?? siUnit[dimension];
}
