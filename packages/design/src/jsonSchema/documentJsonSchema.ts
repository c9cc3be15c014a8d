import type { Dimension } from "@tidewright/units";
import { unitsOf } from "@tidewright/units";
import { z } from "zod";
import { designSchema } from "../schema/design.ts";
import { networkDocumentSchema } from "../schema/network.ts";
import { quantityFacts } from "../schema/quantity.ts";
import { scenarioDocumentSchema } from "../schema/scenario.ts";

/** Returns the JSON Schema, draft 2020-12, of the design document, version 1.
 *  -> plain object; every quantity lists its units, unknown fields are refused, runs are defined once and refer to
 *  themselves
 *  Findings: none. Throws: never.
 *  Valid: it accepts every design that `checkDesign` accepts and whose units are spelt as listed; limits of a quantity
 *  other than its sign are not in it, because they hold in SI and JSON Schema compares numbers only.
 *  Source: JSON Schema, draft 2020-12, core and validation.
 *  Example: designJsonSchema().$schema  ->  "https://json-schema.org/draft/2020-12/schema" */
export function designJsonSchema(): Record<string, unknown> {
  return published(designSchema, "urn:tidewright:design:1", "Tidewright design document, version 1");
}

/** Returns the JSON Schema, draft 2020-12, of the network document, version 1.
 *  -> plain object, as `designJsonSchema`
 *  Findings: none. Throws: never.
 *  Valid: it accepts every document that `readNetwork` accepts.
 *  Source: JSON Schema, draft 2020-12, core and validation.
 *  Example: networkJsonSchema().$id  ->  "urn:tidewright:network:1" */
export function networkJsonSchema(): Record<string, unknown> {
  return published(networkDocumentSchema, "urn:tidewright:network:1", "Tidewright network document, version 1");
}

/** Returns the JSON Schema, draft 2020-12, of the scenario document, version 1.
 *  -> plain object, as `designJsonSchema`
 *  Findings: none. Throws: never.
 *  Valid: it accepts every document that `readScenario` accepts; names of parts and the order of times are not in it.
 *  Source: JSON Schema, draft 2020-12, core and validation.
 *  Example: scenarioJsonSchema().$id  ->  "urn:tidewright:scenario:1" */
export function scenarioJsonSchema(): Record<string, unknown> {
  return published(scenarioDocumentSchema, "urn:tidewright:scenario:1", "Tidewright scenario document, version 1");
}

function published(schema: z.ZodType, id: string, title: string): Record<string, unknown> {
  const units = new Map<Dimension, string[]>();
  const { $schema, $defs, ...body } = z.toJSONSchema(schema, {
    target: "draft-2020-12",
    io: "input",
    override: ({ zodSchema, jsonSchema }) => {
      const facts = quantityFacts(zodSchema);
      if (facts === undefined) return;
      const value = jsonSchema.properties?.["value"];
      const unit = jsonSchema.properties?.["unit"];
      if (typeof unit === "object") {
        units.set(facts.dimension, spellings(facts.dimension));
        delete unit.type;
        unit.$ref = `#/$defs/${facts.dimension}Unit`;
      }
      // The sign is the same in every unit that has its zero at the SI zero: all but temperature.
      if (typeof value !== "object" || facts.dimension === "temperature") return;
      if (facts.range.positive) value.exclusiveMinimum = 0;
      else if (facts.range.min === 0) value.minimum = 0;
    },
  });
  const unitDefs = [...units].map(([dimension, names]) => [`${dimension}Unit`, { enum: names }]);
  return { $schema, $id: id, title, ...body, $defs: { ...$defs, ...Object.fromEntries(unitDefs) } };
}

/** Symbols first, then every other spelling; those in other capitals or with other spaces are read as well. */
function spellings(dimension: Dimension): string[] {
  const units = unitsOf(dimension);
  return [...new Set([...units.map((unit) => unit.symbol), ...units.flatMap((unit) => unit.aliases)])];
}
