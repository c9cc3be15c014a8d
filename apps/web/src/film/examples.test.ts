import { readdirSync, readFileSync } from "node:fs";
import { assess, safetySweep, scenariosOf, whatIf } from "@tidewright/advice";
import { demoCatalogue } from "@tidewright/catalogue";
import { type Design, readDesign } from "@tidewright/design";
import { fitView } from "@tidewright/editor";
import { describe, expect, it } from "vitest";
import { screenFormat } from "../format/screenFormat.ts";
import { answerSentences } from "./answerSentences.ts";
import { filmScene } from "./filmScene.ts";
import { layoutFilmChart } from "./layoutFilmChart.ts";
import { paintFilm } from "./paintFilm.ts";
import { shortenedScale } from "./timeScale.ts";

const folder = new URL("../../../../examples/", import.meta.url);
const designs = ["", "golden/"].flatMap((under) =>
  readdirSync(new URL(under, folder))
    .filter((name) => name.endsWith(".json"))
    .map((name): [string, Design] => {
      const reading = readDesign(readFileSync(new URL(under + name, folder), "utf8"), demoCatalogue);
      if (!reading.ok) throw new Error(`${name}: ${reading.problems[0]?.message}`);
      return [name, reading.design];
    }),
);
const format = screenFormat({ system: "metric", own: {} });

/** Every element that a painter may ask for, keeping what was written on it. */
function handElements() {
  const written: string[] = [];
  const element = {
    setAttribute: (_: string, value: string) => written.push(value),
    set textContent(value: string) {
      written.push(value);
    },
  };
  const elements = { get: () => element } as unknown as ReadonlyMap<string, SVGElement>;
  return { written, elements };
}

const notNumbers = /NaN|Infinity|undefined/;

describe("the film of every example", () => {
  it.each(designs)("paints %s with finite numbers at every moment of every kind of trouble", (_, design) => {
    const assessment = assess(design, demoCatalogue);
    const kinds = new Set<string>();
    for (const scenario of scenariosOf(design)) {
      if (kinds.has(scenario.kind)) continue;
      kinds.add(scenario.kind);
      const result = whatIf(design, demoCatalogue, scenario);
      const { film } = result;
      if (film === undefined) throw new Error("played without its film");
      const scene = filmScene(design, assessment, result);
      const view = fitView(scene.scene.bounds, { width: 900, height: 500 });
      const { written, elements } = handElements();
      const paint = paintFilm({ film, result, scene, view, format, elements, moves: () => true });
      const scale = shortenedScale(film, result.events, result.reached);
      for (let step = 0; step <= 20; step += 1) paint(scale.toTime(step / 20));
      expect(written.length).toBeGreaterThan(20);
      expect(written.filter((value) => notNumbers.test(value))).toEqual([]);
      const chart = layoutFilmChart({ result, scale, width: 900 });
      expect(JSON.stringify(chart)).not.toMatch(/NaN|undefined/);
    }
  });

  it.each(designs.slice(0, 4))("tells what follows for %s in whole sentences", (_, design) => {
    const { answers } = safetySweep(design, demoCatalogue);
    const texts = answerSentences(answers, design, format).map(({ text }) => text);
    expect(texts.length).toBeGreaterThanOrEqual(6);
    for (const text of texts) {
      expect(text).not.toMatch(notNumbers);
      expect(text).toMatch(/^[A-Z0-9].*\.$/);
    }
  });
});
