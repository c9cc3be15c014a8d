import { aimGrip, bodyRadius } from "./gripEdits.ts";
import { distance } from "./polyline.ts";
import type { Handle, Point, Scene, ScenePart, Shape } from "./scene.ts";
import { arcGeometry } from "./speedArc.ts";
import type { View } from "./view.ts";

/** Returns the part nearest to a point on the screen, small parts before the bodies behind them.
 *  scene, view as shown   point on the screen [px]   reach how far a finger may miss [px]   -> part, if any is near
 *  Findings: none. Throws: never.
 *  Valid: any point. Inside a tank, chamber or box the body answers where no part is within reach.
 *  Source: own construction. */
export function partAt(scene: Scene, view: View, point: Point, reach: number): ScenePart | undefined {
  const known = new Map(scene.parts.map((part) => [part.path, part]));
  let best: { part: ScenePart; cost: number } | undefined;
  for (const shape of scene.shapes) {
    const part = known.get(shape.path) ?? known.get(parentOf(shape.path));
    if (!part) continue;
    const away = awayFrom(shape, view, point);
    if (away > reach) continue;
    // A body that one is inside of counts as farther than any small part within reach.
    const cost = shape.kind === "area" ? reach + away + areaRank(shape) : away + (shape.kind === "pipe" ? 2 : 0);
    if (!best || cost < best.cost) best = { part, cost };
  }
  return best?.part;
}

/** Returns the handle nearest to a point on the screen, if one is within reach; an arc is taken at its rim, a
 *  place anywhere on the body that stands there, an aim at its tip.
 *  handles those on show   view   point on the screen [px]   reach [px]   -> handle, if any is near
 *  Findings: none. Throws: never.
 *  Valid: any point.
 *  Source: own construction. */
export function handleAt(handles: readonly Handle[], view: View, point: Point, reach: number): Handle | undefined {
  let best: Handle | undefined;
  let least = reach;
  for (const handle of handles) {
    const away = awayFromHandle(handle, view, point);
    if (away < least) {
      least = away;
      best = handle;
    }
  }
  return best;
}

function awayFromHandle(handle: Handle, view: View, point: Point): number {
  if (handle.axis === "aim") return distance(aimGrip(handle, view), point);
  const middle = distance(view.toScreen(handle.at), point);
  if (handle.axis === "arc") return Math.abs(middle - arcGeometry(view.scale).radius);
  return handle.axis === "place" ? Math.max(0, middle - bodyRadius(view.scale)) : middle;
}

const parentOf = (path: string): string => path.slice(0, path.lastIndexOf("/"));

/** Smaller bodies lie in front of larger ones. */
function areaRank(shape: Shape): number {
  if (shape.kind !== "area") return 0;
  const xs = shape.points.map((p) => p.x);
  const ys = shape.points.map((p) => p.y);
  return 10 * (Math.max(...xs) - Math.min(...xs)) * (Math.max(...ys) - Math.min(...ys));
}

function awayFrom(shape: Shape, view: View, point: Point): number {
  if (shape.kind === "symbol")
    return Math.max(0, distance(view.toScreen(shape.at), point) - (shape.size * view.scale) / 2);
  if (shape.kind === "box") {
    const a = view.toScreen({ x: shape.extent.x0, y: shape.extent.y1 });
    const b = view.toScreen({ x: shape.extent.x1, y: shape.extent.y0 });
    return Math.hypot(Math.max(a.x - point.x, 0, point.x - b.x), Math.max(a.y - point.y, 0, point.y - b.y));
  }
  const corners = shape.points.map(view.toScreen);
  if (shape.kind === "area") return inside(corners, point) ? 0 : Infinity;
  let least = Infinity;
  for (let i = 1; i < corners.length; i++) least = Math.min(least, toSegment(point, corners[i - 1]!, corners[i]!));
  return shape.kind === "pipe" ? Math.max(0, least - (shape.bore * view.scale) / 2) : least;
}

function toSegment(p: Point, a: Point, b: Point): number {
  const squared = (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
  const t =
    squared > 0 ? Math.min(1, Math.max(0, ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / squared)) : 0;
  return Math.hypot(p.x - a.x - t * (b.x - a.x), p.y - a.y - t * (b.y - a.y));
}

function inside(corners: readonly Point[], { x, y }: Point): boolean {
  let odd = false;
  corners.forEach((a, i) => {
    const b = corners[(i + 1) % corners.length]!;
    if (a.y > y !== b.y > y && x < ((b.x - a.x) * (y - a.y)) / (b.y - a.y) + a.x) odd = !odd;
  });
  return odd;
}
