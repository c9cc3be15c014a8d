import { aimGrip } from "./gripEdits.ts";
import { obstaclesOf, overlap, type Rect } from "./placeLabels.ts";
import type { Handle, Point, Scene } from "./scene.ts";
import { arcGeometry } from "./speedArc.ts";
import type { View } from "./view.ts";

/** What the bar with a part's actions is placed by [px]. */
export interface BarOptions {
  readonly view: View;
  readonly width: number;
  readonly height: number;
  /** What must stay in sight: the part, what it is moved by, its label. */
  readonly keep: readonly Rect[];
  /** What had better stay in sight: labels of other parts. */
  readonly spare: readonly Rect[];
  /** Where it belongs. */
  readonly at: Rect;
}

/** Space round what is kept in sight, and the strips of the tools above and of the frame [px]. */
const gap = 6;
const tools = 48;
const frame = 10;
/** Steps of the search [px]. */
const step = { x: 16, y: 8 } as const;
/** A covered label of another part counts like a way of so much for each of its picture points [px]. */
const worth = 0.03;

/** Returns where the bar goes: inside the sheet, over neither the part nor its label where there is any such place, and of
 *  those the nearest to it that covers least of anything else.
 *  options sizes and what is to be seen [px]   -> upper left corner [px]
 *  Findings: none. Throws: never.
 *  Valid: any sheet; where there is no free place, the one that covers least.
 *  Source: own construction, search over a grid and the places beside each edge. */
export function placeBar({ view, width, height, keep, spare, at }: BarOptions): Point {
  const last = { x: view.width - width - frame, y: view.height - view.foot - height - frame };
  const beside = [at, ...keep].flatMap((rect) => [
    { x: rect.x, y: rect.y + rect.height + gap },
    { x: rect.x, y: rect.y - height - gap },
    { x: rect.x + rect.width + gap, y: rect.y },
    { x: rect.x - width - gap, y: rect.y },
  ]);
  let best = { x: Math.max(frame, last.x), y: Math.max(tools, last.y) };
  let least = Infinity;
  const consider = (point: Point) => {
    const x = Math.round(Math.max(frame, Math.min(point.x, last.x)));
    const y = Math.round(Math.max(tools, Math.min(point.y, last.y)));
    const bar = { x, y, width, height };
    let cost = apart(bar, at);
    if (cost >= least) return;
    for (const rect of keep) cost += overlap(bar, rect, gap - 1) * 1000;
    for (const rect of spare) cost += overlap(bar, rect, 1) * worth;
    if (cost >= least) return;
    least = cost;
    best = { x, y };
  };
  for (const point of beside) consider(point);
  for (let y = tools; y <= last.y; y += step.y) for (let x = frame; x <= last.x; x += step.x) consider({ x, y });
  return best;
}

/** Returns what of the part in hand must stay in sight: its marks, its anchor, and what it is moved by.
 *  scene, view   path of the part   -> rectangles [px]; a body of water only where it is named
 *  Findings: none. Throws: never.
 *  Valid: any part.
 *  Source: own construction. */
export function heldRects(scene: Scene, view: View, path: string): Rect[] {
  const part = scene.parts.find((one) => one.path === path);
  const shapes = scene.shapes.filter(
    (shape) => shape.path === path && (shape.kind !== "line" || shape.ink === "teeth"),
  );
  const handles = part === undefined ? [] : [...(part.handle ? [part.handle] : []), ...(part.grips ?? [])];
  return [
    ...obstaclesOf({ ...scene, shapes: shapes.filter(({ kind }) => kind !== "area") }, view),
    ...(part === undefined ? [] : [round(view.toScreen(part.anchor), 14)]),
    ...handles.map((handle) => handleRect(handle, view)),
  ];
}

function handleRect(handle: Handle, view: View): Rect {
  if (handle.axis === "aim") return round(aimGrip(handle, view), 16);
  const at = view.toScreen(handle.at);
  return round(at, handle.axis === "arc" ? arcGeometry(view.scale).radius + 8 : 18);
}

const round = ({ x, y }: Point, r: number): Rect => ({ x: x - r, y: y - r, width: 2 * r, height: 2 * r });

/** Distance between two rectangles, and a little of that between their middles, so that it lies squarely beside. */
function apart(a: Rect, b: Rect): number {
  const x = Math.max(0, b.x - a.x - a.width, a.x - b.x - b.width);
  const y = Math.max(0, b.y - a.y - a.height, a.y - b.y - b.height);
  const middle = Math.hypot(a.x + a.width / 2 - b.x - b.width / 2, a.y + a.height / 2 - b.y - b.height / 2);
  return Math.hypot(x, y) + middle * 0.1;
}
