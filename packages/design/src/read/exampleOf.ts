import type { z } from "zod";
import { quantityFacts } from "../schema/quantity.ts";
import { listed } from "./nearest.ts";
import { quantityExample } from "./quantityProblems.ts";

/** How a missing field could look, as JSON text. */
export function exampleOf(schema: z.core.$ZodType, name: string): string {
  const facts = quantityFacts(schema);
  if (facts !== undefined) return quantityExample(facts.dimension, name);
  const { def } = (schema as z.core.$ZodTypes)._zod;
  if (def.type === "literal") return `"${name}": ${JSON.stringify(def.values[0])}`;
  if (def.type === "enum") return `"${name}" with one of ${listed(Object.values(def.entries).map(String))}`;
  if (def.type === "object")
    return `"${name}": { } with ${listed(Object.keys(def.shape).filter((each) => def.shape[each]!._zod.optin !== "optional"))}`;
  if (def.type === "array") return `"${name}": [ ] with at least one entry`;
  if (def.type === "union") {
    const word = def.options.find((each) => (each as z.core.$ZodTypes)._zod.def.type === "enum");
    if (word !== undefined) return `${exampleOf(word, name)}, or an object that says more`;
  }
  if (def.type === "union") return `"${name}" as a number in SI units, or as { "value", "unit" }`;
  return `"${name}" with ${def.type === "string" ? "a text" : "a number"}`;
}
