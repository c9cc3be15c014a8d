import { readStart, type StartAnswers } from "@tidewright/advice";
import type { Dimension, Quantity } from "@tidewright/units";
import type { Words } from "@tidewright/words";
import { readQuantity } from "../format/quantityText.ts";
import { type Draft, type TypedKey, type TypedQuestion, typedQuestions } from "./draft.ts";

/** What a draft says: answers once it says enough, and what is wrong by question. */
export interface Said {
  readonly answers: StartAnswers | undefined;
  /** Too little is said yet: that is no mistake. */
  readonly waiting: boolean;
  readonly problems: Readonly<Partial<Record<TypedKey | "form", string>>>;
}

/** Returns what a draft says.
 *  draft   unitOf unit of a bare number   us inch units   currency of the shop   words of the reader's language   -> Said */
export function answersOf(
  draft: Draft,
  unitOf: (dimension: Dimension) => string,
  us: boolean,
  currency: string,
  words: Words,
): Said {
  const problems: Partial<Record<TypedKey | "form", string>> = {};
  const read = new Map<TypedKey, Quantity | number>();
  for (const [name, { path: _, dimension }] of Object.entries(typedQuestions) as [TypedKey, TypedQuestion][]) {
    const text = draft.typed[name]?.trim() ?? "";
    if (text === "" || !isAsked(name, draft)) continue;
    if (dimension === undefined) {
      const count = Number(text.replace(",", "."));
      if (Number.isInteger(count) && count >= 0) read.set(name, count);
      else problems[name] = words.say("start.customer.number", { example: "2" });
      continue;
    }
    const reading = readQuantity(text, dimension, bareUnit(dimension, unitOf, currency), words);
    if (reading.ok) read.set(name, reading.quantity);
    else problems[name] = reading.problem;
  }
  const quantity = (name: TypedKey) => read.get(name) as Quantity | undefined;
  const count = (name: TypedKey) => read.get(name) as number | undefined;
  const [low, high] = [quantity("turnoverLow"), quantity("turnoverHigh")];
  const tank = given({
    length: quantity("length"),
    width: quantity("width"),
    height: quantity("height"),
    volume: quantity("volume"),
  });
  const holes = given({ count: count("holesCount"), diameter: quantity("holesDiameter") });
  const sump = given({ length: quantity("sumpLength"), width: quantity("sumpWidth"), height: quantity("sumpHeight") });
  const candidate = given({
    name: draft.name.trim() || undefined,
    units: us ? "us" : "metric",
    tank: tank ?? {},
    animals: draft.animals.length > 0 ? draft.animals : undefined,
    overflow: given({
      glass: draft.glass,
      holes: holes && Object.keys(holes).length === 2 ? holes : undefined,
      drains: draft.drains,
    }),
    standHeight: quantity("standHeight"),
    sump: sump && Object.keys(sump).length === 3 ? sump : undefined,
    topOff: given({ kind: draft.topOff, reservoir: quantity("reservoir") }),
    returnWay: given({ horizontal: quantity("horizontal"), elbows: count("elbows") }),
    power: given({
      ...(draft.mains === undefined
        ? {}
        : draft.mains === "230 V, 50 Hz"
          ? { voltage: { value: 230, unit: "V" }, frequency: { value: 50, unit: "Hz" } }
          : { voltage: { value: 120, unit: "V" }, frequency: { value: 60, unit: "Hz" } }),
      tariff: quantity("tariff"),
      circuit: quantity("circuit"),
    }),
    wishes: given({
      returnTurnover: low || high ? [low ?? half(high), high ?? double(low)] : undefined,
      budget: quantity("budget"),
      sound: quantity("sound"),
      horizon: quantity("horizon"),
    }),
  });
  const sides = [quantity("length"), quantity("width"), quantity("height")];
  const enough = quantity("volume") !== undefined || sides.every((side) => side !== undefined);
  // Sides that nobody can read, or has given yet, do not hide what is wrong with the other answers.
  const reading = readStart(enough ? candidate : { ...candidate, tank: { ...someTank, ...tank } });
  const waiting = !enough;
  if (reading.ok)
    return {
      answers: enough && Object.keys(problems).length === 0 ? reading.answers : undefined,
      waiting,
      problems,
    };
  for (const problem of reading.problems) {
    const name = (Object.keys(typedQuestions) as TypedKey[]).find(
      (each) => problem.path === typedQuestions[each].path || problem.path.startsWith(`${typedQuestions[each].path}/`),
    );
    const text = `${problem.message}; ${problem.fix}`;
    // What does not lie at one question may come of the sides that were put in.
    if (name === undefined && waiting) continue;
    problems[name ?? "form"] ??= words.language === "en" ? text : words.say("start.customer.outOfRange");
  }
  return { answers: undefined, waiting, problems };
}

const side: Quantity = { value: 1, unit: "m" };
const someTank = { length: side, width: side, height: side };

/** What a tariff is in where no shop says what it reckons in: the catalogue's currency. */
export const defaultCurrency = "EUR";

/** Unit of a bare number: the screen's, but years for a horizon and the shop's currency for a tariff. */
export function bareUnit(dimension: Dimension, unitOf: (dimension: Dimension) => string, currency: string): string {
  if (dimension === "time") return "a";
  if (dimension === "tariff") return `${currency}/kWh`;
  return unitOf(dimension);
}

/** A question that stands only where another is answered so. */
function isAsked(name: TypedKey, draft: Draft): boolean {
  if (name === "holesCount" || name === "holesDiameter") return draft.glass === "drilled";
  if (name === "sumpLength" || name === "sumpWidth" || name === "sumpHeight") return draft.sump === "given";
  if (name === "reservoir") return draft.topOff !== "none";
  return true;
}

const half = (quantity: Quantity | undefined) => quantity && { ...quantity, value: quantity.value / 2 };
const double = (quantity: Quantity | undefined) => quantity && { ...quantity, value: quantity.value * 2 };

/** The fields that are there, or nothing where none is. */
function given<Fields extends object>(fields: Fields): Partial<Fields> | undefined {
  const entries = Object.entries(fields).filter(([, value]) => value !== undefined);
  return entries.length === 0 ? undefined : (Object.fromEntries(entries) as Partial<Fields>);
}
