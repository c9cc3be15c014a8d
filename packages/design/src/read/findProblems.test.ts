import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { designSchema } from "../schema/design.ts";
import { networkDocumentSchema } from "../schema/network.ts";
import { mutated } from "../testing/mutated.ts";
import { findProblems } from "./findProblems.ts";

const examples = new URL("../../../../examples/", import.meta.url);
const documents = (folder: string) =>
  readdirSync(new URL(folder, examples))
    .filter((name) => name.endsWith(".json"))
    .map((name) => JSON.parse(readFileSync(new URL(folder + name, examples), "utf8")) as unknown);

const spoilt = (sound: readonly unknown[]) =>
  fc
    .tuple(fc.constantFrom(...sound), fc.array(fc.nat(), { minLength: 1, maxLength: 3 }))
    .map(([document, seeds]) => mutated(document, seeds));

describe("the walk that names problems", () => {
  it.each([
    ["designs", designSchema, [...documents("./"), ...documents("golden/")]],
    ["networks", networkDocumentSchema, documents("networks/")],
  ] as const)("refuses exactly the %s that zod refuses", (_, schema, sound) => {
    expect(sound.length).toBeGreaterThan(3);
    let refused = 0;
    fc.assert(
      fc.property(spoilt(sound), (document) => {
        const accepted = schema.safeParse(document).success;
        expect(findProblems(schema, document).length === 0).toBe(accepted);
        if (!accepted) refused++;
      }),
      { numRuns: 3000 },
    );
    // Mutations that change nothing would prove nothing.
    expect(refused).toBeGreaterThan(1000);
  });

  it("gives every problem a place that is there, or whose parent is", () => {
    fc.assert(
      fc.property(spoilt(documents("./")), (document) => {
        for (const { path } of findProblems(designSchema, document))
          expect(path === "" || path.startsWith("/")).toBe(true);
      }),
      { numRuns: 300 },
    );
  });
});
