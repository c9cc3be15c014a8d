import { type CatalogueProblem, shown } from "../catalogueProblem.ts";
import { type CellDimension, knownUnit, tableUnits, unitNames } from "./cellUnits.ts";
import type { CurveUnits } from "./curveText.ts";

/** One column of the pump table: heading as written, other headings understood, unit where it has one. */
interface Column {
  name: string;
  aliases: readonly string[];
  needed: boolean;
  /** Unit that can be converted. */
  dimension?: CellDimension;
  /** Unit that is only written behind the name. */
  suffix?: string;
  meaning: string;
}

// biome-ignore format: one column a line reads as the table it is
const columns = [
  { name: "id", aliases: ["key"], needed: true, meaning: "letters, digits, . _ -; each once" },
  { name: "maker", aliases: ["brand", "manufacturer"], needed: true, meaning: "text" },
  { name: "model", aliases: ["type", "name"], needed: true, meaning: "text" },
  { name: "placements", aliases: ["placement", "placed"], needed: true, meaning: "inSump, external, inTank joined by +" },
  { name: "control", aliases: [], needed: true, meaning: "constant or controllable" },
  { name: "minimum speed", aliases: ["min speed"], needed: false, meaning: "lowest speed ratio, 1 if left empty" },
  { name: "controller", aliases: [], needed: false, meaning: "included, separate, or empty" },
  { name: "controller ref", aliases: ["controller id"], needed: false, meaning: "id of the separately sold controller" },
  { name: "controller label", aliases: ["controller name"], needed: false, meaning: "text" },
  { name: "controller price", aliases: [], needed: false, suffix: "EUR", meaning: "price of the controller" },
  { name: "rated power", aliases: ["watts", "power"], needed: true, dimension: "power", meaning: "electrical, at full speed" },
  { name: "power factor", aliases: ["cos phi"], needed: true, meaning: "above 0, up to 1" },
  { name: "inlet bore", aliases: ["inlet diameter", "suction bore"], needed: true, dimension: "bore", meaning: "inner diameter" },
  { name: "outlet bore", aliases: ["outlet diameter"], needed: true, dimension: "bore", meaning: "inner diameter" },
  { name: "inlet connection", aliases: ["inlet"], needed: false, meaning: "text" },
  { name: "outlet connection", aliases: ["outlet"], needed: false, meaning: "text" },
  { name: "voltage", aliases: [], needed: true, suffix: "V", meaning: "supply voltage" },
  { name: "frequency", aliases: [], needed: true, suffix: "Hz", meaning: "50, 60, or 0 for direct current" },
  { name: "sound", aliases: ["sound level", "noise"], needed: true, suffix: "dB(A)", meaning: "at full speed and 1 m" },
  { name: "price", aliases: ["cost"], needed: true, suffix: "EUR", meaning: "price of the pump alone" },
  { name: "warranty", aliases: [], needed: false, suffix: "months", meaning: "0 if left empty" },
  { name: "maximum temperature", aliases: ["max temperature"], needed: false, dimension: "temperature", meaning: "of the water" },
  { name: "external cooling", aliases: ["cooling"], needed: false, meaning: "air, water, or empty" },
  { name: "self-priming", aliases: ["self priming"], needed: false, meaning: "yes or no, no if left empty" },
  { name: "best efficiency flow", aliases: ["bep flow"], needed: false, dimension: "flow", meaning: "flow at best efficiency" },
  { name: "chart", aliases: [], needed: false, meaning: "points (printed, the default) or reading (off a picture)" },
  { name: "note", aliases: ["remark"], needed: false, meaning: "text" },
  { name: "source", aliases: ["source title"], needed: false, meaning: "where the row comes from" },
  { name: "source where", aliases: [], needed: false, meaning: "page or table" },
  { name: "source status", aliases: [], needed: false, meaning: "published, common practice, from memory, or invented" },
] as const satisfies readonly Column[];

/** Name of a column that is not a curve. */
export type ColumnName = (typeof columns)[number]["name"];

/** Every plain column of the pump table in the order they are written. */
export const pumpColumns: readonly (Column & { name: ColumnName })[] = columns;

/** A recognised heading: a plain column with the unit of its cells, or a curve of one speed ratio. */
export type Heading =
  | { kind: "plain"; index: number; text: string; name: ColumnName; unit: string }
  | { kind: "curve"; index: number; text: string; what: "head" | "power"; speedRatio: number; units: CurveUnits };

/** Heading as the writer spells it: name and unit. */
export function headingText(column: Column): string {
  const unit = column.dimension === undefined ? column.suffix : tableUnits[column.dimension];
  return unit === undefined ? column.name : `${column.name} ${unit}`;
}

/** Recognises the headings of a table and lists what is unknown, doubled or missing. */
export function readHeadings(cells: readonly string[]): { headings: Heading[]; problems: CatalogueProblem[] } {
  const headings: Heading[] = [];
  const problems: CatalogueProblem[] = [];
  const seen = new Map<string, string>();
  const complain = (column: string, problem: string, fix: string, severity: "error" | "doubt" = "error") => {
    const text = shown(column);
    problems.push({ list: "pumps", row: 1, id: "", column: text, value: text, problem, fix, severity });
  };

  cells.forEach((text, index) => {
    if (text === "") return;
    const found = recognise(text, index);
    if (found === undefined) {
      complain(text, "is no column of the pump table and is passed over", "rename or remove the column", "doubt");
    } else if (typeof found === "string") {
      complain(text, found, "write the unit in brackets behind the name, as in curve 1.00 (L/h@m)");
    } else {
      const key = found.kind === "plain" ? found.name : `${found.what} ${found.speedRatio}`;
      const first = seen.get(key);
      if (first !== undefined) complain(text, `means the same as the column "${shown(first)}"`, "keep one of the two");
      else {
        seen.set(key, text);
        headings.push(found);
      }
    }
  });
  for (const column of pumpColumns) {
    if (column.needed && !seen.has(column.name)) {
      complain(column.name, "the column is missing", `add a column "${headingText(column)}": ${column.meaning}`);
    }
  }
  if (!seen.has("head 1")) {
    complain("curve 1.00", "the column is missing", 'add a column "curve 1.00 (L/h@m)" with points 0@4.1;1000@3.9');
  }
  return { headings, problems };
}

const curveHeading = /^(curve|power)\s+(\d*[.,]?\d+)\s*(%?)\s*(?:[([]\s*([^@]*)@([^@]*?)\s*[)\]])?$/i;

function recognise(text: string, index: number): Heading | string | undefined {
  const curve = curveHeading.exec(text);
  if (curve !== null) {
    const what = curve[1]!.toLowerCase() === "curve" ? "head" : "power";
    const speedRatio = Number(curve[2]!.replace(",", ".")) / (curve[3] === "%" ? 100 : 1);
    const flow = knownUnit(curve[4] ?? tableUnits.flow, "flow");
    const other = knownUnit(curve[5] ?? tableUnits[what], what);
    if (flow === undefined) return `has an unknown unit of flow; known are ${unitNames("flow")}`;
    if (other === undefined) return `has an unknown unit of ${what}; known are ${unitNames(what)}`;
    return { kind: "curve", index, text: shown(text), what, speedRatio, units: { flow, other, dimension: what } };
  }
  const plain = text.toLowerCase().replace(/[_\s]+/g, " ");
  const match = longestName(plain);
  if (match === undefined) return undefined;
  const { column, rest } = match;
  const unit = rest.replace(/^[([]\s*(.*?)\s*[)\]]$/, "$1");
  const heading = { kind: "plain", index, text: shown(text), name: column.name } as const;
  if (column.dimension !== undefined) {
    const known = unit === "" ? tableUnits[column.dimension] : knownUnit(unit, column.dimension);
    if (known === undefined)
      return `has an unknown unit of ${column.dimension}; known are ${unitNames(column.dimension)}`;
    return { ...heading, unit: known };
  }
  if (unit === "" || unit === column.suffix?.toLowerCase()) return { ...heading, unit: column.suffix ?? "" };
  return column.suffix === undefined ? undefined : `has an unknown unit; known is ${column.suffix}`;
}

// The longest name wins: "controller price EUR" is not a controller, "source where" is not a source.
function longestName(text: string): { column: Column & { name: ColumnName }; rest: string } | undefined {
  let best: { column: Column & { name: ColumnName }; rest: string; length: number } | undefined;
  for (const column of pumpColumns) {
    for (const name of [column.name, ...column.aliases]) {
      if (!text.startsWith(name) || (best !== undefined && best.length >= name.length)) continue;
      const rest = text.slice(name.length);
      if (rest === "" || /^[\s([]/.test(rest)) best = { column, rest: rest.trim(), length: name.length };
    }
  }
  return best;
}
