import { readFileSync } from "node:fs";
import type { Design, Part } from "@tidewright/design";
import { toSI } from "@tidewright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { layoutFrame } from "../elevation/frame.ts";
import { polylineLength } from "../elevation/polyline.ts";
import type { Extent, Point } from "../elevation/scene.ts";
import { drawRun, previewRun, type RunEnd } from "./drawRun.ts";
import { pointOfPlace, routeBetween, solidsOf } from "./route.ts";
import { wayAround } from "./wayAround.ts";

const names = ["waiting-room-reef", "school-corridor-soft", "hotel-lobby", "first-tank-110"] as const;
const designs = names.map(
  (name): Design => JSON.parse(readFileSync(new URL(`../../../../examples/${name}.json`, import.meta.url), "utf8")),
);
const reef = designs[0]!;
const m = (value: number) => ({ value, unit: "m" });

/** A piece passes through the inside of a solid, by sampling points of it: another way than the search's own. */
const passes = (a: Point, b: Point, { x0, x1, y0, y1 }: Extent): boolean =>
  Array.from({ length: 200 }, (_, i) => (i + 0.5) / 200).some((t) => {
    const [x, y] = [a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t];
    return x > x0 + 1e-6 && x < x1 - 1e-6 && y > y0 + 1e-6 && y < y1 - 1e-6;
  });
const holds = ({ x0, x1, y0, y1 }: Extent, { x, y }: Point) => x > x0 && x < x1 && y > y0 && y < y1;
const bends = (points: readonly Point[]) => Math.max(0, points.length - 2);

/** Tanks on stands high enough for their sump, the box on any wall. */
const room = fc
  .record({
    base: fc.constantFrom(...designs),
    length: fc.integer({ min: 60, max: 300 }),
    gap: fc.integer({ min: 6, max: 60 }),
    cellar: fc.boolean(),
    kind: fc.constantFrom<Design["overflow"]["kind"]>("internalBox", "externalBox", "throughWall"),
    wall: fc.constantFrom<"back" | "left" | "right">("back", "left", "right"),
    along: fc.integer({ min: 0, max: 200 }),
  })
  .map(({ base, length, gap, cellar, kind, wall, along }): Design => {
    const sumpHeight = toSI(base.sump.height, "length");
    return {
      ...base,
      display: {
        ...base.display,
        length: m(length / 100),
        standHeight: m(cellar ? 0.7 : sumpHeight + 0.02 + gap / 100),
      },
      sump: { ...base.sump, floor: m(cellar ? -2.5 : 0.01) },
      overflow: { ...base.overflow, kind, box: { ...base.overflow.box, at: { wall, along: m(along / 100) } } },
    };
  });
const anywhere = fc.record({
  x: fc.double({ min: -1, max: 4, noNaN: true }),
  y: fc.double({ min: 0, max: 3, noNaN: true }),
});

/** Every piece is upright or level, and only those at the ends pass through what holds the end. */
function expectClear(points: readonly Point[], solids: readonly Extent[]): void {
  const [from, to] = [points[0]!, points.at(-1)!];
  points.slice(1).forEach((b, i) => {
    const a = points[i]!;
    expect(Math.min(Math.abs(a.x - b.x), Math.abs(a.y - b.y))).toBeLessThan(1e-9);
    for (const solid of solids) {
      if (!passes(a, b, solid)) continue;
      const atStart = i === 0 && holds(solid, from);
      const atEnd = i === points.length - 2 && holds(solid, to);
      expect(atStart || atEnd, `${JSON.stringify([a, b])} through ${JSON.stringify(solid)}`).toBe(true);
      expect(a.x, "a port is left upright").toBeCloseTo(b.x, 9);
    }
  });
}

describe("the way of a new line", () => {
  it("leads out of the sump, up beside the tank and over its rim", () => {
    const frame = layoutFrame(reef, undefined);
    const from = { x: 1.035, y: 0.135 };
    const way = routeBetween(frame, from, { x: 1.3, y: 1.388 });
    // By hand: under the tank's glass at 0.84 m, 0.1 m beside it and 0.06 m over its rim at 1.45 m.
    expect(way.map(({ x, y }) => [Number(x.toFixed(3)), Number(y.toFixed(3))])).toEqual([
      [1.035, 0.135],
      [1.035, 0.78],
      [1.61, 0.78],
      [1.61, 1.51],
      [1.3, 1.51],
      [1.3, 1.388],
    ]);
  });

  it("turns round with the box", () => {
    const at = (wall: "left" | "right"): Design => ({
      ...reef,
      overflow: { ...reef.overflow, box: { ...reef.overflow.box, at: { wall, along: m(0) } } },
    });
    const [left, right] = (["left", "right"] as const).map((wall) => layoutFrame(at(wall), undefined));
    const over = (x: number) => left!.display.x1 - x;
    const way = routeBetween(left!, { x: 0.9, y: 0.1 }, { x: 1, y: 1.3 });
    const back = routeBetween(right!, { x: over(0.9), y: 0.1 }, { x: over(1), y: 1.3 });
    expect(back.map(({ x }) => Number(over(x).toFixed(9)))).toEqual(way.map(({ x }) => Number(x.toFixed(9))));
  });

  it("crosses no tank, sump or box but at its ends, from any place to any, in any room", () => {
    fc.assert(
      fc.property(room, fc.nat(), fc.nat(), anywhere, anywhere, (design, a, b, fromAt, toAt) => {
        const frame = layoutFrame(design, undefined);
        const places = ["display", ...design.sump.chambers.map(({ id }) => `sump.${id}`)];
        const from = pointOfPlace(frame, places[a % places.length]!, fromAt.x, 0.05);
        const to = pointOfPlace(frame, places[b % places.length]!, toAt.x, 0.03);
        const way = routeBetween(frame, from, to);
        expectClear(way, solidsOf(frame));
        expect(bends(way)).toBeLessThanOrEqual(6);
        expect(routeBetween(frame, from, to)).toEqual(way);
      }),
      { numRuns: 300 },
    );
  });

  it("crosses none from a point of a line, and a drain leaves through the floor of its box", () => {
    fc.assert(
      fc.property(room, fc.nat(), anywhere, (design, a, at) => {
        const frame = layoutFrame(design, undefined);
        const solids = solidsOf(frame);
        const chamber = `sump.${design.sump.chambers[a % design.sump.chambers.length]!.id}`;
        const to = pointOfPlace(frame, chamber, at.x, 0.03);
        if (!solids.some((solid) => holds(solid, at))) expectClear(routeBetween(frame, at, to), solids);
        const floor = { x: (frame.box.x0 + frame.box.x1) / 2, y: frame.box.y0 };
        const drain = routeBetween(frame, floor, to, true);
        expect(drain[1]!.y).toBeLessThan(floor.y);
        expectClear(drain, solids);
      }),
      { numRuns: 300 },
    );
  });

  it("has the fewest bends that any right-angled way could have, where nothing is in the way", () => {
    fc.assert(
      fc.property(anywhere, anywhere, (a, b) => {
        const way = wayAround({ at: a }, { at: b }, [], 1);
        expect(bends(way)).toBe(Math.abs(a.x - b.x) < 1e-6 || Math.abs(a.y - b.y) < 1e-6 ? 0 : 1);
      }),
    );
  });

  it("is what the document then says: its length to 5 mm a pipe, its rise, an elbow for every bend", () => {
    fc.assert(
      fc.property(room, fc.nat(), fc.nat(), anywhere, anywhere, (design, a, b, fromAt, toAt) => {
        const chambers = design.sump.chambers.map(({ id }) => `sump.${id}`);
        const from: RunEnd = { kind: "place", place: chambers[a % chambers.length]!, at: fromAt };
        const to: RunEnd = { kind: "place", place: ["display", ...chambers][b % (chambers.length + 1)]!, at: toAt };
        const way = previewRun(design, from, to);
        const outcome = drawRun(design, from, to);
        if (!outcome.ok) return;
        const [edit] = outcome.edits;
        if (edit?.op !== "insert") throw new Error("no loop");
        const { run } = edit.value as { run: Part[] };
        const pipes = run.flatMap((part) => (part.kind === "pipe" ? [part] : []));
        const elbows = run.filter((part) => part.kind === "fitting" && part.fitting === "elbow90");
        const length = pipes.reduce((sum, part) => sum + toSI(part.length, "length"), 0);
        const rise = pipes.reduce((sum, part) => sum + (part.rise ? toSI(part.rise, "length") : 0), 0);
        const step = 0.0065 * way.length + 0.02 * bends(way);
        expect(Math.abs(length - polylineLength(way))).toBeLessThan(step);
        expect(Math.abs(rise - (way.at(-1)!.y - way[0]!.y))).toBeLessThan(step);
        expect(elbows.length).toBe(bends(way));
      }),
      { numRuns: 300 },
    );
  });
});
