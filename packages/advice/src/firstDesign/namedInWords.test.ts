import { demoCatalogue } from "@tidewright/catalogue";
import { checkDesign } from "@tidewright/design";
import { loadWords } from "@tidewright/words";
import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import { firstDesign } from "./firstDesign.ts";
import { namedInWords } from "./namedInWords.ts";

const mm = (value: number) => ({ value, unit: "mm" });
const { design } = firstDesign(
  { tank: { length: mm(1200), width: mm(500), height: mm(600) }, name: "return" },
  demoCatalogue,
);
const namesOf = (value: unknown): string[] => {
  if (Array.isArray(value)) return value.flatMap(namesOf);
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, each]) =>
    key === "name" && typeof each === "string" ? [each] : namesOf(each),
  );
};

describe("the parts of a first design", () => {
  it("are named in the reader's language, every one, and compute the same", async () => {
    const german = namedInWords(design, await loadWords("de"));
    const english = namesOf({ ...design, name: "" }).filter((name) => name !== "");
    expect(english.length).toBeGreaterThan(8);
    for (const name of english) expect(namesOf({ ...german, name: "" })).not.toContain(name);
    expect(namesOf(german)).toEqual(expect.arrayContaining(["Siphon", "Notablauf", "Rücklauf", "ganzes Becken"]));
    // The whole keeps the name that somebody gave it.
    expect(german.name).toBe("return");
    expect(checkDesign(german, demoCatalogue).ok).toBe(true);
    const flows = (of: typeof design) => assess(of, demoCatalogue, { curves: false }).loops.map(({ flow }) => flow);
    expect(flows(german)).toEqual(flows(design));
  });

  it("stay as they are in English", async () => {
    expect(namedInWords(design, await loadWords("en"))).toEqual(design);
  });
});
