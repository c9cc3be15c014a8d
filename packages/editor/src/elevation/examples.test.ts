import { readdirSync, readFileSync } from "node:fs";
import { assess } from "@tidewright/advice";
import { demoCatalogue } from "@tidewright/catalogue";
import { type Design, readDesign } from "@tidewright/design";
import { formatQuantity, unitSystems } from "@tidewright/units";
import { describe, expect, it } from "vitest";
import { layoutElevation } from "./layoutElevation.ts";
import { dimensionRects, placeDimensions } from "./placeDimensions.ts";
import { flagRects, placeFlags } from "./placeFlags.ts";
import { boxRects, overlap, placeLabels, type Rect } from "./placeLabels.ts";
import type { Format } from "./scene.ts";
import { fitView } from "./view.ts";

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
const format: Format = (si, dimension) => formatQuantity(si, dimension, unitSystems.metric[dimension]);
/** Drawing areas of a phone, a tablet and a desk [px]. */
const screens = [
  [390, 388],
  [820, 543],
  [1050, 690],
] as const;

const clashes = (these: readonly (readonly [string, Rect])[], those: readonly (readonly [string, Rect])[]): string[] =>
  these.flatMap(([a, one]) =>
    those.filter(([b, other]) => a !== b && overlap(one, other, 0) > 0.01).map(([b]) => `${a} on ${b}`),
  );

describe("the drawing of every example, with its computed numbers", () => {
  it.each(designs)("lets no label, device, flag or dimension of %s lie on another", (_, design) => {
    const scene = layoutElevation(design, assess(design, demoCatalogue));
    for (const [width, height] of screens) {
      const view = fitView(scene.bounds, { width, height, dimensions: height > 400 });
      const placedFlags = placeFlags(scene, view);
      const placedDimensions = height > 400 ? placeDimensions(scene, view, format) : [];
      const keepFree = [...flagRects(placedFlags), ...dimensionRects(placedDimensions)];
      const labels = placeLabels({ scene, view, format, keepFree }).map(
        ({ path, rect }) => [`label ${path}`, rect] as const,
      );
      const boxes = boxRects(scene, view).map((rect, i) => [`device ${i}`, rect] as const);
      const flags = flagRects(placedFlags).map((rect, i) => [`flag ${i}`, rect] as const);
      const dimensions = dimensionRects(placedDimensions).map((rect, i) => [`dimension ${i}`, rect] as const);
      const all = [...labels, ...boxes, ...flags];
      expect(labels.length).toBeGreaterThan(2);
      expect(clashes(all, all), `${width} px`).toEqual([]);
      expect(clashes(labels, dimensions), `${width} px`).toEqual([]);
    }
  });

  it.each(designs)("gives every finding of %s a flag, at its part or at the one that stands for it", (_, design) => {
    const assessment = assess(design, demoCatalogue);
    const { flags, parts } = layoutElevation(design, assessment);
    const placed = new Set(flags.map(({ number }) => number));
    const missing = assessment.findings.filter((finding, i) => finding.at !== "" && !placed.has(i + 1));
    expect(missing.map(({ code, at }) => `${code} at ${at}`)).toEqual([]);
    const reachable = new Set(parts.map(({ path }) => path));
    expect(flags.filter(({ path }) => !reachable.has(path))).toEqual([]);
    // A flag stands at the part its finding names, above it or within it; never somewhere else.
    for (const { path, number } of flags) {
      const { at } = assessment.findings[number - 1]!;
      expect(
        path.startsWith(at) || at.startsWith(path) || path.split("/")[1] === at.split("/")[1],
        `${at} at ${path}`,
      ).toBe(true);
    }
  });
});
