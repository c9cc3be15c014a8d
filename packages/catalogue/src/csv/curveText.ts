import { type Read, readQuantity } from "./cells.ts";
import { type CellDimension, writeQuantity } from "./cellUnits.ts";

/** A pair of numbers of one curve point, in the catalogue's units: flow first. */
export type Pair = [flow: number, other: number];

/** Units of a curve column as its heading names them. */
export interface CurveUnits {
  flow: string;
  other: string;
  dimension: CellDimension;
}

/** Reads "0@4.1;1000@3.9;…" into pairs; points are parted by semicolons, bars or line ends. */
export function readCurve(text: string, units: CurveUnits, commaIsDecimal: boolean): Read<Pair[]> {
  const pairs: Pair[] = [];
  const pieces = text.split(/[;|\n]/);
  for (let index = 0; index < pieces.length; index += 1) {
    const piece = pieces[index]!.trim();
    if (piece === "") continue;
    const place = `point ${index + 1} "${piece.slice(0, 40)}"`;
    const halves = piece.split("@");
    if (halves.length !== 2) {
      return { ok: false, problem: `${place} is not of the form flow@value`, fix: "write points as 0@4.1;1000@3.9" };
    }
    const flow = readQuantity(halves[0]!.trim(), "flow", units.flow, commaIsDecimal);
    if (!flow.ok) return { ok: false, problem: `the flow of ${place} ${flow.problem}`, fix: flow.fix };
    const other = readQuantity(halves[1]!.trim(), units.dimension, units.other, commaIsDecimal);
    if (!other.ok) return { ok: false, problem: `the ${units.dimension} of ${place} ${other.problem}`, fix: other.fix };
    pairs.push([flow.value, other.value]);
  }
  return { ok: true, value: pairs };
}

/** Writes pairs as "0@4.1;1000@3.9", in L/h and the table's unit, so that they read back exactly. */
export function writeCurve(pairs: readonly Pair[], dimension: CellDimension): string {
  return pairs.map(([flow, other]) => `${writeQuantity(flow, "flow")}@${writeQuantity(other, dimension)}`).join(";");
}
