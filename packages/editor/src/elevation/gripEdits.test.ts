import { readFileSync } from "node:fs";
import { applyEdit, type Design } from "@tidewright/design";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { aimGrip, bodyRadius, pulledEdits, steeredEdits } from "./gripEdits.ts";
import { handleAt } from "./hitTest.ts";
import { layoutElevation } from "./layoutElevation.ts";
import type { AimHandle, Handle, PlaceHandle } from "./scene.ts";
import { shownHandles } from "./shownHandles.ts";
import { arcGeometry } from "./speedArc.ts";
import { fitView } from "./view.ts";

const reef: Design = JSON.parse(
  readFileSync(new URL("../../../../examples/waiting-room-reef.json", import.meta.url), "utf8"),
);
const path = "/tankPumps/0";
const sheet = (design: Design, width = 1200) => {
  const scene = layoutElevation(design, undefined);
  const view = fitView(scene.bounds, { width, height: 800 });
  const grips = scene.parts.find((part) => part.path === path)!.grips!;
  return {
    scene,
    view,
    place: grips.find(({ axis }) => axis === "place") as PlaceHandle,
    aim: grips.find(({ axis }) => axis === "aim") as AimHandle,
  };
};
const aimed = (yaw: number, pitch: number): Design => ({
  ...reef,
  tankPumps: [
    { ...reef.tankPumps![0]!, aim: { yaw: { value: yaw, unit: "deg" }, pitch: { value: pitch, unit: "deg" } } },
  ],
});
const after = (design: Design, handle: Handle, dx: number, dy: number) => {
  const { view } = sheet(design);
  return pulledEdits(handle, view, { x: 400, y: 300 }, { x: 400 + dx, y: 300 + dy }).reduce(
    (one, edit) => applyEdit(one, edit).design,
    design,
  ).tankPumps![0]!;
};

describe("a pump in the tank, held in the elevation", () => {
  it("goes along and up by as much as the pointer, and keeps its place across", () => {
    const { view, place } = sheet(reef);
    const pump = reef.tankPumps![0]!;
    const moved = after(reef, place, 0.2 * view.scale, -0.1 * view.scale);
    expect(moved.at[0].value).toBe(pump.at[0].value + 200);
    expect(moved.at[2].value).toBe(pump.at[2].value + 100);
    expect(moved.at[1]).toEqual(pump.at[1]);
  });

  it("stays in the tank however far it is pulled", () => {
    const { view, place } = sheet(reef);
    fc.assert(
      fc.property(fc.integer({ min: -5000, max: 5000 }), fc.integer({ min: -5000, max: 5000 }), (dx, dy) => {
        const { at } = after(reef, place, dx, dy);
        expect(at[0].value).toBeGreaterThanOrEqual(0);
        expect(at[0].value).toBeLessThanOrEqual(reef.display.length.value);
        expect(at[2].value).toBeGreaterThanOrEqual(0);
        expect(at[2].value).toBeLessThanOrEqual(reef.display.height.value);
      }),
    );
    expect(view.scale).toBeGreaterThan(0);
  });

  it("is turned up and down by its aim's grip, which follows the pointer to the next five degrees", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -180, max: 180 }),
        fc.integer({ min: -18, max: 18 }),
        fc.integer({ min: -18, max: 18 }),
        (yaw, before, wished) => {
          const [from, to] = [sheet(aimed(yaw, before * 5)), sheet(aimed(yaw, wished * 5))];
          const start = aimGrip(from.aim, from.view);
          const end = aimGrip(to.aim, from.view);
          const [edit] = pulledEdits(from.aim, from.view, start, end);
          expect(edit).toEqual({
            op: "set",
            path: `${path}/aim`,
            value: { yaw: { value: yaw, unit: "deg" }, pitch: { value: wished * 5, unit: "deg" } },
          });
        },
      ),
    );
  });

  it("keeps an aim upright where it is pulled past it, and its turn about the upright as typed", () => {
    const { aim, view } = sheet(aimed(0, 80));
    const grip = aimGrip(aim, view);
    const [edit] = pulledEdits(aim, view, grip, { x: grip.x - 200, y: grip.y - 40 });
    expect(edit!.value).toEqual({ yaw: { value: 0, unit: "deg" }, pitch: { value: 90, unit: "deg" } });
  });

  it("is steered by steps of 10 mm and 5 degrees, five and nine times that with Shift", () => {
    const { place, aim } = sheet(aimed(180, 0));
    const at = reef.tankPumps![0]!.at;
    const value = (edits: ReturnType<typeof steeredEdits>) => edits.map((edit) => edit.value);
    expect(value(steeredEdits(place, { x: 1, y: 0 }, false))).toEqual([{ ...at[0], value: at[0].value + 10 }]);
    expect(value(steeredEdits(place, { x: 0, y: -1 }, true))).toEqual([{ ...at[2], value: at[2].value - 50 }]);
    const pitches = ([x, y, large]: [number, number, boolean]) =>
      (steeredEdits(aim, { x, y }, large)[0]!.value as { pitch: { value: number } }).pitch.value;
    expect([pitches([0, 1, false]), pitches([0, -1, false]), pitches([0, 1, true])]).toEqual([5, -5, 45]);
  });

  it.each([1200, 820, 390])("is told from its speed and its aim by where a fingertip comes down, at %i px", (width) => {
    const { scene, view, place, aim } = sheet(aimed(0, 0), width);
    const handles = shownHandles(scene, view, path);
    const at = view.toScreen(place.at);
    const { radius } = arcGeometry(view.scale);
    expect(handleAt(handles, view, at, 22)).toMatchObject({ axis: "place" });
    expect(bodyRadius(view.scale)).toBeLessThan(radius);
    expect(handleAt(handles, view, { x: at.x - radius, y: at.y }, 22)).toMatchObject({ axis: "arc" });
    expect(handleAt(handles, view, aimGrip(aim, view), 22)).toMatchObject({ axis: "aim" });
    // Not in hand it can be moved at once, but on a phone a finger that scrolls leaves it alone.
    expect(shownHandles(scene, view, undefined).some((one) => one.part === path)).toBe(width >= 560);
  });
});
