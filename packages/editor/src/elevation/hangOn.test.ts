import { readFileSync } from "node:fs";
import { assess } from "@tidewright/advice";
import { demoCatalogue } from "@tidewright/catalogue";
import { type Design, usualSiphon } from "@tidewright/design";
import { describe, expect, it } from "vitest";
import { layoutFrame } from "./frame.ts";
import { layoutElevation } from "./layoutElevation.ts";

const text = readFileSync(new URL("../../../../examples/waiting-room-reef.json", import.meta.url), "utf8");

function hung(wall?: "back" | "left" | "right"): Design {
  const design = JSON.parse(text) as Design;
  const { at: _, ...box } = design.overflow.box;
  const along = { value: 0, unit: "mm" };
  const siphon = usualSiphon(design);
  design.overflow = { ...design.overflow, kind: "hangOn", siphon, box: wall ? { ...box, at: { wall, along } } : box };
  return design;
}

describe("an overflow that hangs on the glass", () => {
  it.each([undefined, "back", "left"] as const)(
    "shows its tube over the rim from box to box, hung on the %s",
    (wall) => {
      const design = hung(wall);
      const { shapes, parts } = layoutElevation(design, undefined);
      const { display, box, inner } = layoutFrame(design, undefined);
      const tube = shapes.find((shape) => shape.kind === "pipe" && shape.path === "/overflow/siphon");
      if (tube?.kind !== "pipe" || inner === undefined) throw new Error("no tube");
      const first = tube.points[0];
      const last = tube.points.at(-1);
      // Analytic: up inside the inner box, over the rim by its crest, down inside the outer one, both ends at one height.
      expect(first?.x).toBeGreaterThan(inner.x0);
      expect(first?.x).toBeLessThan(inner.x1);
      expect(last?.x).toBeGreaterThan(box.x0);
      expect(last?.x).toBeLessThan(box.x1);
      expect(box.x1).toBeLessThan(display.x0);
      expect(first?.y).toBeCloseTo(last?.y ?? 0, 12);
      expect(Math.max(...tube.points.map(({ y }) => y)) + tube.bore / 2).toBeGreaterThan(display.y1);
      expect(parts.map(({ path }) => path)).toEqual(
        expect.arrayContaining(["/overflow/weir", "/overflow/box", "/overflow/siphon"]),
      );
    },
  );

  it("marks the level in each of its boxes, the one inside higher by the head of the tubes", () => {
    const design = hung();
    const assessment = assess(design, demoCatalogue, { curves: false });
    const { shapes } = layoutElevation(design, assessment);
    const markAt = (path: string) => {
      const mark = shapes.find(
        (shape) => shape.kind === "symbol" && shape.symbol === "waterLevel" && shape.path === path,
      );
      return mark?.kind === "symbol" ? mark.at.y : Number.NaN;
    };
    expect(markAt("/overflow/box")).toBeCloseTo(assessment.overflow.boxLevel, 9);
    expect(markAt("/overflow/siphon") - markAt("/overflow/box")).toBeCloseTo(assessment.overflow.siphon?.head ?? 0, 9);
  });

  it("is the same picture turned round at the right wall", () => {
    const left = layoutFrame(hung("left"), undefined);
    const right = layoutFrame(hung("right"), undefined);
    const length = left.display.x1;
    expect(right.inner?.x1).toBeCloseTo(length - (left.inner?.x0 ?? 0), 12);
    expect(right.box.x0).toBeCloseTo(length - left.box.x1, 12);
    for (const shape of layoutElevation(hung("right"), undefined).shapes)
      if ("points" in shape) for (const { x, y } of shape.points) expect(Number.isFinite(x + y)).toBe(true);
  });
});
