import type { Design, Edit } from "@tidewright/design";
import { metres } from "../elevation/frame.ts";
import { placeStep, turnStep, typedPlace } from "../elevation/placeSteps.ts";
import type { Point } from "../elevation/scene.ts";
import type { PlanHandle } from "./planScene.ts";

/** Returns where a handle's grip is on the plan [m].
 *  handle   -> point
 *  Source: analytic. */
export function gripOf(handle: PlanHandle): Point {
  if (handle.kind !== "turn") return handle.at;
  const { at, reach, yaw } = handle;
  return { x: at.x + reach * Math.cos(yaw), y: at.y + reach * Math.sin(yaw) };
}

/** Returns the edit that puts a handle's grip at a point: a place to the next 5 mm (1/8 in) inside its bounds, an aim to
 *  the next 5 degrees, a box to the wall it is nearest to.
 *  handle as it was when taken   to where the grip is wished [m]   -> edits of the document
 *  Source: own construction; steps common practice, no source. */
export function planEdits(handle: PlanHandle, to: Point): Edit[] {
  switch (handle.kind) {
    case "place": {
      const { within, unit, height, path } = handle;
      const place = [
        typedPlace(Math.min(within.x1, Math.max(within.x0, to.x)), unit),
        typedPlace(Math.min(within.y1, Math.max(within.y0, to.y)), unit),
      ];
      return [{ op: "set", path, value: height === undefined ? place : [...place, height] }];
    }
    case "turn": {
      const angle = (Math.atan2(to.y - handle.at.y, to.x - handle.at.x) * 180) / Math.PI;
      const turned = ((Math.round(angle / turnStep) * turnStep + 540) % 360) - 180;
      // -0 would be written as 0 anyway, but not compare as such.
      return [
        { op: "set", path: handle.path, value: { yaw: { value: turned || 0, unit: "deg" }, pitch: handle.pitch } },
      ];
    }
    case "wall": {
      const { display, length, unit, path } = handle;
      const away = { back: display.y1 - to.y, left: to.x - display.x0, right: display.x1 - to.x } as const;
      const wall = (["back", "left", "right"] as const).reduce((best, one) => (away[one] < away[best] ? one : best));
      const [middle, end] = wall === "back" ? [to.x, display.x1] : [to.y, display.y1];
      const along = Math.min(Math.max(0, middle - length / 2), Math.max(0, end - length));
      return [{ op: "set", path, value: { wall, along: typedPlace(along, unit) } }];
    }
  }
}

/** Returns the edits of an arrow key at a handle: one step, or ten with Shift; a box goes along its wall, an aim turns.
 *  handle   way as a unit step (x along, y back)   large   -> edits
 *  Source: common practice, no source. */
export function planNudge(handle: PlanHandle, way: Point, large: boolean): Edit[] {
  const step = large ? placeStep * 10 : placeStep * 2;
  if (handle.kind === "turn") {
    const by = (way.x + way.y) * (large ? 9 : 1) * turnStep;
    const yaw = handle.yaw - (by * Math.PI) / 180;
    return planEdits(handle, { x: handle.at.x + Math.cos(yaw), y: handle.at.y + Math.sin(yaw) });
  }
  if (handle.kind === "wall") {
    const sideways = handle.wall === "back" ? { x: way.x, y: 0 } : { x: 0, y: way.y };
    return planEdits(handle, { x: handle.at.x + sideways.x * step, y: handle.at.y + sideways.y * step });
  }
  return planEdits(handle, { x: handle.at.x + way.x * step, y: handle.at.y + way.y * step });
}

/** Returns the edit that gives a zone an area: its share of the display, beside those that are there already.
 *  design   path of the zone   -> edits
 *  Source: own construction. */
export function drawZoneIn(design: Design, path: string): Edit[] {
  const zones = design.display.zones ?? [];
  const index = Number(/^\/display\/zones\/(\d+)$/.exec(path)?.[1] ?? "-1");
  const zone = zones[index];
  if (zone === undefined) return [];
  const { unit } = design.display.length;
  const [length, width] = [metres(design.display.length), metres(design.display.width)];
  const share = zone.share ?? 1 / zones.length;
  const before = zones.slice(0, index).reduce((sum, one) => sum + (one.share ?? 1 / zones.length), 0);
  const x0 = length * Math.min(before, 1 - Math.min(share, 1));
  const value = [
    [typedPlace(x0, unit), typedPlace(0, unit)],
    [typedPlace(Math.min(length, x0 + length * share), unit), typedPlace(width * 0.7, unit)],
  ];
  return [{ op: "set", path: `${path}/area`, value }];
}
