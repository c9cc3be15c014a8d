import { readDesign } from "@tidewright/design";
import { englishWords, loadWords, sayAgain } from "@tidewright/words";
import { describe, expect, it } from "vitest";

describe("sentences of the design package", () => {
  it("are said again in German, with what was filled in", async () => {
    const words = await loadWords("de");
    const refused = readDesign(
      JSON.stringify({ tidewright: 1, name: "", sump: { height: { value: -4.5, unit: "mm" } } }),
    );
    const told = refused.ok ? [] : refused.problems.flatMap(({ message, fix }) => [message, fix]);
    expect(told.length).toBeGreaterThan(10);
    const left = told.filter((text) => sayAgain(text, words) === text);
    expect(left).toEqual([]);
    expect(sayAgain("-4.5 mm is negative", words)).toBe("-4,5 mm ist negativ");
    expect(sayAgain('the field "loops" is missing', words)).toBe("das Feld „loops“ fehlt");
    expect(sayAgain("-4.5 mm is negative", englishWords)).toBe("-4.5 mm is negative");
  });

  it("stay as they are where the catalogue does not know them", async () => {
    expect(sayAgain("the moon is full", await loadWords("de"))).toBe("the moon is full");
  });
});
