import { metres } from "./frame.ts";
import { editsFor, type SetEdit } from "./handleEdits.ts";
import { placeStep, turnStep, typedPlace } from "./placeSteps.ts";
import type { AimHandle, BoundTarget, Handle, PlaceHandle, Point } from "./scene.ts";
import { angleShare, arcGeometry } from "./speedArc.ts";
import type { View } from "./view.ts";

/** Least distance of an aim's grip from the arc within it [px]: a fingertip's half. */
const clear = 24;
/** Length of the line that shows an aim [m]; it says a direction and no reach. */
const aimLength = 0.16;

/** Returns the radius on the screen within which a pump in the tank is taken to be moved [px].
 *  scale of the view [px/m]   -> radius [px]
 *  Findings: none. Throws: never.
 *  Valid: any scale; a third less than the arc of its speed.
 *  Source: own construction. */
export const bodyRadius = (scale: number): number => arcGeometry(scale).radius * 0.66;

/** Returns where the grip of an aim is on the screen: the way it points as seen from the front, outside the arc of the speed.
 *  handle, view   -> point [px]
 *  Findings: none. Throws: never.
 *  Valid: any aim; one that points across the tank more than 60 degrees is drawn as if at 60.
 *  Source: analytic, parallel projection. */
export function aimGrip({ at, pitch, across }: AimHandle, view: View): Point {
  const { x, y } = view.toScreen(at);
  const reach = Math.max(aimLength * view.scale, arcGeometry(view.scale).radius + clear);
  const angle = Math.atan2(Math.sin(pitch), Math.cos(pitch) * across);
  return { x: x + Math.cos(angle) * reach, y: y - Math.sin(angle) * reach };
}

/** Returns the edits for a handle after the pointer that took it has moved.
 *  handle as it was when taken   view   from, point where it was taken and where it is [px]   -> edits of the document
 *  Findings: none. Throws: never.
 *  Valid: any move; what is written stays within the handle's bounds.
 *  Source: own construction. */
export function pulledEdits(handle: Handle, view: View, from: Point, point: Point): SetEdit[] {
  const by = { x: point.x - from.x, y: from.y - point.y };
  switch (handle.axis) {
    case "x":
      return editsFor(handle, by.x / view.scale);
    case "y":
      return editsFor(handle, by.y / view.scale);
    case "arc": {
      const at = view.toScreen(handle.at);
      return editsFor(handle, angleShare(point.x - at.x, at.y - point.y) - handle.targets[0].value);
    }
    case "place":
      return placeEdits(handle, { x: by.x / view.scale, y: by.y / view.scale });
    case "aim": {
      // The grip keeps its way from the finger that took it.
      const [at, grip] = [view.toScreen(handle.at), aimGrip(handle, view)];
      return [aimEdit(handle, pitchTowards(handle, grip.x + by.x - at.x, at.y - grip.y + by.y))];
    }
  }
}

/** Returns the edits that move a place: to the next 5 mm (1/8 in), inside its bounds. A direction in which nothing moves
 *  keeps what was typed.
 *  handle as it was when taken   by way to the right and up [m]   -> edits
 *  Findings: none. Throws: never.
 *  Valid: any move.
 *  Source: own construction; step common practice, no source. */
function placeEdits({ along, up }: PlaceHandle, by: Point): SetEdit[] {
  const edit = (target: BoundTarget, way: number): SetEdit => {
    const { path, unit, value, sign, min, max } = target;
    if (way === 0) return { op: "set", path, value: { value, unit } };
    const wished = Math.min(max, Math.max(min, metres({ value, unit }) + sign * way));
    return { op: "set", path, value: typedPlace(wished, unit) };
  };
  return [edit(along, by.x), edit(up, by.y)];
}

/** Returns the edits of an arrow key at a place or an aim: 10 mm or 5 degrees; 50 mm or 45 degrees with Shift.
 *  handle   way as a unit step (x to the right, y up)   large with Shift held   -> edits; none for any other handle
 *  Findings: none. Throws: never.
 *  Valid: any handle.
 *  Source: common practice, no source. */
export function steeredEdits(handle: Handle, way: Point, large: boolean): SetEdit[] {
  if (handle.axis === "place") {
    const step = placeStep * (large ? 10 : 2);
    const [along, up] = placeEdits(handle, { x: way.x * step, y: way.y * step });
    return way.x === 0 ? [up!] : [along!];
  }
  if (handle.axis !== "aim") return [];
  return [aimEdit(handle, handle.pitch + ((way.x + way.y) * turnStep * (large ? 9 : 1) * Math.PI) / 180)];
}

/** Angle above the horizontal of an aim whose front view points along a direction; beyond the upright it stays upright. */
function pitchTowards({ across }: AimHandle, dx: number, dy: number): number {
  return Math.atan2(dy * Math.abs(across), Math.max(0, dx * Math.sign(across)));
}

function aimEdit({ path, yaw }: AimHandle, pitch: number): SetEdit {
  const degrees = Math.round((pitch * 180) / Math.PI / turnStep) * turnStep;
  // -0 would be written as 0 anyway, but not compare as such.
  const value = Math.min(90, Math.max(-90, degrees)) || 0;
  return { op: "set", path, value: { yaw, pitch: { value, unit: "deg" } } };
}
