import { readdirSync, readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkDesign } from "../read/checkDesign.ts";
import { checkNetworkDocument } from "../read/readNetwork.ts";
import { designSchema } from "../schema/design.ts";
import { networkDocumentSchema } from "../schema/network.ts";
import { mutated } from "../testing/mutated.ts";
import { designJsonSchema, networkJsonSchema } from "./documentJsonSchema.ts";

const examples = new URL("../../../../examples/", import.meta.url);
const documents = (folder: string): [string, unknown][] =>
  readdirSync(new URL(folder, examples))
    .filter((name) => name.endsWith(".json"))
    .map((name) => [folder + name, JSON.parse(readFileSync(new URL(folder + name, examples), "utf8"))]);

const designs = [...documents("./"), ...documents("golden/")];
const networks = documents("networks/");
// Strict: a keyword that the draft does not know would throw here.
const ajv = new Ajv2020({ strict: true, strictTuples: false, allErrors: true });
const design = ajv.compile(designJsonSchema());
const network = ajv.compile(networkJsonSchema());

describe("the published JSON Schema", () => {
  it.each(designs)("takes the design %s", (_, document) => {
    design(document);
    expect(design.errors ?? []).toEqual([]);
    expect(checkDesign(document)).toMatchObject({ ok: true });
  });

  it.each(networks)("takes the network %s", (_, document) => {
    network(document);
    expect(network.errors ?? []).toEqual([]);
    expect(checkNetworkDocument(document)).toMatchObject({ ok: true });
  });

  it.each([
    ["designs", designs, designSchema, design],
    ["networks", networks, networkDocumentSchema, network],
  ] as const)("takes every sound one and refuses nearly all spoilt %s", (_, all, schema, validate) => {
    let spoilt = 0;
    let refused = 0;
    const changed = fc.tuple(fc.constantFrom(...all), fc.array(fc.nat(), { minLength: 1, maxLength: 2 }));
    fc.assert(
      fc.property(changed, ([[, sound], seeds]) => {
        const document = mutated(sound, seeds);
        if (schema.safeParse(document).success) expect(validate(document)).toBe(true);
        else {
          spoilt++;
          if (!validate(document)) refused++;
        }
      }),
      { numRuns: 2000 },
    );
    // Bounds other than a sign hold in SI and cannot be said in JSON Schema; everything else is.
    expect(spoilt).toBeGreaterThan(500);
    expect(refused / spoilt).toBeGreaterThan(0.97);
  });

  it("lists the units of every quantity and refers to nothing outside itself", () => {
    const text = JSON.stringify(designJsonSchema());
    expect(text).toContain('"enum":["');
    for (const [, to] of text.matchAll(/"\$ref":"([^"]*)"/g)) expect(to).toMatch(/^#/);
    expect(text).not.toMatch(/https?:\/\/(?!json-schema\.org)/);
  });
});
