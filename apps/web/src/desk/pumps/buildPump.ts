import type { CurvePoint, PowerPoint, PumpController, PumpRow, SpeedCurve } from "@tidewright/catalogue";
import type { Words } from "@tidewright/words";
import { type Figure, type Measure, readFigure } from "./figure.ts";
import {
  type CurveForm,
  currency,
  type FigureName,
  flowMeasure,
  headMeasure,
  measureOf,
  type PumpForm,
  speedMeasure,
  wattsMeasure,
} from "./pumpForm.ts";

/** A field whose text is no value yet: empty where one is needed, or not to be read. */
export interface Unread {
  readonly place: string;
  readonly problem: string | undefined;
}

/** Which rows of a table became which points: rows by the place of their point, from 0. */
export interface RowsOfPoints {
  readonly head: readonly number[];
  readonly power: readonly number[];
}

/** A sheet as a pump. Numbers that cannot be read are NaN, so that everything else can be judged meanwhile. */
export interface BuiltPump {
  readonly row: PumpRow;
  readonly unread: readonly Unread[];
  /** For each curve of `row` its table on the sheet, from 0, and the rows of that. */
  readonly tables: readonly { readonly table: number; readonly rows: RowsOfPoints }[];
}

/** Names of what a pump may be without. */
const optional: readonly FigureName[] = ["maximumTemperature", "bestEfficiencyFlow", "warrantyMonths"];

/** Where a cell of a curve's table stands. */
export const cellPlace = (table: number, row: number, column: "flow" | "head" | "watts"): string =>
  `curves.${table}.${row}.${column}`;

/** Returns the pump that a sheet says, as far as it can be read.
 *  form   words of the reader   -> BuiltPump [SI] */
export function buildPump(form: PumpForm, words: Words): BuiltPump {
  const unread: Unread[] = [];
  const read = (figure: Figure, measure: Measure, place: string, needed: boolean): number | undefined => {
    const reading = readFigure(figure, measure, words);
    if (reading.state === "read") return reading.value;
    if (reading.state === "wrong") unread.push({ place, problem: reading.problem });
    else if (needed) unread.push({ place, problem: undefined });
    else return undefined;
    return Number.NaN;
  };
  const figure = (name: FigureName, needed = !optional.includes(name)) =>
    read(form[name], measureOf(name, form.units), name, needed);
  const sure = (name: FigureName): number => figure(name) ?? Number.NaN;
  const text = (name: "maker" | "model" | "id") => {
    const value = form[name].trim();
    if (value === "") unread.push({ place: name, problem: undefined });
    return value;
  };

  const controllable = form.control === "controllable";
  const curves = form.curves.map((curve, table) => ({ table, ...buildCurve(curve, table, form, read) }));
  // A maker's order of speeds means nothing: full speed first, then ever slower.
  const [full, ...slower] = curves;
  const ordered = [...(full ? [full] : []), ...slower.sort((a, b) => b.curve.speedRatio - a.curve.speedRatio)];
  const controller = controllable ? controllerOf(form, (needed) => figure("controllerPrice", needed)) : undefined;
  const row: PumpRow = {
    id: text("id"),
    maker: text("maker"),
    model: text("model"),
    placements: [...form.placements],
    control: form.control,
    ...(controller === undefined ? {} : { controller }),
    minimumSpeed: controllable ? sure("minimumSpeed") : 1,
    curves: ordered.map(({ curve }) => curve),
    ratedPower: sure("ratedPower"),
    powerFactor: sure("powerFactor"),
    inletBore: sure("inletBore"),
    outletBore: sure("outletBore"),
    connection: { inlet: form.inlet.trim(), outlet: form.outlet.trim() },
    voltage: sure("voltage"),
    frequency: sure("frequency"),
    soundLevel: sure("soundLevel"),
    price: sure("price"),
    currency,
    warrantyMonths: figure("warrantyMonths") ?? 0,
    ...given("maximumTemperature", figure("maximumTemperature")),
    ...(form.externalCooling === "" ? {} : { externalCooling: form.externalCooling }),
    selfPriming: form.selfPriming,
    ...given("bestEfficiencyFlow", figure("bestEfficiencyFlow")),
    chart: form.chart,
    ...given("note", form.note.trim() || undefined),
    source: {
      title: form.sourceTitle.trim(),
      ...given("where", form.sourceWhere.trim() || undefined),
      status: form.sourceStatus,
    },
  };
  if (row.source.title === "") unread.push({ place: "sourceTitle", problem: undefined });
  return { row, unread, tables: ordered.map(({ table, rows }) => ({ table, rows })) };
}

function controllerOf(form: PumpForm, price: (needed: boolean) => number | undefined): PumpController | undefined {
  if (form.controller === "") return undefined;
  return {
    included: form.controller === "included",
    ...given("ref", form.controllerRef.trim() || undefined),
    ...given("price", price(false)),
    ...given("label", form.controllerLabel.trim() || undefined),
  };
}

type Read = (figure: Figure, measure: Measure, place: string, needed: boolean) => number | undefined;

function buildCurve(
  { speed, points: rows }: CurveForm,
  table: number,
  form: PumpForm,
  read: Read,
): { readonly curve: SpeedCurve; readonly rows: RowsOfPoints } {
  const points: CurvePoint[] = [];
  const power: PowerPoint[] = [];
  const headRows: number[] = [];
  const powerRows: number[] = [];
  rows.forEach((point, row) => {
    const filled = (figure: Figure) => figure.text.trim() !== "";
    if (!filled(point.flow) && !filled(point.head) && !filled(point.watts)) return;
    const flow = read(point.flow, flowMeasure(form.units), cellPlace(table, row, "flow"), true) ?? Number.NaN;
    // Watts alone at a flow are a point of the power curve; a flow alone still waits for its head.
    if (filled(point.head) || !filled(point.watts)) {
      const head = read(point.head, headMeasure(form.units), cellPlace(table, row, "head"), true) ?? Number.NaN;
      points.push({ flow, head });
      headRows.push(row);
    }
    if (filled(point.watts)) {
      power.push({ flow, power: read(point.watts, wattsMeasure, cellPlace(table, row, "watts"), true) ?? Number.NaN });
      powerRows.push(row);
    }
  });
  const speedRatio = table === 0 ? 1 : (read(speed, speedMeasure, `curves.${table}.speed`, true) ?? Number.NaN);
  return {
    curve: { speedRatio, points, ...(power.length > 0 ? { power } : {}) },
    rows: { head: headRows, power: powerRows },
  };
}

function given<Name extends string, Value>(
  name: Name,
  value: Value | undefined,
): { [Key in Name]?: Value } | Record<never, never> {
  return value === undefined ? {} : { [name]: value };
}
