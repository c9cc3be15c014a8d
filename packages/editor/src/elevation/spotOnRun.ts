import type { RunSpot } from "../edits/insertPart.ts";
import { distance, pointAlong, polylineLength } from "./polyline.ts";
import type { PipeShape, Point, Scene } from "./scene.ts";
import type { View } from "./view.ts";

/** A spot on a run as the drawing shows it: where it is, and which way the water goes there. */
export interface DrawnSpot extends RunSpot {
  readonly at: Point;
  /** Direction of flow, counter-clockwise from +x [rad]. */
  readonly angle: number;
  readonly bore: number;
}

/** Returns the spot on a run that is nearest to a point of the picture, if one is within reach. A header belongs to its tee
 *  as a whole and has no spots of its own.
 *  scene, view   point [px]   reach [px]   -> spot
 *  Source: analytic, nearest point of a polyline. */
export function spotOnRun(scene: Scene, view: View, point: Point, reach: number): DrawnSpot | undefined {
  let best: { away: number; pipe: PipeShape; along: number } | undefined;
  for (const shape of scene.shapes) {
    if (shape.kind !== "pipe" || !/\/(run|suction|branches\/\d+)\/\d+$/.test(shape.path)) continue;
    let along = 0;
    for (let i = 1; i < shape.points.length; i += 1) {
      const [a, b] = [shape.points[i - 1]!, shape.points[i]!];
      const long = distance(a, b);
      const t = shareAlong(view.toScreen(a), view.toScreen(b), point);
      const near = { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
      const away = Math.max(0, distance(view.toScreen(near), point) - (shape.bore * view.scale) / 2);
      if (away <= reach && (best === undefined || away < best.away - 0.01))
        best = { away, pipe: shape, along: along + long * t };
      along += long;
    }
  }
  if (best === undefined) return undefined;
  const { pipe, along } = best;
  const { angle, ...at } = pointAlong(pipe.points, along);
  const whole = polylineLength(pipe.points);
  return { path: pipe.path, share: pipe.square ? 1 : whole > 0 ? along / whole : 1, at, angle, bore: pipe.bore };
}

function shareAlong(a: Point, b: Point, p: Point): number {
  const squared = (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
  if (!(squared > 0)) return 0;
  return Math.min(1, Math.max(0, ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / squared));
}

/** Returns the spot behind or before a part of a run, where a part put beside it would stand.
 *  scene   path of the part   behind   -> spot; undefined for what is no part of a run
 *  Source: own construction. */
export function spotBeside(scene: Scene, path: string, behind: boolean): DrawnSpot | undefined {
  const pipe = scene.shapes.find((shape): shape is PipeShape => shape.kind === "pipe" && shape.path === path);
  const part = scene.parts.find((one) => one.path === path);
  if (pipe === undefined)
    return part && /\/(run|suction|branches\/\d+)\/\d+$/.test(path)
      ? { path, share: behind ? 1 : 0, at: part.anchor, angle: 0, bore: 0.026 }
      : undefined;
  const { angle, ...at } = pointAlong(pipe.points, behind && !pipe.square ? polylineLength(pipe.points) : 0);
  return { path, share: behind ? 1 : 0, at, angle, bore: pipe.bore };
}
