import type { Point } from "./scene.ts";

/** Returns the length of a polyline: the sum of its straight pieces.
 *  points corners [m]   -> length [m]
 *  Findings: none. Throws: never.
 *  Valid: any number of points; fewer than two have no length.
 *  Source: analytic.
 *  Example: polylineLength([{ x: 0, y: 0 }, { x: 3, y: 0 }, { x: 3, y: 4 }])  ->  7 */
export function polylineLength(points: readonly Point[]): number {
  let length = 0;
  for (let i = 1; i < points.length; i++) length += distance(points[i - 1]!, points[i]!);
  return length;
}

/** Returns the distances along a polyline at which it turns.
 *  points corners [m]   -> distances of the inner corners [m]
 *  Findings: none. Throws: never.
 *  Valid: any polyline; straight joints do not count.
 *  Source: analytic.
 *  Example: cornerDistances([{ x: 0, y: 0 }, { x: 3, y: 0 }, { x: 3, y: 4 }])  ->  [3] */
export function cornerDistances(points: readonly Point[]): number[] {
  const corners: number[] = [];
  let along = 0;
  for (let i = 1; i < points.length - 1; i++) {
    along += distance(points[i - 1]!, points[i]!);
    const before = direction(points[i - 1]!, points[i]!);
    const after = direction(points[i]!, points[i + 1]!);
    if (Math.abs(Math.cos(before) - Math.cos(after)) + Math.abs(Math.sin(before) - Math.sin(after)) > 1e-6)
      corners.push(along);
  }
  return corners;
}

/** Returns the point at a distance along a polyline and the direction of travel there.
 *  points corners [m]   along distance from its start [m], clamped to its ends   -> point [m] and angle [rad]
 *  Findings: none. Throws: never.
 *  Valid: one point or more.
 *  Source: analytic.
 *  Example: pointAlong([{ x: 0, y: 0 }, { x: 3, y: 0 }, { x: 3, y: 4 }], 5).y  ->  2 */
export function pointAlong(points: readonly Point[], along: number): Point & { readonly angle: number } {
  let left = Math.max(0, along);
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1]!;
    const b = points[i]!;
    const piece = distance(a, b);
    if ((left <= piece && piece > 0) || i === points.length - 1) {
      const t = piece > 0 ? Math.min(1, left / piece) : 0;
      return { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t, angle: direction(a, b) };
    }
    left -= piece;
  }
  return { ...(points[0] ?? { x: 0, y: 0 }), angle: 0 };
}

/** Returns the piece of a polyline between two distances along it, with every corner in between.
 *  points corners [m]   from, to distances along it [m]   -> corners of the piece [m]
 *  Findings: none. Throws: never.
 *  Valid: from <= to.
 *  Source: analytic.
 *  Example: pieceAlong([{ x: 0, y: 0 }, { x: 3, y: 0 }, { x: 3, y: 4 }], 1, 5).length  ->  3 */
export function pieceAlong(points: readonly Point[], from: number, to: number): Point[] {
  const { angle: _start, ...first } = pointAlong(points, from);
  const { angle: _end, ...last } = pointAlong(points, to);
  const piece: Point[] = [first];
  let along = 0;
  for (let i = 1; i < points.length - 1; i++) {
    along += distance(points[i - 1]!, points[i]!);
    if (along > from + 1e-9 && along < to - 1e-9) piece.push(points[i]!);
  }
  piece.push(last);
  return piece;
}

/** Returns a polyline without repeated points and without joints on a straight piece.
 *  points corners [m]   -> the same line with the fewest corners [m]
 *  Findings: none. Throws: never.
 *  Valid: any polyline.
 *  Source: analytic.
 *  Example: tidyPolyline([{ x: 0, y: 0 }, { x: 1, y: 0 }, { x: 1, y: 0 }, { x: 3, y: 0 }]).length  ->  2 */
export function tidyPolyline(points: readonly Point[]): Point[] {
  const tidy: Point[] = [];
  for (const point of points) {
    const last = tidy.at(-1);
    if (last && distance(last, point) < 1e-6) continue;
    const before = tidy.at(-2);
    if (last && before && Math.abs(direction(before, last) - direction(last, point)) < 1e-6) tidy.pop();
    tidy.push(point);
  }
  return tidy;
}

/** Returns the distance between two points.
 *  a, b points [m]   -> distance [m]
 *  Findings: none. Throws: never.
 *  Valid: any.
 *  Source: analytic.
 *  Example: distance({ x: 0, y: 0 }, { x: 3, y: 4 })  ->  5 */
export function distance(a: Point, b: Point): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}

const direction = (a: Point, b: Point): number => Math.atan2(b.y - a.y, b.x - a.x);
