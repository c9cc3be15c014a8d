import { type Detail, labelLines } from "./labelText.ts";
import type { Extent, Format, Point, Scene, ScenePart } from "./scene.ts";
import { textWidth } from "./textWidth.ts";
import type { View } from "./view.ts";

/** An upright rectangle on the screen [px], y down. */
export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A label with its place and the line that leads to its part [px]. */
export interface PlacedLabel {
  readonly path: string;
  readonly lines: readonly string[];
  readonly rect: Rect;
  readonly anchor: Point;
  /** End of the leader at the label; none where the label touches its part. */
  readonly leader: Point | undefined;
  readonly emphasis: boolean;
  /** Text keeps to the side of the label that its leader comes to. */
  readonly align: "start" | "end";
  /** Place relative to its anchor, to be tried first the next time. */
  readonly offset: LabelOffset;
}

/** A place relative to an anchor [px], and what it cost. */
export interface LabelOffset extends Point {
  readonly cost: number;
}

export interface LabelOptions {
  readonly scene: Scene;
  readonly view: View;
  readonly format: Format;
  /** JSON Pointer of the part in hand; it is labelled whatever its rank. */
  readonly selection?: string | undefined;
  /** Places of the last picture, kept where they still fit so that labels stand still in a drag. */
  readonly previous?: ReadonlyMap<string, LabelOffset> | undefined;
  /** What is drawn, as `obstaclesOf` gives it, where it is known already [px]. */
  readonly obstacles?: readonly Rect[];
  /** Areas on the screen that labels leave free, such as flags. */
  readonly keepFree?: readonly Rect[];
  /** Width of a text in a size of type [px]; without it the estimate for the widest face. */
  readonly measure?: ((text: string, size: number) => number) | undefined;
}

/** Type sizes and the height of a line [px]. */
export const labelType = { name: 11, figure: 12.5, line: 14.5, pad: 4 } as const;

/** Returns the labels that find room, the important ones first, none over another.
 *  options scene, view, units, selection and earlier places   -> placed labels [px]
 *  Findings: none. Throws: never.
 *  Valid: any scene and view. A label that finds no free place is left out; its part still tells its numbers when
 *  selected. Cost grows with the number of labels times the number of symbols.
 *  Source: own construction: greedy search over rings of places round the part. */
export function placeLabels(options: LabelOptions): PlacedLabel[] {
  const { scene, view, format, selection } = options;
  const obstacles = options.obstacles ?? obstaclesOf(scene, view);
  const placed: PlacedLabel[] = [];
  const taken: Rect[] = [...(options.keepFree ?? []), ...boxRects(scene, view), ...pumpRects(scene, view)];
  for (const part of wantedParts(scene, view, selection)) {
    const emphasis = part.path === selection;
    const lines = labelLines(part, format, detailOf(view, emphasis), isLettered(part, view));
    const label = bestPlace(part, lines, emphasis, options, taken, obstacles, placed);
    if (!label) continue;
    placed.push(label);
    taken.push(label.rect);
  }
  return placed;
}

/** The part in hand first, then by rank; the smaller the screen the fewer. */
function wantedParts(scene: Scene, view: View, selection: string | undefined): ScenePart[] {
  const room = roomFor(view);
  const most = room < 560 ? 1 : room < 860 ? 2 : 3;
  return scene.parts
    .filter((part) => part.path === selection || (part.rank <= most && part.figures.length > 0))
    .sort((a, b) => Number(b.path === selection) - Number(a.path === selection) || turnOf(a) - turnOf(b));
}

/** A body's label belongs into the body, so it chooses before those of the pipes, which can stand anywhere. */
const turnOf = (part: ScenePart): number => part.rank - (part.notIn || part.path === "/display" ? 2.5 : 0);

/** How wide the screen is for labels [px]: a low picture on a wide screen has no more room than a small one. */
const roomFor = ({ width, height }: View): number => Math.min(width, 1.5 * height);

/** Least width of a box for a name in it [px]. */
export const letteringRoom = 52;
const isLettered = (part: ScenePart, view: View): boolean => (part.lettered ?? 0) * view.scale >= letteringRoom;

const detailOf = (view: View, emphasis: boolean): Detail =>
  emphasis ? "full" : roomFor(view) < 560 ? "brief" : roomFor(view) < 900 ? "short" : "normal";

function bestPlace(
  part: ScenePart,
  lines: readonly string[],
  emphasis: boolean,
  options: LabelOptions,
  taken: readonly Rect[],
  obstacles: readonly Rect[],
  placed: readonly PlacedLabel[],
): PlacedLabel | undefined {
  const { view } = options;
  const anchor = view.toScreen(part.anchor);
  const size = labelSize(lines, options.measure ?? textWidth);
  const foreign = (part.notIn ?? []).map((extent) => rectOf(extent, view));
  let best: { cost: number; rect: Rect; dx: number; dy: number } | undefined;
  const consider = (dx: number, dy: number) => {
    const rect = { x: anchor.x + dx - size.width / 2, y: anchor.y + dy - size.height / 2, ...size };
    if (rect.x < 4 || rect.y < 4 || rect.x + rect.width > view.width - 4) return;
    if (rect.y + rect.height > view.height - view.foot - 2) return;
    let cost = Math.hypot(dx, dy) * 0.5 + turn(Math.atan2(-dy, dx), part.lean) * 9;
    const least = best?.cost ?? Infinity;
    if (cost >= least) return;
    for (const other of taken) if (overlap(rect, other, 3) > 0) return;
    for (const other of foreign) if (overlap(rect, other, 0) > 0) return;
    for (let i = 0; i < obstacles.length && cost < least; i++) cost += overlap(rect, obstacles[i]!, 1) * 0.3;
    if (cost >= least) return;
    const tip = nearestOn(rect, anchor);
    for (const other of options.keepFree ?? []) if (segmentHits(anchor, tip, other)) cost += 30;
    for (const other of placed) {
      if (segmentHits(anchor, tip, other.rect)) cost += 140;
      if (other.leader && segmentHits(other.anchor, other.leader, rect)) cost += 140;
      if (other.leader && segmentsCross(anchor, tip, other.anchor, other.leader)) cost += 60;
    }
    if (cost < least) best = { cost, rect, dx, dy };
  };
  // In a drag the last place is kept while it is no worse than it was, and nothing else is tried.
  const before = options.previous?.get(part.path);
  if (before) consider(before.x, before.y);
  const kept = best as { cost: number } | undefined;
  if (!before || !kept || kept.cost > before.cost + 40) {
    // A number whose name stands in the drawing belongs beside it or nowhere.
    const rings = isLettered(part, options.view) && !emphasis ? [6, 12, 20] : [12, 26, 44, 70, 104, 146, 196];
    for (const ring of rings) {
      if (((best as { cost: number } | undefined)?.cost ?? Infinity) < ring * 0.5) break;
      // The ring is as wide as the label, so that its edge and not its middle keeps the distance.
      for (let k = 0; k < 24; k++) {
        const angle = part.lean + (k * Math.PI) / 12;
        consider(Math.cos(angle) * (ring + size.width / 2), -Math.sin(angle) * (ring + size.height / 2));
      }
    }
  }
  if (!best) return undefined;
  const tip = nearestOn(best.rect, anchor);
  const far = Math.hypot(tip.x - anchor.x, tip.y - anchor.y) > 7;
  return {
    path: part.path,
    lines,
    rect: best.rect,
    anchor,
    leader: far ? tip : undefined,
    emphasis,
    align: far && best.rect.x + best.rect.width < anchor.x ? "end" : "start",
    offset: { x: best.dx, y: best.dy, cost: Math.min(best.cost, before?.cost ?? Infinity) },
  };
}

function rectOf(extent: Extent, view: View): Rect {
  const a = view.toScreen({ x: extent.x0, y: extent.y1 });
  const b = view.toScreen({ x: extent.x1, y: extent.y0 });
  return { x: a.x, y: a.y, width: b.x - a.x, height: b.y - a.y };
}

/** Widths grow in steps of 8, so that a changing digit does not move a label. */
function labelSize(
  all: readonly string[],
  measure: (text: string, size: number) => number,
): { readonly width: number; readonly height: number } {
  const lines = all[0] === "" ? all.slice(1) : all;
  const widths = all.map((line, i) => measure(line, i === 0 ? labelType.name : labelType.figure));
  const width = Math.ceil((Math.max(...widths) + 2 * labelType.pad) / 8) * 8;
  return { width, height: lines.length * labelType.line + 2 * labelType.pad - 2 };
}

const linesToAvoid = new Set(["surface", "teeth", "outline", "glass", "ground", "stand"]);

/** Returns what is drawn as rectangles [px]: a label may lie over symbols, devices, pipes and water lines, at a price.
 *  Source: own construction. */
export function obstaclesOf(scene: Scene, view: View): Rect[] {
  const rects: Rect[] = [];
  for (const shape of scene.shapes) {
    if (shape.kind === "symbol") {
      const p = view.toScreen(shape.at);
      const half = Math.max(7, (shape.size * view.scale) / 2) + (shape.symbol === "pump" ? 9 : 0);
      rects.push({ x: p.x - half, y: p.y - half, width: 2 * half, height: 2 * half });
    } else if (shape.kind === "box") rects.push(rectOf(shape.extent, view));
    else if (shape.kind === "pipe" || linesToAvoid.has(shape.ink)) {
      const half = shape.kind === "pipe" ? (shape.bore * view.scale) / 2 + 1.5 : 2.5;
      for (let i = 1; i < shape.points.length; i++) {
        const a = view.toScreen(shape.points[i - 1]!);
        const b = view.toScreen(shape.points[i]!);
        rects.push({
          x: Math.min(a.x, b.x) - half,
          y: Math.min(a.y, b.y) - half,
          width: Math.abs(a.x - b.x) + 2 * half,
          height: Math.abs(a.y - b.y) + 2 * half,
        });
      }
    }
  }
  return rects;
}

/** Returns the devices as rectangles [px]: nothing may lie over them, since their names stand in them. */
export function boxRects(scene: Scene, view: View): Rect[] {
  return scene.shapes.flatMap((shape) => (shape.kind === "box" ? [rectOf(shape.extent, view)] : []));
}

/** The pumps as rectangles [px]: their marks and arcs are read, so no label lies on them. */
function pumpRects(scene: Scene, view: View): Rect[] {
  return scene.shapes.flatMap((shape) => {
    if (shape.kind !== "symbol" || shape.symbol !== "pump") return [];
    const { x, y } = view.toScreen(shape.at);
    const half = Math.max(11, (shape.size * view.scale) / 2);
    return [{ x: x - half, y: y - half, width: 2 * half, height: 2 * half }];
  });
}

/** Returns the area [px2] that two rectangles share when each keeps `gap` from the other.
 *  Example: overlap({ x: 0, y: 0, width: 4, height: 4 }, { x: 2, y: 2, width: 4, height: 4 }, 0)  ->  4 */
export function overlap(a: Rect, b: Rect, gap: number): number {
  const across = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x) + gap;
  const up = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y) + gap;
  return across > 0 && up > 0 ? across * up : 0;
}

function nearestOn(rect: Rect, point: Point): Point {
  return {
    x: Math.min(Math.max(point.x, rect.x), rect.x + rect.width),
    y: Math.min(Math.max(point.y, rect.y), rect.y + rect.height),
  };
}

const turn = (a: number, b: number): number => Math.abs(Math.atan2(Math.sin(a - b), Math.cos(a - b)));

function segmentHits(a: Point, b: Point, rect: Rect): boolean {
  const { x, y, width, height } = rect;
  if (a.x >= x && a.x <= x + width && a.y >= y && a.y <= y + height) return true;
  const corners = [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ];
  return corners.some((corner, i) => segmentsCross(a, b, corner, corners[(i + 1) % 4]!));
}

function segmentsCross(a: Point, b: Point, c: Point, d: Point): boolean {
  const side = (p: Point, q: Point, r: Point) => Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}
