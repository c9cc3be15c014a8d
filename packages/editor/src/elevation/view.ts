import type { Extent, Point, Scene } from "./scene.ts";

/** How metres become picture points on the screen. */
export interface View {
  /** Picture points for each metre. */
  readonly scale: number;
  readonly width: number;
  readonly height: number;
  /** Height of the strip for scale bar and title block at the foot [px]. */
  readonly foot: number;
  toScreen(point: Point): Point;
  toScene(point: Point): Point;
}

export interface ViewOptions {
  readonly width: number;
  /** Greatest height [px]; without it the picture is as high as its width asks. */
  readonly height?: number;
  /** Room for dimension lines on the left and above, or on the right and above. */
  readonly dimensions?: boolean | "right";
}

/** Returns the side on which a scene needs room for its dimension lines, as `fitView` takes it.
 *  scene   shown true where they are drawn   -> false, true for the left, or "right"
 *  Source: own construction. */
export function dimensionRoom({ dimensions }: Pick<Scene, "dimensions">, shown: boolean): boolean | "right" {
  return shown && dimensions.some(({ side }) => side === "right") ? "right" : shown;
}

/** Returns the largest view of a scene that fits the width and the height, with room for labels and the title block.
 *  bounds of the scene [m]   options size of the picture [px]   -> view
 *  Findings: none. Throws: never.
 *  Valid: any scene with a width and a height above zero.
 *  Source: analytic. */
export function fitView(bounds: Extent, options: ViewOptions): View {
  const { width } = options;
  const narrow = width < 560;
  const foot = narrow ? 44 : 58;
  const side = narrow ? 10 : width < 900 ? 104 : 150;
  const more = options.dimensions ? (narrow ? 42 : 46) : 0;
  const [left, right] = options.dimensions === "right" ? [side, side + more] : [side + more, side];
  // The tools lie over the upper edge; on a phone they are as high as a fingertip is wide.
  const top = (narrow ? 62 : 46) + (options.dimensions ? 34 : 0);
  const under = narrow ? 48 : 42;
  const across = Math.max(0.1, bounds.x1 - bounds.x0);
  const up = Math.max(0.1, bounds.y1 - bounds.y0);
  const byWidth = (width - left - right) / across;
  const byHeight = options.height === undefined ? Infinity : (options.height - top - under - foot) / up;
  const scale = Math.max(20, Math.min(byWidth, byHeight));
  const height = options.height ?? Math.ceil(up * scale + top + under + foot);
  const x0 = left + (width - left - right - across * scale) / 2;
  const y1 = top + Math.max(0, height - top - under - foot - up * scale) / 2 + up * scale;
  return {
    scale,
    width,
    height,
    foot,
    toScreen: ({ x, y }) => ({ x: x0 + (x - bounds.x0) * scale, y: y1 - (y - bounds.y0) * scale }),
    toScene: ({ x, y }) => ({ x: bounds.x0 + (x - x0) / scale, y: bounds.y0 + (y1 - y) / scale }),
  };
}
