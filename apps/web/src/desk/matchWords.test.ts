import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { folded, foldedOnce, matchWords } from "./matchWords.ts";

describe("searching a list", () => {
  const texts = ["Waiting-room reef Dr Hennig", "School corridor", "Hotel lobby, two return pumps", "Café Müller"];
  const find = (search: string) => matchWords(texts, foldedOnce2, search);
  const foldedOnce2 = (text: string) => folded(text);

  it("finds what has every word, in any order and case", () => {
    expect(find("REEF waiting")).toEqual(["Waiting-room reef Dr Hennig"]);
    expect(find("reef corridor")).toEqual([]);
  });

  it("finds accented names typed without accents, and the other way round", () => {
    expect(find("cafe muller")).toEqual(["Café Müller"]);
    expect(find("mu\u0308ller")).toEqual(["Café Müller"]);
  });

  it("shows everything for an empty search", () => {
    expect(find("  ")).toEqual(texts);
  });

  it("finds every text by any of its own words", () => {
    fc.assert(
      fc.property(fc.array(fc.string({ minLength: 1 }), { minLength: 1 }), fc.nat(), (list, pick) => {
        const text = list[pick % list.length] ?? "";
        const word = text.split(/\s+/).find((each) => each !== "") ?? "";
        expect(matchWords(list, folded, word)).toContain(text);
      }),
    );
  });

  it("folds a text once for each object", () => {
    let calls = 0;
    const textOf = foldedOnce((item: { readonly name: string }) => {
      calls += 1;
      return item.name;
    });
    const item = { name: "Ä" };
    expect(textOf(item)).toBe("a");
    textOf(item);
    expect(calls).toBe(1);
  });

  it("searches a thousand jobs", () => {
    const jobs = Array.from({ length: 1000 }, (_, i) => ({
      name: `job ${i} reef in the corridor`,
      notes: "x".repeat(500),
    }));
    const textOf = foldedOnce((job: (typeof jobs)[number]) => `${job.name} ${job.notes}`);
    // 77, 177, ... 977 and 770 to 779, of which 777 is among both.
    expect(matchWords(jobs, textOf, "job 77 corridor")).toHaveLength(19);
  });
});
