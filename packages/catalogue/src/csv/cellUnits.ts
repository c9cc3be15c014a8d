/** Kinds of quantity that a pump table holds with a unit. */
export type CellDimension = "flow" | "head" | "bore" | "power" | "temperature";

// Divisors where the SI value is value / divisor, so that 3600 L/h gives 0.001 m3/s to the last bit; exact definitions.
const usGallon = 3.785411784e-3;
const units: Record<CellDimension, Record<string, (value: number) => number>> = {
  flow: {
    "L/h": (v) => v / 3_600_000,
    "L/min": (v) => v / 60_000,
    "m3/h": (v) => v / 3600,
    "m3/s": (v) => v,
    "US gal/h": (v) => (v * usGallon) / 3600,
    "US gal/min": (v) => (v * usGallon) / 60,
  },
  head: { m: (v) => v, ft: (v) => v * 0.3048, cm: (v) => v / 100 },
  bore: { mm: (v) => v / 1000, m: (v) => v, cm: (v) => v / 100, in: (v) => v * 0.0254 },
  power: { W: (v) => v, kW: (v) => v * 1000 },
  temperature: { C: (v) => v, F: (v) => ((v - 32) * 5) / 9 },
};

/** Units that the writer uses, and the reader assumes where neither heading nor cell names one. */
export const tableUnits: Record<CellDimension, string> = {
  flow: "L/h",
  head: "m",
  bore: "mm",
  power: "W",
  temperature: "C",
};

/** Units in which every number inside the catalogue is held; temperatures in C. */
const insideUnits: Record<CellDimension, string> = {
  flow: "m3/s",
  head: "m",
  bore: "m",
  power: "W",
  temperature: "C",
};

/** Spelling of a unit as the table knows it: case, blanks and degree signs do not matter; undefined where unknown. */
export function knownUnit(text: string, dimension: CellDimension): string | undefined {
  const plain = simplify(text);
  return Object.keys(units[dimension]).find((unit) => simplify(unit) === plain);
}

/** Names of the units a quantity may have, for messages. */
export function unitNames(dimension: CellDimension): string {
  return Object.keys(units[dimension]).join(", ");
}

/** A value in a known unit as the catalogue holds it: m3/s, m, W, C. */
export function toInside(value: number, unit: string, dimension: CellDimension): number {
  return units[dimension][unit]!(value);
}

/** The shortest number in the table's unit that reads back as exactly this value; where none does, the inside unit is
 *  written with it ("0.00027777777777777783 m3/s"), so that writing and reading are exact for every number. */
export function writeQuantity(inside: number, dimension: CellDimension): string {
  if (inside === 0) return spellNumber(inside);
  const unit = tableUnits[dimension];
  const scale = toInside(1, unit, dimension);
  for (let digits = 1; digits <= 17; digits += 1) {
    const candidate = Number((inside / scale).toPrecision(digits));
    if (toInside(candidate, unit, dimension) === inside) return spellNumber(candidate);
  }
  return `${inside} ${insideUnits[dimension]}`;
}

/** A number as the shortest text that reads back to it, minus zero included; undefined gives an empty text. */
export function spellNumber(value: number | undefined): string {
  if (value === undefined) return "";
  return Object.is(value, -0) ? "-0" : String(value);
}

function simplify(text: string): string {
  return text.replace(/[\s°]/g, "").replace(/³/g, "3").replace(/^gal/i, "USgal").toLowerCase();
}
