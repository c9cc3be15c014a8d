import { readdirSync, readFileSync } from "node:fs";
import type { Design } from "@tidewright/design";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boxPlace } from "../plan/boxPlace.ts";
import { layoutFrame, metres } from "./frame.ts";
import { editsFor } from "./handleEdits.ts";
import { layoutElevation } from "./layoutElevation.ts";
import { mirroredPart, mirroredShape } from "./mirrored.ts";
import type { Point, Scene, Shape } from "./scene.ts";
import { testAssessment } from "./testAssessment.ts";

const folder = new URL("../../../../examples/", import.meta.url);
const designs = ["", "golden/"].flatMap((sub) =>
  readdirSync(new URL(sub || ".", folder))
    .filter((name) => name.endsWith(".json"))
    .map((name): [string, Design] => [name, JSON.parse(readFileSync(new URL(sub + name, folder), "utf8"))])
    .filter(([, design]) => "display" in design),
);
const reef = designs.find(([name]) => name === "waiting-room-reef.json")![1];

type Wall = "back" | "left" | "right";
type Kind = Design["overflow"]["kind"];
const mm = (value: number) => ({ value, unit: "mm" });
/** The design with its box on a wall, its near end so far along. */
const withBox = (design: Design, wall: Wall, along = 0, kind: Kind = design.overflow.kind): Design => ({
  ...design,
  overflow: { ...design.overflow, kind, box: { ...design.overflow.box, at: { wall, along: mm(along) } } },
});
/** Without what has a left and a right of its own: pumps with a place, outlets called after a side. */
const withoutSides = (design: Design): Design => {
  const { tankPumps: _pumps, ...rest } = design;
  return JSON.parse(JSON.stringify(rest).replace(/"note":"[^"]*"/g, '"note":""'));
};
const pointsOf = (shape: Shape): readonly Point[] => {
  if (shape.kind === "symbol") return [shape.at];
  if (shape.kind !== "box") return shape.points;
  const { x0, x1, y0, y1 } = shape.extent;
  return [
    { x: x0, y: y0 },
    { x: x1, y: y1 },
  ];
};
const rounded = (value: unknown) =>
  JSON.parse(JSON.stringify(value, (_, one) => (typeof one === "number" ? Number(one.toFixed(9)) + 0 : one)));
const anchorOf = (scene: Scene, path: string) => scene.parts.find((part) => part.path === path)!.anchor;

describe("the elevation of a box at", () => {
  it("the right wall has box, weir and inlets there, and everything that the water runs to left of them", () => {
    const design = withBox(reef, "right");
    const length = metres(reef.display.length);
    const width = metres(reef.overflow.box.width);
    const scene = layoutElevation(design, testAssessment(design));
    const water = scene.shapes.find((shape) => "ink" in shape && shape.ink === "deepWater")!;
    const xs = pointsOf(water).map(({ x }) => x);
    expect(Math.max(...xs)).toBeCloseTo(length, 9);
    expect(Math.min(...xs)).toBeCloseTo(length - width, 9);
    expect(anchorOf(scene, "/overflow/weir").x).toBeCloseTo(length - width, 9);
    reef.drains.forEach((_, i) => {
      const { x } = anchorOf(scene, `/drains/${i}`);
      expect(x).toBeGreaterThan(length - width);
      expect(x).toBeLessThan(length);
    });
    // The chambers follow each other from the box to the left; the return rises beside the left wall.
    const chambers = reef.sump.chambers.map((_, i) => anchorOf(scene, `/sump/chambers/${i}`).x);
    expect(chambers).toEqual([...chambers].sort((a, b) => b - a));
    expect(scene.bounds.x0).toBeLessThan(-0.09);
    expect(Math.max(...scene.dimensions.filter(({ side }) => side === "right").map(({ a }) => a.x))).toBeCloseTo(
      length,
      9,
    );
    expect(scene.dimensions.some(({ side }) => side === "left")).toBe(false);
  });

  it.each(designs)("the right wall is that at the left wall seen from behind, for %s", (_, whole) => {
    const design = withoutSides(whole);
    const length = metres(design.display.length);
    for (const kind of ["internalBox", "externalBox", "throughWall"] as const) {
      const [left, right] = (["left", "right"] as const).map((wall) => {
        const placed = withBox(design, wall, 0, kind);
        return layoutElevation(placed, testAssessment(placed));
      }) as [Scene, Scene];
      expect(rounded(right.shapes)).toEqual(rounded(left.shapes.map((shape) => mirroredShape(shape, length))));
      expect(rounded(right.parts)).toEqual(rounded(left.parts.map((part) => mirroredPart(part, length))));
      // Turned round twice, it is what it was.
      expect(rounded(right.shapes.map((shape) => mirroredShape(shape, length)))).toEqual(rounded(left.shapes));
    }
  });

  it("the back wall stands as far along as the document says, and where the plan has it", () => {
    const kinds = fc.constantFrom<Kind>("internalBox", "externalBox", "throughWall");
    fc.assert(
      fc.property(
        fc.constantFrom(...designs.map(([, design]) => design)),
        fc.constantFrom<Wall>("back", "left", "right"),
        kinds,
        fc.integer({ min: 0, max: 4000 }),
        (base, wall, kind, along) => {
          const design = withBox(base, wall, along, kind);
          const { box } = layoutFrame(design, undefined);
          const { extent } = boxPlace(design);
          expect(box.x0).toBeCloseTo(extent.x0, 9);
          expect(box.x1).toBeCloseTo(extent.x1, 9);
        },
      ),
      { numRuns: 200 },
    );
  });

  it.each(designs)(
    "any wall draws every number of %s finite, and keeps pumps in the tank where they are",
    (_, base) => {
      for (const wall of ["back", "left", "right"] as const)
        for (const kind of ["internalBox", "externalBox", "throughWall"] as const)
          for (const along of wall === "back" ? [0, 300, 4000] : [0]) {
            const design = withBox(base, wall, along, kind);
            const scene = layoutElevation(design, testAssessment(design));
            for (const shape of scene.shapes)
              for (const { x, y } of pointsOf(shape)) expect(Number.isFinite(x + y), shape.path).toBe(true);
            design.tankPumps?.forEach((pump, i) => {
              const x = Math.min(Math.max(metres(pump.at[0]), 0.03), metres(design.display.length) - 0.03);
              expect(anchorOf(scene, `/tankPumps/${i}`).x).toBeCloseTo(x, 9);
            });
          }
    },
  );

  it("the right wall lengthens a level pipe by a pull the way that its water runs", () => {
    for (const wall of ["left", "right"] as const) {
      const scene = layoutElevation(withBox(reef, wall), undefined);
      const { flow } = layoutFrame(withBox(reef, wall), undefined);
      const pipes = scene.parts.filter(({ handle, path }) => handle?.axis === "x" && path.startsWith("/loops"));
      expect(pipes.length).toBeGreaterThan(0);
      for (const { path, handle } of pipes) {
        const drawn = scene.shapes.find((shape) => shape.kind === "pipe" && shape.path === path);
        if (drawn?.kind !== "pipe" || handle === undefined) continue;
        const [first] = handle.targets;
        const way = Math.sign(drawn.points.at(-1)!.x - drawn.points[0]!.x);
        if (way === 0) continue;
        const [edit] = editsFor(handle, 0.1 * way);
        expect((edit!.value as { value: number }).value, `${wall} ${flow} ${path}`).toBeGreaterThan(first.value);
      }
    }
  });

  it("the right wall leaves the document's places alone: a pump pulled to the right goes to the right", () => {
    const scene = layoutElevation(withBox(reef, "right"), undefined);
    const place = scene.parts.find(({ path }) => path === "/tankPumps/0")!.grips!.find(({ axis }) => axis === "place");
    expect(place).toMatchObject({ along: { path: "/tankPumps/0/at/0", sign: 1 }, up: { sign: 1 } });
  });
});
