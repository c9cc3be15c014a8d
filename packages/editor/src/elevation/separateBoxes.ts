import type { SceneBuilder } from "./builder.ts";
import type { BoxShape, Extent, Shape } from "./scene.ts";

/** Air between two devices [m], and the least that is left of one. */
const gap = 0.014;
const leastHigh = 0.03;
const leastWide = 0.06;

/** Makes devices that would lie on each other as much lower, or narrower, as lets each stand alone, about their middles.
 *  builder the scene with all its devices; their boxes and anchors are replaced
 *  Findings: none. Throws: never.
 *  Valid: devices whose middles lie apart by 44 mm in height or by 74 mm across; nearer ones keep the least size.
 *  Source: own construction. */
export function separateBoxes(builder: SceneBuilder): void {
  const { shapes, parts } = builder;
  const boxes = shapes.flatMap((shape, i) => (shape.kind === "box" ? [{ shape, i, extent: shape.extent }] : []));
  for (const [k, a] of boxes.entries())
    for (const b of boxes.slice(k + 1)) {
      if (!meets(a.extent, b.extent)) continue;
      const up = Math.abs(middle(a.extent).y - middle(b.extent).y);
      const across = Math.abs(middle(a.extent).x - middle(b.extent).x);
      const byHeight = up >= leastHigh + gap || up >= across;
      for (const one of [a, b])
        one.extent = byHeight
          ? about(one.extent, Infinity, Math.max(leastHigh, up - gap))
          : about(one.extent, Math.max(leastWide, across - gap), Infinity);
    }
  for (const { shape, i, extent } of boxes) {
    if (extent === shape.extent) continue;
    shapes[i] = { ...shape, extent } satisfies BoxShape as Shape;
    const place = parts.findIndex(({ path }) => path === shape.path);
    const part = parts[place];
    if (part) parts[place] = { ...part, anchor: { x: part.anchor.x, y: extent.y1 }, lettered: extent.x1 - extent.x0 };
  }
}

const middle = ({ x0, x1, y0, y1 }: Extent) => ({ x: (x0 + x1) / 2, y: (y0 + y1) / 2 });

const meets = (a: Extent, b: Extent): boolean =>
  a.x0 < b.x1 + gap && b.x0 < a.x1 + gap && a.y0 < b.y1 + gap && b.y0 < a.y1 + gap;

/** The extent about its middle, no wider and no higher than told. */
function about(extent: Extent, width: number, height: number): Extent {
  const { x, y } = middle(extent);
  const w = Math.min(width, extent.x1 - extent.x0) / 2;
  const h = Math.min(height, extent.y1 - extent.y0) / 2;
  return { x0: x - w, x1: x + w, y0: y - h, y1: y + h };
}
