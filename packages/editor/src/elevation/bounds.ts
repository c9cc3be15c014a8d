import type { Extent, Shape } from "./scene.ts";

/** Returns the upright rectangle around shapes, pipes with their width [m]; inside out where there are none.
 *  Example: boundsOf([{ kind: "box", path: "", text: "", extent: { x0: 0, y0: 1, x1: 2, y1: 3 } }]).y1  ->  3 */
export function boundsOf(shapes: readonly Shape[]): Extent {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  const take = (x: number, y: number, r = 0) => {
    x0 = Math.min(x0, x - r);
    x1 = Math.max(x1, x + r);
    y0 = Math.min(y0, y - r);
    y1 = Math.max(y1, y + r);
  };
  for (const shape of shapes) {
    if (shape.kind === "symbol") take(shape.at.x, shape.at.y, shape.size / 2);
    else if (shape.kind === "box") {
      take(shape.extent.x0, shape.extent.y0);
      take(shape.extent.x1, shape.extent.y1);
    } else for (const { x, y } of shape.points) take(x, y, shape.kind === "pipe" ? shape.bore / 2 : 0);
  }
  return { x0, y0, x1, y1 };
}

/** Returns the upright rectangle around two of them, such as the drawings of two designs that share a scale [m].
 *  Findings: none. Throws: never.
 *  Source: geometry.
 *  Example: aroundBoth({ x0: 0, y0: 0, x1: 2, y1: 1 }, { x0: 1, y0: -1, x1: 3, y1: 0 })  ->  {"x0": 0, "y0": -1, "x1": 3, "y1": 1} */
export function aroundBoth(one: Extent, other: Extent): Extent {
  return {
    x0: Math.min(one.x0, other.x0),
    y0: Math.min(one.y0, other.y0),
    x1: Math.max(one.x1, other.x1),
    y1: Math.max(one.y1, other.y1),
  };
}
