import { readdirSync, readFileSync } from "node:fs";
import type { Design, Run } from "@tidewright/design";
import { formatQuantity, unitSystems } from "@tidewright/units";
import { describe, expect, it } from "vitest";
import { layoutElevation } from "./layoutElevation.ts";
import { dimensionRects, placeDimensions } from "./placeDimensions.ts";
import { flagRects, placeFlags } from "./placeFlags.ts";
import { overlap, placeLabels } from "./placeLabels.ts";
import type { Format, Point, Scene, Shape } from "./scene.ts";
import { testAssessment } from "./testAssessment.ts";
import { fitView } from "./view.ts";

const folder = new URL("../../../../examples/", import.meta.url);
const designs: [string, Design][] = ["", "golden/"].flatMap((sub) =>
  readdirSync(new URL(sub || ".", folder))
    .filter((name) => name.endsWith(".json"))
    .map((name): [string, Design] => [name, JSON.parse(readFileSync(new URL(sub + name, folder), "utf8"))])
    .filter(([, design]) => "display" in design),
);
const format: Format = (si, dimension) => formatQuantity(si, dimension, unitSystems.metric[dimension]);

const pointsOf = (shape: Shape): readonly Point[] => {
  if (shape.kind === "symbol") return [shape.at];
  if (shape.kind === "box")
    return [
      { x: shape.extent.x0, y: shape.extent.y0 },
      { x: shape.extent.x1, y: shape.extent.y1 },
    ];
  return shape.points;
};
const inked = (scene: Scene, path: string, ink: string) =>
  scene.shapes.filter((shape) => "ink" in shape && shape.path === path && shape.ink === ink);
const pathsOf = (run: Run, base: string): string[] =>
  run.flatMap((part, i) => [
    `${base}/${i}`,
    ...(part.kind === "tee" ? part.branches.flatMap((branch, k) => pathsOf(branch, `${base}/${i}/branches/${k}`)) : []),
  ]);
const example = (name: string): Design => designs.find(([file]) => file === name)![1];

describe("side elevation", () => {
  it("has examples to draw", () => {
    expect(designs.length).toBeGreaterThanOrEqual(4);
  });

  // Expected by geometry: the drawing's metres are the design's metres.
  it("draws a tank of 1500 by 600 mm on a stand of 850 mm 1.5 units long, 0.6 high, 0.85 up", () => {
    const scene = layoutElevation(example("waiting-room-reef.json"), undefined);
    const glass = inked(scene, "/display", "glass")[0]!;
    const inner = pointsOf(glass).slice(5);
    expect(Math.max(...inner.map((p) => p.x)) - Math.min(...inner.map((p) => p.x))).toBeCloseTo(1.5, 9);
    expect(Math.min(...inner.map((p) => p.y))).toBeCloseTo(0.85, 9);
    expect(Math.max(...pointsOf(glass).map((p) => p.y))).toBeCloseTo(1.45, 9);
  });

  it("shows water at the computed levels", () => {
    const design = example("waiting-room-reef.json");
    const assessment = testAssessment(design);
    const scene = layoutElevation(design, assessment);
    const level = (path: string) => pointsOf(inked(scene, path, "surface")[0]!)[0]!.y;
    expect(level("/display")).toBe(assessment.overflow.displayLevel);
    expect(level("/overflow/box")).toBe(assessment.overflow.boxLevel);
    assessment.sump.chambers.forEach((chamber) => {
      expect(level(chamber.path)).toBe(chamber.level);
    });
  });

  it("shows the levels of a film's moment in place of the computed ones", () => {
    const design = example("waiting-room-reef.json");
    const chambers = design.sump.chambers.map((_, i) => 0.1 + 0.01 * i);
    const scene = layoutElevation(design, testAssessment(design), { display: 1.3, box: 1.2, chambers });
    const level = (path: string) => pointsOf(inked(scene, path, "surface")[0]!)[0]!.y;
    expect([level("/display"), level("/overflow/box")]).toEqual([1.3, 1.2]);
    expect(design.sump.chambers.map((_, i) => level(`/sump/chambers/${i}`))).toEqual(chambers);
  });

  it.each(designs)("draws every part of %s, and lets each be reached", (_, design) => {
    const scene = layoutElevation(design, testAssessment(design));
    const reachable = new Set(scene.parts.map((part) => part.path));
    const drawn = new Set(scene.shapes.map((shape) => shape.path));
    const expected = [
      ...design.drains.flatMap((drain, i) => [`/drains/${i}`, ...pathsOf(drain.run, `/drains/${i}/run`)]),
      ...design.loops.flatMap((loop, i) => [
        ...loop.pumps.map((_, k) => `/loops/${i}/pumps/${k}`),
        ...(loop.suction ? pathsOf(loop.suction, `/loops/${i}/suction`) : []),
        ...pathsOf(loop.run, `/loops/${i}/run`),
      ]),
      ...(design.tankPumps ?? []).map((_, i) => `/tankPumps/${i}`),
      ...design.sump.chambers.map((_, i) => `/sump/chambers/${i}`),
      "/display",
      "/overflow/weir",
      "/overflow/box",
      "/sump",
    ];
    expect(expected.filter((path) => !reachable.has(path))).toEqual([]);
    // An outlet may be no more than the open end of the pipe before it.
    const open = expected.filter((path) => !drawn.has(path));
    expect(open.filter((path) => !scene.parts.find((part) => part.path === path)!.name.startsWith("outlet"))).toEqual(
      [],
    );
    expect(reachable.size).toBe(scene.parts.length);
  });

  it.each(designs)("keeps every number of %s finite, with and without an assessment", (_, design) => {
    for (const scene of [layoutElevation(design, undefined), layoutElevation(design, testAssessment(design))]) {
      for (const shape of scene.shapes)
        for (const { x, y } of pointsOf(shape))
          expect([shape.path, Number.isFinite(x + y)]).toEqual([shape.path, true]);
      expect(Object.values(scene.bounds).every(Number.isFinite)).toBe(true);
      for (const { anchor } of scene.parts) expect(Number.isFinite(anchor.x + anchor.y)).toBe(true);
    }
  });

  it.each(designs)("ends every pipe of %s where the next one begins", (_, design) => {
    const scene = layoutElevation(design, testAssessment(design));
    const runs = new Map<string, Shape[]>();
    for (const shape of scene.shapes) {
      if (shape.kind !== "pipe" || shape.square || !/\/run\/\d+$/.test(shape.path)) continue;
      const run = shape.path.replace(/\/\d+$/, "");
      runs.set(run, [...(runs.get(run) ?? []), shape]);
    }
    for (const pipes of runs.values())
      pipes.slice(1).forEach((pipe, i) => {
        const end = pointsOf(pipes[i]!).at(-1)!;
        const start = pointsOf(pipe)[0]!;
        expect(Math.hypot(end.x - start.x, end.y - start.y)).toBeLessThan(1e-6);
      });
  });

  it.each(designs)(
    "lets no label of %s lie over another, a flag or a dimension at 1440, 768 and 390 px",
    (_, design) => {
      const scene = layoutElevation(design, testAssessment(design));
      for (const [width, height] of [
        [1440, 820],
        [768, undefined],
        [390, undefined],
      ] as const) {
        const view = fitView(scene.bounds, { width, dimensions: true, ...(height ? { height } : {}) });
        const keepFree = [
          ...flagRects(placeFlags(scene, view)),
          ...dimensionRects(placeDimensions(scene, view, format)),
        ];
        const labels = placeLabels({ scene, view, format, keepFree });
        expect(labels.length).toBeGreaterThan(width === 390 ? 2 : 4);
        labels.forEach(({ path, rect }, i) => {
          for (const other of labels.slice(i + 1))
            expect([path, other.path, overlap(rect, other.rect, 0)]).toEqual([path, other.path, 0]);
          for (const other of keepFree) expect(overlap(rect, other, 0)).toBe(0);
          expect(rect.x).toBeGreaterThanOrEqual(0);
          expect(rect.x + rect.width).toBeLessThanOrEqual(width);
        });
      }
    },
  );

  it("labels the part in hand even where its rank would leave it out", () => {
    const design = example("waiting-room-reef.json");
    const scene = layoutElevation(design, testAssessment(design));
    const view = fitView(scene.bounds, { width: 390 });
    const selection = "/loops/0/run/0";
    expect(placeLabels({ scene, view, format, selection }).find((label) => label.path === selection)?.emphasis).toBe(
      true,
    );
  });

  it("keeps labels where they were while a number changes", () => {
    const design = example("waiting-room-reef.json");
    const scene = layoutElevation(design, testAssessment(design));
    const view = fitView(scene.bounds, { width: 1440, height: 820 });
    const first = placeLabels({ scene, view, format });
    const previous = new Map(first.map((label) => [label.path, label.offset]));
    const moved: Format = (si, dimension) => format(si * 1.01, dimension);
    const second = placeLabels({ scene, view, format: moved, previous });
    const still = second.filter((label) => {
      const before = previous.get(label.path);
      return before && Math.hypot(before.x - label.offset.x, before.y - label.offset.y) < 9;
    });
    expect(still.length / first.length).toBeGreaterThan(0.85);
  });

  it("is walked through in the order in which the water flows", () => {
    const scene = layoutElevation(example("waiting-room-reef.json"), undefined);
    const paths = scene.parts.map((part) => part.path);
    const wanted = [
      "/display",
      "/overflow/weir",
      "/drains/0",
      "/drains/0/run/0",
      "/drains/1",
      "/sump/chambers/0",
      "/sump/chambers/2",
      "/loops/0/pumps/0",
      "/loops/0/run/0",
      "/loops/0/run/4",
      "/loops/0/run/4/branches/0/0",
      "/loops/0/run/4/branches/1/0",
      "/tankPumps/0",
    ];
    expect(wanted.map((path) => paths.indexOf(path))).toEqual(
      wanted.map((path) => paths.indexOf(path)).sort((a, b) => a - b),
    );
    expect(wanted.every((path) => paths.includes(path))).toBe(true);
  });

  it("puts each finding at its part, worst first", () => {
    const design = example("waiting-room-reef.json");
    const scene = layoutElevation(design, testAssessment(design));
    expect(scene.flags.map((flag) => flag.number)).toEqual([1, 2, 3, 4, 5]);
    expect(scene.flags[0]!.path).toBe(`/drains/${design.drains.length - 1}`);
    expect(scene.flags[1]!.path.startsWith("/loops/0")).toBe(true);
  });
});
