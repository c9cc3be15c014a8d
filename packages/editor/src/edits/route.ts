import type { Part } from "@tidewright/design";
import type { Frame } from "../elevation/frame.ts";
import { endLevel } from "../elevation/outlets.ts";
import { distance } from "../elevation/polyline.ts";
import type { Extent, Point } from "../elevation/scene.ts";
import { typedLength } from "./lengths.ts";
import { wayAround } from "./wayAround.ts";

/** Shortest piece of pipe worth cutting [m]: shorter ones are taken up by the fittings. */
const shortest = 0.02;

/** Thickness of glass as it is drawn [m]. */
const glass = 0.01;

/** Returns what a line must not be led through: the tank, the sump and the overflow box with their glass. They are open at the
 *  top.
 *  frame where the bodies stand   -> extents [m]
 *  Source: own construction. */
export function solidsOf({ display, sump, box }: Frame): Extent[] {
  return [display, sump, box].map(({ x0, x1, y0, y1 }) => ({ x0: x0 - glass, x1: x1 + glass, y0: y0 - glass, y1 }));
}

/** Returns the right-angled way of a new line between two points: out of the body it begins in over its rim, round tank, sump
 *  and box on the side where returns rise, and over the rim of the body it ends in; straight where it can be.
 *  frame where the bodies stand   from, to ends of the line [m]   downward true for a drain, which leaves through the floor
 *  -> corners [m]
 *  Valid: a proposal at true heights; other lines and devices in the way are not looked at.
 *  Source: own construction on `wayAround`. */
export function routeBetween(frame: Frame, from: Point, to: Point, downward = false): Point[] {
  const start = downward ? ({ at: from, upright: "down" } as const) : { at: from };
  return wayAround(start, { at: to }, solidsOf(frame), frame.flow);
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
  if (place === "display") return { x: within(wish ?? farSide(frame), frame.open.x0 + 0.06, frame.open.x1 - 0.06), y };
  if (place === "overflowBox") return { x: (frame.box.x0 + frame.box.x1) / 2, y };
  const chamber = frame.chambers.find(({ id }) => `sump.${id}` === place) ?? frame.chambers.at(-1)!;
  const edge = Math.min(0.05, (chamber.x1 - chamber.x0) / 4);
  return { x: within(wish ?? (chamber.x0 + chamber.x1) / 2, chamber.x0 + edge, chamber.x1 - edge), y };
}

/** Away from the box, where returns come over the rim. */
const farSide = ({ open, flow }: Frame): number => (flow > 0 ? open.x1 - 0.2 : open.x0 + 0.2);

const within = (x: number, low: number, high: number): number => Math.max(low, Math.min(high, x));
