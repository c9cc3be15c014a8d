import type { Part } from "@tidewright/design";
import type { Frame } from "../elevation/frame.ts";
import { endLevel } from "../elevation/outlets.ts";
import { distance, tidyPolyline } from "../elevation/polyline.ts";
import type { Point } from "../elevation/scene.ts";
import { typedLength } from "./lengths.ts";

/** Shortest piece of pipe worth cutting [m]: shorter ones are taken up by the fittings. */
const shortest = 0.02;

/** Returns the right-angled way of a new line between two points: over the rim where it leads into the display from
 *  outside, across above the sump where it stays in the stand, straight where it can be.
 *  frame where the bodies stand   from, to ends of the line [m]   toPlace where it ends   -> corners [m]
 *  Valid: a proposal at true heights; what stands in the way besides the tanks is not looked at.
 *  Source: own construction. */
export function routeBetween(frame: Frame, from: Point, to: Point, toPlace: string): Point[] {
  const { display, sump, standTop } = frame;
  const inDisplay = from.x > display.x0 && from.x < display.x1 && from.y > display.y0;
  if (toPlace === "display" && !inDisplay) {
    const over = Math.max(display.y1, frame.box.y1) + 0.06;
    const beside = Math.max(display.x1, sump.x1) + 0.1;
    const inside = from.y < display.y0 || from.x < display.x1;
    const x = inside ? Math.max(beside, from.x > display.x1 ? from.x : beside) : from.x;
    const across = Math.max(from.y, Math.min(sump.y1 + 0.06, standTop - 0.05));
    return tidyPolyline([from, { x: from.x, y: across }, { x, y: across }, { x, y: over }, { x: to.x, y: over }, to]);
  }
  if (toPlace === "display") {
    const over = display.y1 + 0.06;
    return tidyPolyline([from, { x: from.x, y: over }, { x: to.x, y: over }, to]);
  }
  const across = from.y > sump.y1 + 0.02 ? Math.min(from.y, sump.y1 + 0.1) : sump.y1 + 0.06;
  return tidyPolyline([from, { x: from.x, y: across }, { x: to.x, y: across }, to]);
}

/** Returns the parts of a line along its way: a pipe for every straight piece, its length and rise to scale, and an elbow
 *  at every bend.
 *  points corners [m]   series size   unit of lengths in the design   drain true for two 45° bends at a bend, as a drain
 *  wants them   -> parts, at least one pipe
 *  Source: analytic. */
export function partsAlong(points: readonly Point[], series: string, unit: string, drain = false): Part[] {
  const parts: Part[] = [];
  for (let i = 1; i < points.length; i += 1) {
    const a = points[i - 1]!;
    const b = points[i]!;
    const long = distance(a, b);
    if (i > 1) parts.push({ kind: "fitting", fitting: drain ? "elbow45" : "elbow90", ...(drain ? { count: 2 } : {}) });
    if (long < shortest && parts.some(({ kind }) => kind === "pipe")) continue;
    const length = typedLength(Math.max(shortest, long), unit);
    const upright = Math.abs(b.y - a.y) > Math.abs(b.x - a.x);
    const way = Math.sign(b.y - a.y);
    parts.push({
      kind: "pipe",
      series,
      length,
      ...(upright && way !== 0 ? { rise: { value: way * length.value, unit: length.unit } } : {}),
    });
  }
  return parts;
}

/** Returns where a place takes or gives water in the picture: a free spot in it, below its surface.
 *  frame   place   wish place along [m]   depth below the surface [m]   -> point [m]
 *  Source: own construction. */
export function pointOfPlace(frame: Frame, place: string, wish: number | undefined, depth: number): Point {
  const y = endLevel(frame, place, { value: depth, unit: "m" });
  if (place === "display")
    return { x: within(wish ?? frame.open.x1 - 0.2, frame.open.x0 + 0.06, frame.open.x1 - 0.06), y };
  if (place === "overflowBox") return { x: (frame.box.x0 + frame.box.x1) / 2, y };
  const chamber = frame.chambers.find(({ id }) => `sump.${id}` === place) ?? frame.chambers.at(-1)!;
  const edge = Math.min(0.05, (chamber.x1 - chamber.x0) / 4);
  return { x: within(wish ?? (chamber.x0 + chamber.x1) / 2, chamber.x0 + edge, chamber.x1 - edge), y };
}

const within = (x: number, low: number, high: number): number => Math.max(low, Math.min(high, x));
