import type { z } from "zod";
import { type Problem, shortened, shown } from "../problem.ts";
import { quantityFacts } from "../schema/quantity.ts";
import { exampleOf } from "./exampleOf.ts";
import { below } from "./jsonPointer.ts";
import { listed, nearest } from "./nearest.ts";
import { isObject, type Place, wrongKind } from "./place.ts";
import { quantityProblems } from "./quantityProblems.ts";
import { walkChoice, walkNumber, walkText } from "./scalarProblems.ts";

type Schema = z.core.$ZodType;

/** Returns everything in a value that a schema does not allow, complete, in plain words, in the order of the document.
 *  schema built of the kinds this package uses (objects, lists, pairs, texts, numbers, choices, quantities)
 *  value anything that `pruneDeep` let through   -> Problem[]; none exactly where zod itself accepts the value
 *  Findings: none. Throws: a broken invariant, where the schema holds a kind this walk does not know.
 *  Valid: zod's own report is not used because it stops short in unions and refinements and cannot hold very many issues.
 *  Source: own construction; RFC 6901 for the paths.
 *  Example: findProblems(designSchema, { tidewright: 1 }).some((each) => each.path === "/display")  ->  true */
export function findProblems(schema: Schema, value: unknown): Problem[] {
  const problems: Problem[] = [];
  walk(schema, { value, path: "", add: (problem) => problems.push(problem) });
  return problems;
}

function walk(schema: Schema, place: Place): void {
  const facts = quantityFacts(schema);
  if (facts !== undefined) return quantityProblems(facts, place.value, place.path, place.add);
  const { def } = (schema as z.core.$ZodTypes)._zod;
  switch (def.type) {
    case "optional":
      if (place.value !== undefined) walk(def.innerType, place);
      return;
    case "nullable":
      if (place.value !== null) walk(def.innerType, place);
      return;
    case "lazy":
      return walk(def.getter(), place);
    case "object":
      return walkObject(def.shape, place);
    case "array":
      return walkList(def.element, sizeOf(def.checks), place);
    case "tuple":
      return walkTuple(def.items, place);
    case "union":
      return walkUnion(def as z.core.$ZodDiscriminatedUnionDef, place);
    case "literal":
    case "enum": {
      const values = def.type === "literal" ? def.values : Object.values(def.entries);
      return walkChoice(values, place);
    }
    case "string":
      return walkText(def.checks ?? [], place);
    case "number":
      return walkNumber(def.checks ?? [], place);
    case "boolean":
      if (typeof place.value !== "boolean") wrongKind(place, "true or false", "write true or false, without quotes");
      return;
    default:
      throw new Error(`findProblems does not know schemas of type ${def.type}`);
  }
}

function walkObject(shape: Readonly<Record<string, Schema>>, place: Place): void {
  const { value, path, add } = place;
  const names = Object.keys(shape);
  if (!isObject(value)) {
    const needed = names.filter((name) => shape[name]!._zod.optin !== "optional");
    return wrongKind(place, "an object", `write { } with ${listed(needed.length > 0 ? needed : names)}`);
  }
  for (const name of names) {
    const there = Object.hasOwn(value, name);
    if (there || shape[name]!._zod.optin === "optional") {
      // JSON knows no "undefined": in a value made by a program it stands for a field left out.
      if (there) walk(shape[name]!, { value: value[name], path: below(path, name), add });
    } else missing(shape[name]!, name, place);
  }
  for (const name of Object.keys(value)) {
    if (Object.hasOwn(shape, name)) continue;
    const like =
      nearest(
        name,
        names.filter((each) => !Object.hasOwn(value, each)),
      ) ?? nearest(name, names);
    add({
      path: below(path, name),
      message: `there is no field "${shortened(name)}" here`,
      value: value[name],
      fix:
        like === undefined
          ? `remove it; the fields are ${listed(names, 20)}`
          : `did you mean "${like}"? else remove it`,
    });
  }
}

function missing(schema: Schema, name: string, { path, add }: Place): void {
  add({ path: below(path, name), message: `the field "${name}" is missing`, fix: `add ${exampleOf(schema, name)}` });
}

function walkList(element: Schema, size: Size, place: Place): void {
  const { value, path, add } = place;
  if (!Array.isArray(value)) return wrongKind(place, "a list", "put the values between [ and ]");
  if (size.least !== undefined && value.length < size.least) {
    const message = value.length === 0 ? "the list is empty" : `the list has ${value.length} entry only`;
    add({ path, message, value, fix: `give ${size.least} or more` });
  }
  if (size.most !== undefined && value.length > size.most)
    add({ path, message: `the list has ${value.length} entries`, value, fix: `give at most ${size.most}` });
  for (let i = 0; i < value.length; i++) walk(element, { value: value[i], path: below(path, i), add });
}

function walkTuple(items: readonly Schema[], place: Place): void {
  const { value, path, add } = place;
  if (!Array.isArray(value))
    return wrongKind(place, `a list of ${items.length}`, `give ${items.length} values between [ and ]`);
  if (value.length !== items.length)
    add({
      path,
      message: `the list has ${value.length} ${value.length === 1 ? "entry" : "entries"}`,
      value,
      fix: `give exactly ${items.length}`,
    });
  items.forEach((item, i) => {
    if (i < value.length) walk(item, { value: value[i], path: below(path, i), add });
  });
}

function walkUnion(def: z.core.$ZodDiscriminatedUnionDef, place: Place): void {
  const { value, path, add } = place;
  if (def.discriminator === undefined) {
    const word = def.options.find((each) => typeOf(each) === "enum");
    if (word !== undefined) return walkWordOrObject(word, def.options, place);
    const option = likeliest(def.options, value);
    if (option !== undefined) return walk(option, place);
    return wrongKind(
      place,
      'a number in SI units, or { "value", "unit" }',
      'write it like 0.025 or { "value": 25, "unit": "mm" }',
    );
  }
  const kinds = new Map<unknown, Schema>();
  for (const option of def.options) {
    for (const kind of option._zod.propValues?.[def.discriminator] ?? []) kinds.set(kind, option);
  }
  const names = [...kinds.keys()].map(String);
  const field = def.discriminator;
  if (!isObject(value)) return wrongKind(place, "an object", `write { "${field}": ... } with one of ${listed(names)}`);
  if (!Object.hasOwn(value, field)) {
    add({
      path: below(path, field),
      message: `the field "${field}" is missing`,
      fix: `add "${field}" with one of ${listed(names)}`,
    });
    return;
  }
  const option = kinds.get(value[field]);
  if (option === undefined) return walkChoice(names, { value: value[field], path: below(path, field), add });
  walk(option, place);
}

/** A choice of words of which those that need more to be said are kinds of an object. */
function walkWordOrObject(word: Schema, options: readonly Schema[], place: Place): void {
  const { value, path, add } = place;
  const object = options.find((each) => each !== word) as z.core.$ZodDiscriminatedUnion;
  if (isObject(value)) return walk(object, place);
  const { discriminator } = object._zod.def;
  const fuller =
    typeof value === "string"
      ? object._zod.def.options.find((each) => each._zod.propValues?.[discriminator]?.has(value))
      : undefined;
  if (fuller === undefined || word._zod.values?.has(value as string)) return walk(word, place);
  const names = Object.keys((fuller._zod.def as z.core.$ZodObjectDef).shape).filter((name) => name !== discriminator);
  add({
    path,
    message: `${shown(value)} alone does not say what it happens to`,
    value,
    fix: `write { "${discriminator}": ${shown(value)} } with ${listed(names)}`,
  });
}

/** The alternative a value was most probably meant as: one of its own kind, then the one with most fields in common. */
function likeliest(options: readonly Schema[], value: unknown): Schema | undefined {
  if (typeof value === "number") return options.find((option) => typeOf(option) === "number");
  if (!isObject(value)) return undefined;
  let best: Schema | undefined;
  let most = -1;
  for (const option of options) {
    const { def } = (option as z.core.$ZodTypes)._zod;
    if (def.type !== "object") continue;
    const common = Object.keys(def.shape).filter((name) => Object.hasOwn(value, name)).length;
    if (common > most) {
      best = option;
      most = common;
    }
  }
  return best;
}

interface Size {
  least?: number;
  most?: number;
}

function sizeOf(checks: readonly z.core.$ZodCheck[] | undefined): Size {
  const size: Size = {};
  for (const check of checks ?? []) {
    const { def } = check._zod as z.core.$ZodChecks["_zod"];
    if (def.check === "min_length") size.least = def.minimum;
    if (def.check === "max_length") size.most = def.maximum;
  }
  return size;
}

function typeOf(schema: Schema): string {
  return (schema as z.core.$ZodTypes)._zod.def.type;
}
