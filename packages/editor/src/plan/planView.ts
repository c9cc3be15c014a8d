import type { Extent } from "../elevation/scene.ts";
import type { View } from "../elevation/view.ts";

/** Room for words on every side of the tank [px]. */
const margin = { side: 76, narrowSide: 26, top: 40, foot: 40 };

/** Returns the largest view of a plan that fits a width and a height, with room for labels round it.
 *  bounds [m]   width, height of the picture [px]   -> view
 *  Source: analytic. */
export function planView(bounds: Extent, width: number, height: number): View {
  const side = width < 560 ? margin.narrowSide : margin.side;
  const across = Math.max(0.05, bounds.x1 - bounds.x0);
  const deep = Math.max(0.05, bounds.y1 - bounds.y0);
  const scale = Math.max(20, Math.min((width - 2 * side) / across, (height - margin.top - margin.foot) / deep));
  const x0 = (width - across * scale) / 2;
  const y1 = margin.top + (height - margin.top - margin.foot - deep * scale) / 2 + deep * scale;
  return {
    scale,
    width,
    height,
    foot: 0,
    toScreen: ({ x, y }) => ({ x: x0 + (x - bounds.x0) * scale, y: y1 - (y - bounds.y0) * scale }),
    toScene: ({ x, y }) => ({ x: bounds.x0 + (x - x0) / scale, y: bounds.y0 + (y1 - y) / scale }),
  };
}
