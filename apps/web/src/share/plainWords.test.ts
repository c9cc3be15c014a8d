import { readFileSync } from "node:fs";
import { assess, safetySweep } from "@tidewright/advice";
import { demoCatalogue } from "@tidewright/catalogue";
import { readDesign } from "@tidewright/design";
import { loadWords } from "@tidewright/words";
import { describe, expect, it } from "vitest";
import { screenFormat } from "../format/screenFormat.ts";
import { plainWords } from "./plainWords.ts";
import { tokenOf } from "./tokenOf.ts";

const reading = readDesign(
  readFileSync(new URL("../../../../examples/waiting-room-reef.json", import.meta.url), "utf8"),
  demoCatalogue,
);
if (!reading.ok) throw new Error("the demo cannot be read");
const { design } = reading;
const assessment = assess(design, demoCatalogue, { curves: false });
const sweep = safetySweep(design, demoCatalogue);

describe("what a customer reads of a system", () => {
  for (const language of ["en", "de"] as const)
    it(`has a figure and a sentence for everything, without a gap, in ${language}`, async () => {
      const facts = plainWords(
        design,
        assessment,
        sweep,
        screenFormat({ system: "metric", own: {} }),
        await loadWords(language),
      );
      expect(facts.map(({ id }) => id)).toEqual(["flow", "turnover", "power", "sound", "powerCut", "mishaps"]);
      for (const { figure, text } of facts) {
        expect(`${figure} ${text}`).not.toMatch(/undefined|NaN|\{|\}/);
        expect(text.length).toBeGreaterThan(10);
      }
    });

  it("tells of a year's bill what power, hours and tariff make of it", async () => {
    const words = await loadWords("en");
    const power = plainWords(design, assessment, sweep, screenFormat({ system: "metric", own: {} }), words)[2];
    // Analytic: watts by 8760 hours by 0.31 EUR a kilowatt hour, as the demonstration job has it.
    const bill = Math.round(((assessment.power.watts * 8760) / 1000) * 0.31);
    expect(power?.figure).toBe(`${bill}\u00a0EUR a year`);
  });

  it("warns where the sump has too little room, also before the play over time is there", async () => {
    const full = { ...assessment, sump: { ...assessment.sump, margin: -0.012 } };
    const cut = plainWords(
      design,
      full,
      undefined,
      screenFormat({ system: "metric", own: {} }),
      await loadWords("en"),
    )[4];
    expect(cut).toMatchObject({ id: "powerCut", figure: "the floor gets wet", wrong: true });
    expect(cut?.text).toContain("12");
  });

  it("asks no server about what no link of ours can be", () => {
    expect(tokenOf("#abc_-9")).toBe("abc_-9");
    for (const hash of ["", "#", "#<b>", "#a b", `#${"x".repeat(300)}`]) expect(tokenOf(hash)).toBe("");
  });
});
