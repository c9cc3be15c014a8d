import { findProblems, type Problem, pruneDeep, type TypedQuantity } from "@tidewright/design";
import { toSI } from "@tidewright/units";
import { type StartAnswers, startAnswersSchema } from "./startAnswers.ts";

/** Either answers that a first design can be made of, or all their problems. */
export type StartReading =
  | { readonly ok: true; readonly answers: StartAnswers }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Returns a value as answers of the guided start, or the complete list of its problems.
 *  input what a form, a file or a link brings   -> StartReading; the answers are the value itself
 *  Findings: none; problems name path, value and fix. Throws: never.
 *  Valid: any value.
 *  Source: own construction; RFC 6901 for the paths.
 *  Example: readStart({ tank: { volume: { value: 300, unit: "L" } } }).ok  ->  true
 *  Example: readStart({ tank: { length: { value: 120, unit: "cm" } } }).problems.map((each) => each.path)  ->  ["/tank/width", "/tank/height"]
 *  Example: readStart({ tank: { volume: { value: 300, unit: "kg" } } }).problems[0].path  ->  "/tank/volume/unit" */
export function readStart(input: unknown): StartReading {
  const { value, cut } = pruneDeep(input);
  const problems = findProblems(startAnswersSchema, value);
  for (const path of cut)
    problems.push({ path, message: "the nesting is too deep from here on", fix: "send the answers as the form does" });
  // What is wrong by itself needs no second word on how it fits the rest.
  const sound = (path: string) => !problems.some((each) => each.path === path || each.path.startsWith(`${path}/`));
  problems.push(...sizeProblems(value, sound));
  problems.push(...wishOrder(value, sound));
  return problems.length > 0 ? { ok: false, problems } : { ok: true, answers: value as StartAnswers };
}

type Sound = (path: string) => boolean;
type Loose = { readonly [key: string]: unknown };
const fieldOf = (value: unknown, name: string): unknown =>
  typeof value === "object" && value !== null ? (value as Loose)[name] : undefined;

function sizeProblems(value: unknown, sound: Sound): Problem[] {
  const tank = fieldOf(value, "tank");
  if (typeof tank !== "object" || tank === null) return [];
  const sides = ["length", "width", "height"] as const;
  const given = sides.filter((side) => fieldOf(tank, side) !== undefined);
  const volume = fieldOf(tank, "volume");
  if (volume === undefined) {
    if (given.length === 0)
      return [
        {
          path: "/tank",
          message: "the size of the tank is missing",
          value: tank,
          fix: 'give "length", "width" and "height", or "volume" alone',
        },
      ];
    return sides
      .filter((side) => !given.includes(side))
      .map((side) => ({
        path: `/tank/${side}`,
        message: `the tank's ${side} is missing`,
        fix: `add "${side}", as in { "value": 500, "unit": "mm" }, or give "volume" alone`,
      }));
  }
  if (given.length < 3 || !sides.every((side) => sound(`/tank/${side}`)) || !sound("/tank/volume")) return [];
  const metres = (side: (typeof sides)[number]) => toSI(fieldOf(tank, side) as TypedQuantity, "length");
  const product = metres("length") * metres("width") * metres("height");
  const said = toSI(volume as TypedQuantity, "volume");
  if (said > 0.7 * product && said < 1.3 * product) return [];
  return [
    {
      path: "/tank/volume",
      message: `the volume does not fit the sides, which hold ${Math.round(1000 * product)} L`,
      value: volume,
      fix: "leave the volume out, or correct a side",
    },
  ];
}

function wishOrder(value: unknown, sound: Sound): Problem[] {
  const wish = fieldOf(fieldOf(value, "wishes"), "returnTurnover");
  if (!Array.isArray(wish) || wish.length !== 2 || !sound("/wishes/returnTurnover")) return [];
  const [low, high] = wish.map((each) => toSI(each as TypedQuantity, "turnover")) as [number, number];
  if (low <= high) return [];
  return [
    {
      path: "/wishes/returnTurnover",
      message: "the lowest wish is above the highest",
      value: wish,
      fix: "give the lower one first",
    },
  ];
}
