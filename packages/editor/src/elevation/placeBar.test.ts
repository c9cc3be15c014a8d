import { readFileSync } from "node:fs";
import type { Design } from "@tidewright/design";
import { formatQuantity, unitSystems } from "@tidewright/units";
import { describe, expect, it } from "vitest";
import { actionsFor } from "../edits/partActions.ts";
import { layoutElevation } from "./layoutElevation.ts";
import { heldRects, placeBar } from "./placeBar.ts";
import { overlap, placeLabels } from "./placeLabels.ts";
import type { Format } from "./scene.ts";
import { testAssessment } from "./testAssessment.ts";
import { fitView } from "./view.ts";

const designs = ["waiting-room-reef", "hotel-lobby"].map((name): [string, Design] => [
  name,
  JSON.parse(readFileSync(new URL(`../../../../examples/${name}.json`, import.meta.url), "utf8")),
]);
const format: Format = (si, dimension) => formatQuantity(si, dimension, unitSystems.metric[dimension]);

describe.each(designs)("the bar of a part of %s", (_, design) => {
  // Widths of a bar with few and with many actions, the latter in German [px].
  it.each([
    [1050, 690, 620],
    [820, 543, 480],
  ])(
    "covers neither the part nor its label, and stays on the sheet, at %i by %i px, %i wide",
    (width, height, wide) => {
      const scene = layoutElevation(design, testAssessment(design));
      const view = fitView(scene.bounds, { width, height });
      const covered: string[] = [];
      for (const { path, anchor } of scene.parts) {
        if (actionsFor(design, path).length === 0) continue;
        const labels = placeLabels({ scene, view, format, selection: path });
        const own = labels.find((label) => label.path === path)?.rect;
        const keep = [...heldRects(scene, view, path), ...(own ? [own] : [])];
        const { x, y } = view.toScreen(anchor);
        const bar = placeBar({
          view,
          width: wide,
          height: 34,
          keep,
          spare: labels.flatMap((label) => (label.path === path ? [] : [label.rect])),
          at: own ?? { x, y, width: 1, height: 1 },
        });
        const rect = { ...bar, width: wide, height: 34 };
        expect(rect.x, path).toBeGreaterThanOrEqual(0);
        expect(rect.y, path).toBeGreaterThanOrEqual(40);
        expect(rect.x + wide, path).toBeLessThanOrEqual(width);
        expect(rect.y + 34, path).toBeLessThanOrEqual(height - view.foot);
        if (keep.some((one) => overlap(rect, one, 0) > 0)) covered.push(path);
      }
      expect(covered).toEqual([]);
    },
  );
});

describe("the bar", () => {
  const view = fitView({ x0: 0, y0: 0, x1: 2, y1: 1 }, { width: 600, height: 400 });
  it("lies straight under its label where nothing is there", () => {
    const label = { x: 200, y: 150, width: 120, height: 40 };
    const { x, y } = placeBar({ view, width: 200, height: 34, keep: [label], spare: [], at: label });
    expect(y === label.y + label.height + 6 || y === label.y - 34 - 6).toBe(true);
    expect(x).toBeGreaterThan(100);
    expect(x).toBeLessThan(260);
  });
  it("goes where it covers least when there is no free place", () => {
    const all = { x: 0, y: 0, width: 600, height: 400 };
    const bar = placeBar({ view, width: 200, height: 34, keep: [all], spare: [], at: all });
    expect(Number.isFinite(bar.x + bar.y)).toBe(true);
  });
});
