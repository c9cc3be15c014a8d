import { readFileSync } from "node:fs";
import type { Design } from "@tidewright/design";
import { describe, expect, it } from "vitest";
import { handleAt, partAt } from "./hitTest.ts";
import { layoutElevation } from "./layoutElevation.ts";
import { arcGeometry } from "./speedArc.ts";
import { fitView } from "./view.ts";

const file = new URL("../../../../examples/waiting-room-reef.json", import.meta.url);
const design: Design = JSON.parse(readFileSync(file, "utf8"));
const scene = layoutElevation(design, undefined);
const view = fitView(scene.bounds, { width: 1200, height: 800 });
const anchor = (path: string) => view.toScreen(scene.parts.find((part) => part.path === path)!.anchor);
const handles = scene.parts.flatMap((part) => part.handle ?? []);

describe("a touch on the drawing", () => {
  it("finds the pump and not the chamber behind it", () => {
    expect(partAt(scene, view, anchor("/loops/0/pumps/0"), 14)?.path).toBe("/loops/0/pumps/0");
  });

  it("finds the pipe that a finger misses by a little, and the display in open water", () => {
    const { x, y } = anchor("/drains/0/run/0");
    expect(partAt(scene, view, { x: x + 20, y }, 22)?.path).toBe("/drains/0/run/0");
    expect(partAt(scene, view, view.toScreen({ x: 0.9, y: 1.2 }), 14)?.path).toBe("/display");
  });

  it("finds nothing in the empty room", () => {
    expect(partAt(scene, view, { x: 30, y: 300 }, 22)).toBeUndefined();
  });

  it("takes a pump's arc at its rim and the weir at its crest", () => {
    const pump = anchor("/loops/0/pumps/0");
    const rim = { x: pump.x, y: pump.y - arcGeometry(view.scale).radius };
    expect(handleAt(handles, view, rim, 14)?.part).toBe("/loops/0/pumps/0");
    expect(handleAt(handles, view, anchor("/overflow/weir"), 14)?.part).toBe("/overflow/weir");
  });
});
