import { readdirSync, readFileSync } from "node:fs";
import { assess } from "@tidewright/advice";
import { demoCatalogue } from "@tidewright/catalogue";
import { applyEdit, checkDesign, type Design, type Edit, readDesign } from "@tidewright/design";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { layoutPlan } from "./layoutPlan.ts";
import { drawZoneIn, gripOf, planEdits, planNudge } from "./planEdits.ts";
import type { PlanHandle } from "./planScene.ts";

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
const reef = designs.find(([name]) => name === "waiting-room-reef.json")![1];
const after = (design: Design, edits: readonly Edit[]): Design =>
  edits.reduce((one, edit) => {
    const edited = applyEdit(one, edit);
    expect(edited.problem).toBeUndefined();
    return edited.design;
  }, design);
const handleOf = (design: Design, part: string, kind: PlanHandle["kind"]): PlanHandle =>
  layoutPlan(design, undefined).handles.find((one) => one.part === part && one.kind === kind)!;

describe("the plan of a tank", () => {
  it.each(designs)("shows every drain, in-tank pump and display outlet of %s inside its sheet", (_, design) => {
    const plan = layoutPlan(design, assess(design, demoCatalogue));
    for (const kind of ["hole", "tankPump", "display", "box"] as const)
      expect(plan.parts.some((p) => p.kind === kind || (kind === "tankPump" && !design.tankPumps?.length))).toBe(true);
    expect(plan.parts.filter(({ kind }) => kind === "hole")).toHaveLength(design.drains.length);
    expect(plan.parts.filter(({ kind }) => kind === "tankPump")).toHaveLength(design.tankPumps?.length ?? 0);
    for (const { anchor } of plan.parts) {
      expect(anchor.x).toBeGreaterThanOrEqual(plan.bounds.x0 - 1e-9);
      expect(anchor.x).toBeLessThanOrEqual(plan.bounds.x1 + 1e-9);
      expect(anchor.y).toBeGreaterThanOrEqual(plan.bounds.y0 - 1e-9);
      expect(anchor.y).toBeLessThanOrEqual(plan.bounds.y1 + 1e-9);
    }
  });

  it("puts a box inside along the back wall, and one beside the tank out over its wall", () => {
    const plan = layoutPlan(reef, undefined);
    const box = plan.shapes.find((shape) => shape.path === "/overflow/box" && shape.kind === "area");
    const ys = box?.kind === "area" ? box.points.map(({ y }) => y) : [];
    // 600 mm wide, a box 150 mm deep: its front is at 450 mm (analytic).
    expect(Math.min(...ys)).toBeCloseTo(0.45, 9);
    expect(Math.max(...ys)).toBeCloseTo(0.6, 9);
    const outside = after(reef, [
      { op: "set", path: "/overflow/kind", value: "externalBox" },
      {
        op: "set",
        path: "/overflow/box/at",
        value: { wall: "back", along: { value: 500, unit: "mm" } },
      },
    ]);
    expect(layoutPlan(outside, undefined).bounds.y1).toBeCloseTo(0.75, 9);
  });

  it("puts a dragged pump where the hand is, to 5 mm, and keeps its height", () => {
    const moved = after(reef, planEdits(handleOf(reef, "/tankPumps/0", "place"), { x: 0.2013, y: 0.452 }));
    expect(moved.tankPumps?.[0]?.at).toEqual([
      { value: 200, unit: "mm" },
      { value: 450, unit: "mm" },
      { value: 430, unit: "mm" },
    ]);
  });

  it("turns a pump to the direction of the hand, to 5 degrees", () => {
    const { at } = handleOf(reef, "/tankPumps/0", "turn");
    const turned = after(reef, planEdits(handleOf(reef, "/tankPumps/0", "turn"), { x: at.x + 0.1, y: at.y + 0.0577 }));
    // atan(0.577) is 30 degrees (analytic).
    expect(turned.tankPumps?.[0]?.aim?.yaw).toEqual({ value: 30, unit: "deg" });
  });

  it("takes a box to the wall nearest to the hand", () => {
    const handle = handleOf(reef, "/overflow/box", "wall");
    expect(planEdits(handle, { x: 1.48, y: 0.3 })).toEqual([
      { op: "set", path: "/overflow/box/at", value: { wall: "right", along: { value: 125, unit: "mm" } } },
    ]);
  });

  it("draws a zone in beside those before it, by its share", () => {
    expect(layoutPlan(reef, undefined).zonesWithoutArea.map(({ path }) => path)).toEqual(["/display/zones/2"]);
    const drawn = after(reef, drawZoneIn(reef, "/display/zones/2"));
    // Zones before it take 70 % of 1500 mm (analytic).
    expect(drawn.display.zones?.[2]?.area?.[0]?.[0]).toEqual({ value: 1050, unit: "mm" });
    expect(layoutPlan(drawn, undefined).zonesWithoutArea).toEqual([]);
  });

  it("leaves every example sound wherever a hand or a key takes whatever it can take hold of", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...designs),
        fc.nat(),
        fc.double({ min: -3, max: 5, noNaN: true }),
        fc.double({ min: -3, max: 5, noNaN: true }),
        fc.boolean(),
        ([, design], pick, x, y, key) => {
          const zoned = after(
            design,
            (design.display.zones ?? []).flatMap((_, i) => drawZoneIn(design, `/display/zones/${i}`)),
          );
          const { handles } = layoutPlan(zoned, undefined);
          const handle = handles[pick % handles.length]!;
          const moved = after(
            zoned,
            key ? planNudge(handle, { x: Math.sign(x), y: 0 }, y > 0) : planEdits(handle, { x, y }),
          );
          const checked = checkDesign(moved, demoCatalogue);
          expect(checked.ok ? [] : checked.problems).toEqual([]);
          for (const one of layoutPlan(moved, undefined).handles)
            expect(Number.isFinite(gripOf(one).x + gripOf(one).y)).toBe(true);
        },
      ),
      { numRuns: 300 },
    );
  });
});
