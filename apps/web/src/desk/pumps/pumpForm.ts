import type { Placement, PumpRow } from "@tidewright/catalogue";
import { unitsOf } from "@tidewright/units";
import type { Words } from "@tidewright/words";
import { decimalSign } from "../../format/decimalSign.ts";
import type { ScreenFormat } from "../../format/useFormat.ts";
import { emptyFigure, type Figure, figureOf, type Measure, readFigure } from "./figure.ts";

/** Units that a sheet's bare numbers are in; the reader's own at first. */
export interface FormUnits {
  readonly flow: string;
  readonly head: string;
  readonly bore: string;
  readonly temperature: string;
}

/** One row of a curve's table: head and watts at a flow, either of them possibly empty. */
export interface PointForm {
  readonly key: string;
  readonly flow: Figure;
  readonly head: Figure;
  readonly watts: Figure;
}

/** The table of one speed; the first one of a sheet is full speed. */
export interface CurveForm {
  readonly key: string;
  readonly speed: Figure;
  readonly points: readonly PointForm[];
}

/** Fields of a sheet that hold one number. */
export type FigureName =
  | "minimumSpeed"
  | "controllerPrice"
  | "ratedPower"
  | "powerFactor"
  | "voltage"
  | "frequency"
  | "inletBore"
  | "outletBore"
  | "bestEfficiencyFlow"
  | "soundLevel"
  | "price"
  | "warrantyMonths"
  | "maximumTemperature";

/** Fields of a sheet that hold a text. */
export type TextName =
  | "id"
  | "maker"
  | "model"
  | "controllerRef"
  | "controllerLabel"
  | "inlet"
  | "outlet"
  | "note"
  | "sourceTitle"
  | "sourceWhere";

/** A pump as it stands on its data sheet: texts as they were typed, so that nothing is lost where one is no number yet. */
export interface PumpForm extends Readonly<Record<FigureName, Figure>>, Readonly<Record<TextName, string>> {
  readonly units: FormUnits;
  readonly placements: readonly Placement[];
  readonly externalCooling: "" | "air" | "water";
  readonly selfPriming: boolean;
  readonly control: PumpRow["control"];
  readonly controller: "" | "included" | "separate";
  readonly curves: readonly CurveForm[];
  readonly chart: PumpRow["chart"];
  readonly sourceStatus: PumpRow["source"]["status"];
}

/** The currency of the catalogue. */
export const currency = "EUR";
/** Lengths that a bore is written in. */
const boreUnits = ["mm", "cm", "m", "in"];

/** Returns the units that a new sheet begins with. */
export function unitsFor(format: ScreenFormat): FormUnits {
  const length = format.unitOf("length");
  const known = (dimension: "flow" | "head") => {
    const unit = format.unitOf(dimension);
    return unitsOf(dimension).some(({ symbol }) => symbol === unit) && unit !== "ft-in"
      ? unit
      : dimension === "flow"
        ? "L/h"
        : "m";
  };
  return {
    flow: known("flow"),
    head: known("head"),
    bore: boreUnits.includes(length) ? length : "mm",
    temperature: format.unitOf("temperature"),
  };
}

/** Returns what the numbers of a field are in. */
export function measureOf(name: FigureName, units: FormUnits): Measure {
  switch (name) {
    case "minimumSpeed":
      return speedMeasure;
    case "controllerPrice":
    case "price":
      return { dimension: "money", unit: currency };
    case "ratedPower":
      return wattsMeasure;
    case "voltage":
      return { dimension: "voltage", unit: "V" };
    case "frequency":
      return { dimension: "frequency", unit: "Hz" };
    case "inletBore":
    case "outletBore":
      return { dimension: "length", unit: units.bore };
    case "bestEfficiencyFlow":
      return { dimension: "flow", unit: units.flow };
    case "soundLevel":
      return { dimension: "soundLevel", unit: "dB(A)" };
    case "maximumTemperature":
      return { dimension: "temperature", unit: units.temperature };
    case "powerFactor":
    case "warrantyMonths":
      return { dimension: "ratio", unit: "1" };
  }
}

export const wattsMeasure: Measure = { dimension: "power", unit: "W" };
export const speedMeasure: Measure = { dimension: "speedFraction", unit: "%" };
export const flowMeasure = (units: FormUnits): Measure => ({ dimension: "flow", unit: units.flow });
export const headMeasure = (units: FormUnits): Measure => ({ dimension: "head", unit: units.head });

let made = 0;
/** A name for a row of the sheet, so that it keeps its place while others come and go. */
export function newKey(): string {
  made += 1;
  return `${Date.now().toString(36)}-${made}`;
}

export const emptyPoint = (): PointForm => ({
  key: newKey(),
  flow: emptyFigure,
  head: emptyFigure,
  watts: emptyFigure,
});

/** Returns a sheet on which nothing is written yet: four empty rows invite to the curve. */
export function emptyForm(units: FormUnits): PumpForm {
  return {
    units,
    id: "",
    maker: "",
    model: "",
    placements: [],
    externalCooling: "",
    selfPriming: false,
    control: "constant",
    controller: "",
    controllerRef: "",
    controllerLabel: "",
    controllerPrice: emptyFigure,
    minimumSpeed: emptyFigure,
    ratedPower: emptyFigure,
    powerFactor: emptyFigure,
    voltage: emptyFigure,
    frequency: emptyFigure,
    inletBore: emptyFigure,
    outletBore: emptyFigure,
    inlet: "",
    outlet: "",
    curves: [{ key: newKey(), speed: figureOf(1, speedMeasure, "."), points: Array.from({ length: 4 }, emptyPoint) }],
    bestEfficiencyFlow: emptyFigure,
    soundLevel: emptyFigure,
    price: emptyFigure,
    warrantyMonths: emptyFigure,
    maximumTemperature: emptyFigure,
    chart: "points",
    note: "",
    sourceTitle: "",
    sourceWhere: "",
    sourceStatus: "published",
  };
}

/** Returns a pump as its data sheet shows it. Head and watts of one speed share a table; where the maker gives them at
 *  different flows, a row has one of them only.
 *  pump   units of the sheet   words of the reader   -> PumpForm, which `buildPump` makes the very same pump of */
export function formOf(pump: PumpRow, units: FormUnits, words: Words): PumpForm {
  const sign = decimalSign(words.language);
  const figure = (name: FigureName, value: number | undefined) => figureOf(value, measureOf(name, units), sign);
  const names = [
    "minimumSpeed",
    "ratedPower",
    "powerFactor",
    "voltage",
    "frequency",
    "inletBore",
    "outletBore",
    "bestEfficiencyFlow",
    "soundLevel",
    "price",
    "warrantyMonths",
    "maximumTemperature",
  ] as const;
  const figures = Object.fromEntries(names.map((name) => [name, figure(name, pump[name])])) as Record<
    (typeof names)[number],
    Figure
  >;
  return {
    ...figures,
    units,
    id: pump.id,
    maker: pump.maker,
    model: pump.model,
    placements: pump.placements,
    externalCooling: pump.externalCooling ?? "",
    selfPriming: pump.selfPriming,
    control: pump.control,
    controller: pump.controller === undefined ? "" : pump.controller.included ? "included" : "separate",
    controllerRef: pump.controller?.ref ?? "",
    controllerLabel: pump.controller?.label ?? "",
    controllerPrice: figure("controllerPrice", pump.controller?.price),
    inlet: pump.connection.inlet,
    outlet: pump.connection.outlet,
    curves: pump.curves.map(({ speedRatio, points, power }) => ({
      key: newKey(),
      speed: figureOf(speedRatio, speedMeasure, sign),
      points: joined(points, power ?? []).map(({ flow, head, watts }) => ({
        key: newKey(),
        flow: figureOf(flow, flowMeasure(units), sign),
        head: figureOf(head, headMeasure(units), sign),
        watts: figureOf(watts, wattsMeasure, sign),
      })),
    })),
    chart: pump.chart,
    note: pump.note ?? "",
    sourceTitle: pump.source.title,
    sourceWhere: pump.source.where ?? "",
    sourceStatus: pump.source.status,
  };
}

interface JoinedPoint {
  readonly flow: number;
  readonly head?: number;
  readonly watts?: number;
}

/** Both curves' points by flow; a point of each at the very same flow shares a row. */
function joined(
  heads: readonly { readonly flow: number; readonly head: number }[],
  powers: readonly { readonly flow: number; readonly power: number }[],
): JoinedPoint[] {
  const rows: JoinedPoint[] = heads.map(({ flow, head }) => ({ flow, head }));
  for (const { flow, power } of powers) {
    const at = rows.findIndex((row) => row.flow === flow && row.watts === undefined);
    if (at >= 0) rows[at] = { ...rows[at]!, watts: power };
    else {
      const after = rows.findIndex((row) => row.flow > flow);
      rows.splice(after < 0 ? rows.length : after, 0, { flow, watts: power });
    }
  }
  return rows;
}

/** Returns the same sheet with its numbers in other units; what is no number stays as it was typed.
 *  form   units   words of the reader   -> PumpForm that stands for the same pump */
export function inUnits(form: PumpForm, units: FormUnits, words: Words): PumpForm {
  const sign = decimalSign(words.language);
  const turn = (figure: Figure, from: Measure, to: Measure): Figure => {
    if (from.unit === to.unit) return figure;
    const reading = readFigure(figure, from, words);
    return reading.state === "read" ? figureOf(reading.value, to, sign) : figure;
  };
  const named = (name: FigureName) => turn(form[name], measureOf(name, form.units), measureOf(name, units));
  return {
    ...form,
    units,
    inletBore: named("inletBore"),
    outletBore: named("outletBore"),
    bestEfficiencyFlow: named("bestEfficiencyFlow"),
    maximumTemperature: named("maximumTemperature"),
    curves: form.curves.map((curve) => ({
      ...curve,
      points: curve.points.map((point) => ({
        ...point,
        flow: turn(point.flow, flowMeasure(form.units), flowMeasure(units)),
        head: turn(point.head, headMeasure(form.units), headMeasure(units)),
      })),
    })),
  };
}

/** Returns whether two sheets say the same; keys of rows do not count. */
export function sameForm(a: PumpForm, b: PumpForm): boolean {
  return written(a) === written(b);
}

const written = (form: PumpForm): string =>
  JSON.stringify(form, (name, value: unknown) => (name === "key" || name === "kept" ? undefined : value));

/** Returns a short name for a new pump out of maker and model.
 *  Example: shortName("Ferrow & Söhne", "C 40")  ->  "ferrow-sohne-c-40" */
export function shortName(maker: string, model: string): string {
  return `${maker} ${model}`
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .replace(/ß/g, "ss")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 60);
}
