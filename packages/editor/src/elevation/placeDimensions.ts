import type { Rect } from "./placeLabels.ts";
import type { DimensionLine, Format, Point, Scene } from "./scene.ts";
import { textWidth } from "./textWidth.ts";
import type { View } from "./view.ts";

/** A dimension line on the screen [px]: what it measures from and to, the line itself, and its number. */
export interface PlacedDimension {
  readonly line: DimensionLine;
  readonly a: Point;
  readonly b: Point;
  readonly p: Point;
  readonly q: Point;
  readonly upright: boolean;
  /** The number; none where the line is too short for it. */
  readonly text: string | undefined;
}

/** Distance between parallel dimension lines, and size of their type [px]. */
const step = 22;
const dimensionType = 11;

/** Returns where the dimension lines of a scene lie on the screen, set off from what they measure.
 *  scene, view as shown   format the user's units   -> lines [px]; those under 12 px are left out
 *  Findings: none. Throws: never.
 *  Valid: any scene.
 *  Source: layout after ISO 129-1. */
export function placeDimensions(scene: Scene, view: View, format: Format): PlacedDimension[] {
  return scene.dimensions.flatMap((line) => {
    const a = view.toScreen(line.a);
    const b = view.toScreen(line.b);
    const upright = line.side === "left" || line.side === "right";
    const out = line.step * step;
    const top = view.toScreen({ x: 0, y: scene.bounds.y1 }).y;
    const ground = Math.max(view.toScreen({ x: 0, y: 0 }).y, a.y);
    const x = line.side === "left" ? Math.min(a.x, b.x) - out : Math.max(a.x, b.x) + out;
    const y = line.side === "above" ? top - out + 12 : ground + out - 2;
    const p = upright ? { x, y: a.y } : { x: a.x, y };
    const q = upright ? { x, y: b.y } : { x: b.x, y };
    const long = Math.hypot(q.x - p.x, q.y - p.y);
    if (long < 12) return [];
    const text = format(line.value, "length");
    const fits = long > textWidth(text, dimensionType) + 8;
    return [{ line, a, b, p, q, upright, text: fits ? text : undefined }];
  });
}

/** Returns the areas on the screen that dimension lines and their numbers cover, for labels to keep free of [px].
 *  Source: own construction. */
export function dimensionRects(placed: readonly PlacedDimension[]): Rect[] {
  return placed.map(({ p, q, upright }) => {
    const side = dimensionType + 4;
    return upright
      ? { x: p.x - side, y: Math.min(p.y, q.y), width: side + 2, height: Math.abs(p.y - q.y) }
      : { x: Math.min(p.x, q.x), y: p.y - side, width: Math.abs(p.x - q.x), height: side + 2 };
  });
}
