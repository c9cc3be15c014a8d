import { type CatalogueProblem, checkPump, type PumpRow } from "@tidewright/catalogue";
import { type MessageKey, sayAgain, type Words } from "@tidewright/words";
import type { ScreenFormat } from "../../format/useFormat.ts";
import { type BuiltPump, buildPump, cellPlace } from "./buildPump.ts";
import type { PumpForm } from "./pumpForm.ts";

/** One thing to know about a field of a sheet. "missing" is an error that nobody has made yet: the field is empty. */
export interface FieldProblem {
  /** Name of the field; in a curve's table "curves.0", "curves.0.speed" or "curves.0.2.head". */
  readonly place: string;
  readonly severity: "missing" | "error" | "doubt";
  readonly text: string;
}

/** What a shop's outlets give, as far as the program takes it: after the chosen units. */
export interface Mains {
  readonly voltage: number;
  readonly frequency: number;
}

/** What a sheet is judged by besides itself. */
export interface Setting {
  readonly words: Words;
  readonly format: ScreenFormat;
  readonly mains: Mains;
  /** Whose pump has a short name already, other than this one. */
  taken(id: string): "own" | "program" | undefined;
}

/** A sheet with everything there is to say about it. */
export interface JudgedPump extends BuiltPump {
  readonly problems: readonly FieldProblem[];
}

/** The field that a column of the pump table stands for. */
const placeOfColumn: Readonly<Record<string, string>> = {
  id: "id",
  maker: "maker",
  model: "model",
  placements: "placements",
  "external cooling": "externalCooling",
  "rated power": "ratedPower",
  "power factor": "powerFactor",
  "inlet bore": "inletBore",
  "outlet bore": "outletBore",
  voltage: "voltage",
  frequency: "frequency",
  sound: "soundLevel",
  price: "price",
  warranty: "warrantyMonths",
  "maximum temperature": "maximumTemperature",
  "minimum speed": "minimumSpeed",
  controller: "controller",
  "controller price": "controllerPrice",
  control: "control",
  "best efficiency flow": "bestEfficiencyFlow",
};

/** On a sheet some problems are mended otherwise than in a table. */
const mendedHere: Readonly<Record<string, MessageKey>> = {
  "add the point 0@…": "pumps.mend.shutOff",
  "give points at full speed, as in 0@4.1;1000@3.9": "pumps.mend.points",
  "add the shut-off head and a second point": "pumps.mend.points",
  "join inSump, external, inTank by +": "pumps.mend.place",
  "write included, or separate with a ref and a price": "pumps.mend.controller",
  "fill in controller ref and controller price": "pumps.mend.separate",
  "write controllable": "pumps.mend.oneSpeed",
  "give the lowest speed over the full speed": "pumps.mend.lowest",
  "sort curves by falling speed": "pumps.mend.speedOrder",
  "divide each speed by the full speed": "pumps.mend.speedRange",
};

/** Returns all that is wrong or doubtful on a sheet, at its fields: what cannot be read, what the catalogue's own check
 *  finds, and what only this shop can know.
 *  form   setting   -> JudgedPump; empty fields that are needed have severity "missing" */
export function judgePump(form: PumpForm, setting: Setting): JudgedPump {
  const { words } = setting;
  const built = buildPump(form, words);
  const unread = new Set(built.unread.map(({ place }) => place));
  const problems: FieldProblem[] = built.unread.map(({ place, problem }) =>
    problem === undefined
      ? { place, severity: "missing", text: words.say("pumps.fillIn") }
      : { place, severity: "error", text: problem },
  );
  for (const found of checkPump(built.row, 1))
    for (const place of placesOf(found, built)) {
      if (covered(place, unread)) continue;
      const severity = isUntouched(place, built.row) ? "missing" : found.severity;
      problems.push({ place, severity, text: sentenceOf(found, setting) });
    }
  return { ...built, problems: [...problems, ...ofThisShop(built.row, setting)] };
}

/** What nobody has begun on is not wrong yet. */
function isUntouched(place: string, { placements, controller, curves }: PumpRow): boolean {
  if (place === "placements") return placements.length === 0;
  if (place === "controller") return controller === undefined;
  return place === "curves.0" && curves[0]?.points.length === 0;
}

/** A cell that cannot be read says so itself; what the check makes of it would only repeat that. */
function covered(place: string, unread: ReadonlySet<string>): boolean {
  if (unread.has(place)) return true;
  const cell = /^curves\.(\d+)\.(\d+)\./.exec(place);
  return (
    cell !== null &&
    (["flow", "head", "watts"] as const).some((column) =>
      unread.has(cellPlace(Number(cell[1]), Number(cell[2]), column)),
    )
  );
}

/** Where a problem of the check stands on the sheet; a curve's name may mean two tables of the same speed. */
function placesOf({ column, value, problem }: CatalogueProblem, { row, tables }: BuiltPump): string[] {
  const curve = /^(curve|power) (\d.*|NaN)$/.exec(column);
  if (curve === null) return [placeOfColumn[column] ?? "id"];
  const named = tables.flatMap(({ table, rows }, index) => {
    const ratio = row.curves[index]?.speedRatio ?? Number.NaN;
    const name = Number.isFinite(ratio) ? ratio.toFixed(2) : String(ratio);
    return name === curve[2] ? [{ table, rows }] : [];
  });
  // Without any curve at all the check names full speed.
  if (named.length === 0) return ["curves.0"];
  const point = /^point (\d+): /.exec(value);
  return named.map(({ table, rows }) => {
    if (point === null) return /speed ratio/.test(problem) && table > 0 ? `curves.${table}.speed` : `curves.${table}`;
    const power = curve[1] === "power";
    const at = (power ? rows.power : rows.head)[Number(point[1]) - 1];
    if (at === undefined) return `curves.${table}`;
    return cellPlace(table, at, power ? "watts" : /flow/.test(problem) ? "flow" : "head");
  });
}

/** Predicates such as "is not above zero" want a subject. */
const predicate = /^(is|has|holds|names|says|does) /;

/** What is wrong and what mends it, with flows and heads in the reader's units. */
function sentenceOf(found: CatalogueProblem, { words, format }: Setting): string {
  const here = mendedHere[found.fix];
  const again = (text: string) => sayAgain(readable(text, format), words, "pumpProblems");
  if (found.problem === "says nowhere to put the pump") return `${capital(words.say("pumps.mend.place"))}.`;
  const problem = again(found.problem);
  const said = predicate.test(found.problem)
    ? `${found.value.trim() === "" ? words.say("pumps.this") : words.decimal(found.value)} ${problem}`
    : / W of water from /.test(found.value)
      ? `${problem} (${again(found.value)})`
      : problem;
  return `${capital(said)}. ${capital(here === undefined ? again(found.fix) : words.say(here))}.`;
}

/** The check speaks in litres an hour. */
function readable(text: string, format: ScreenFormat): string {
  return text.replace(/(-?[\d.]+(?:e[+-]?\d+)?) L\/h/g, (_, litres: string) => {
    const flow = format(Number(litres) / 3_600_000, "flow");
    // The sentence is given its decimal sign as a whole later on.
    return format.decimalSign === "," ? flow.replace(/(\d),(?=\d)/g, "$1.") : flow;
  });
}

function ofThisShop(row: PumpRow, { words, format, mains, taken }: Setting): FieldProblem[] {
  const problems: FieldProblem[] = [];
  const said = `${format(mains.voltage, "voltage")}, ${format(mains.frequency, "frequency")}`;
  // Low-voltage pumps bring their own supply; the spread of 15 % is what the findings of a design allow too.
  const onMains = row.voltage > 60;
  if (onMains && Math.abs(row.voltage - mains.voltage) > 0.15 * mains.voltage)
    problems.push({
      place: "voltage",
      severity: "doubt",
      text: `${words.say("pumps.doubt.mains", { volts: format(row.voltage, "voltage"), mains: said })}.`,
    });
  if (onMains && row.frequency > 0 && row.frequency !== mains.frequency)
    problems.push({
      place: "frequency",
      severity: "doubt",
      text: `${words.say("pumps.doubt.frequency", { hertz: format(row.frequency, "frequency"), mains: said })}.`,
    });
  const whose = row.id === "" ? undefined : taken(row.id);
  if (whose === "own") problems.push({ place: "id", severity: "error", text: capital(`${words.say("pumps.taken")}.`) });
  if (whose === "program")
    problems.push({ place: "id", severity: "doubt", text: capital(`${words.say("pumps.doubt.shadows")}.`) });
  return problems;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Returns the mains that the program takes for a choice of units, as the guided start does. */
export function mainsFor(system: "metric" | "us" | "imperial"): Mains {
  return system === "us" ? { voltage: 120, frequency: 60 } : { voltage: 230, frequency: 50 };
}
