import { type CatalogueProblem, shown } from "../catalogueProblem.ts";
import type { PumpController, PumpRow, SpeedCurve } from "../pumps/pump.ts";
import type { Source } from "../source.ts";
import { type Read, readNumber, readOneOf, readPlacements, readQuantity, readYesNo } from "./cells.ts";
import type { CellDimension } from "./cellUnits.ts";
import { readCurve } from "./curveText.ts";
import { type ColumnName, type Heading, pumpColumns } from "./pumpColumns.ts";

const needed = new Set(pumpColumns.filter((column) => column.needed).map((column) => column.name));

/** Builds a pump from the cells of one row. The pump is absent where any cell cannot be read; whether its numbers make
 *  sense is for `checkPump`. */
export function readPumpRow(
  row: number,
  cells: readonly string[],
  width: number,
  headings: readonly Heading[],
  commaIsDecimal: boolean,
): { pump?: PumpRow; problems: CatalogueProblem[] } {
  const problems: CatalogueProblem[] = [];
  const plain = new Map<ColumnName, { text: string; heading: Heading & { kind: "plain" } }>();
  for (const heading of headings) {
    if (heading.kind === "plain") plain.set(heading.name, { text: (cells[heading.index] ?? "").trim(), heading });
  }
  const id = shown(plain.get("id")?.text ?? "");
  const complain = (column: string, value: string, problem: string, fix: string) => {
    problems.push({
      list: "pumps",
      row,
      id,
      column,
      value: shown(value),
      problem,
      fix,
      severity: "error",
    });
  };
  let complete = true;
  // Empty cells of a row are told together: a stray row would otherwise give a dozen lines.
  const empty: string[] = [];

  // One reader for all plain cells: empty cells give undefined, and a problem where the column is needed.
  function cell<Value>(name: ColumnName, read: (text: string, unit: string) => Read<Value>): Value | undefined {
    const found = plain.get(name);
    if (found === undefined || found.text === "") {
      if (needed.has(name)) {
        complete = false;
        if (found !== undefined) empty.push(found.heading.text);
      }
      return undefined;
    }
    const result = read(found.text, found.heading.unit);
    if (result.ok) return result.value;
    complete = false;
    complain(found.heading.text, found.text, result.problem, result.fix);
    return undefined;
  }
  const text = (name: ColumnName) => cell<string>(name, (value) => ({ ok: true, value }));
  const number = (name: ColumnName) => cell(name, (value) => readNumber(value, commaIsDecimal));
  const quantity = (name: ColumnName, dimension: CellDimension) =>
    cell(name, (value, unit) => readQuantity(value, dimension, unit, commaIsDecimal));
  const word = <Word extends string>(name: ColumnName, words: readonly Word[]) =>
    cell(name, (value) => readOneOf(value, words));

  if (cells.slice(width).some((extra) => extra.trim() !== "")) {
    complete = false;
    const extra = cells.slice(width).join(" ");
    complain("", extra, "the row has more cells than the heading", "put cells that hold the delimiter between quotes");
  }

  const fields = {
    id: text("id"),
    maker: text("maker"),
    model: text("model"),
    placements: cell("placements", readPlacements),
    control: word("control", ["constant", "controllable"]),
    minimumSpeed: number("minimum speed") ?? 1,
    ratedPower: quantity("rated power", "power"),
    powerFactor: number("power factor"),
    inletBore: quantity("inlet bore", "bore"),
    outletBore: quantity("outlet bore", "bore"),
    connection: { inlet: text("inlet connection") ?? "", outlet: text("outlet connection") ?? "" },
    voltage: number("voltage"),
    frequency: number("frequency"),
    soundLevel: number("sound"),
    price: number("price"),
    currency: "EUR" as const,
    warrantyMonths: number("warranty") ?? 0,
    selfPriming: cell("self-priming", readYesNo) ?? false,
    chart: word("chart", ["points", "reading"]) ?? "points",
  };
  const optional = {
    controller: readController(),
    maximumTemperature: quantity("maximum temperature", "temperature"),
    externalCooling: word("external cooling", ["air", "water"]),
    bestEfficiencyFlow: quantity("best efficiency flow", "flow"),
    note: text("note"),
  };
  const source = readSource();
  const curves = readCurves();
  if (empty.length > 0) {
    const cellsAre = empty.length === 1 ? "the cell is empty" : "the cells are empty";
    complain(empty.join(", "), "", cellsAre, "fill them in: every pump needs them");
  }
  if (!complete) return { problems };
  // `complete` means that no needed field is undefined.
  const pump = { ...(fields as Required<typeof fields>), ...present(optional), curves, source } as PumpRow;
  return { pump, problems };

  function readController(): PumpController | undefined {
    const kind = word("controller", ["included", "separate"]);
    const rest = { ref: text("controller ref"), label: text("controller label"), price: number("controller price") };
    if (kind !== undefined) return { included: kind === "included", ...present(rest) };
    const unreadable = plain.get("controller")?.text;
    if (!unreadable && Object.values(rest).some((value) => value !== undefined)) {
      complete = false;
      complain(
        "controller",
        "",
        "a controller is described but not said to be included or separate",
        "write included or separate",
      );
    }
    return undefined;
  }

  function readSource(): Source {
    const status = word("source status", ["published", "common practice", "from memory", "invented"] as const);
    const where = text("source where");
    const unnamed = status === "invented" ? "Invented" : "Pump table without a stated source";
    return { title: text("source") ?? unnamed, ...present({ where }), status: status ?? "from memory" };
  }

  function readCurves(): SpeedCurve[] {
    const bySpeed = new Map<number, SpeedCurve>();
    const powers: { speedRatio: number; heading: string; text: string; power: { flow: number; power: number }[] }[] =
      [];
    for (const heading of headings) {
      if (heading.kind !== "curve") continue;
      const raw = (cells[heading.index] ?? "").trim();
      if (raw === "") {
        if (heading.what !== "head" || heading.speedRatio !== 1) continue;
        complete = false;
        empty.push(heading.text);
        continue;
      }
      const curve = readCurve(raw, heading.units, commaIsDecimal);
      if (!curve.ok) {
        complete = false;
        complain(heading.text, raw, curve.problem, curve.fix);
      } else if (heading.what === "head") {
        const points = curve.value.map(([flow, head]) => ({ flow, head }));
        bySpeed.set(heading.speedRatio, { speedRatio: heading.speedRatio, points });
      } else {
        const power = curve.value.map(([flow, watts]) => ({ flow, power: watts }));
        powers.push({ speedRatio: heading.speedRatio, heading: heading.text, text: raw, power });
      }
    }
    for (const { speedRatio, heading, text: raw, power } of powers) {
      const curve = bySpeed.get(speedRatio);
      if (curve !== undefined) curve.power = power;
      else if (complete) {
        complete = false;
        complain(heading, raw, "there is no head curve at this speed", `add the column "curve ${speedRatio} (L/h@m)"`);
      }
    }
    if (!bySpeed.has(1)) complete = false;
    return [...bySpeed.values()].sort((a, b) => b.speedRatio - a.speedRatio);
  }
}

type Present<Fields> = { [Key in keyof Fields]?: Exclude<Fields[Key], undefined> };

function present<Fields extends object>(fields: Fields): Present<Fields> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as Present<Fields>;
}
