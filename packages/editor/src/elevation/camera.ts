import type { Point } from "./scene.ts";
import type { View } from "./view.ts";

/** A look at part of the sheet: the scale, and the place in the middle of the picture [px/m, m]. Without one the whole sheet
 *  is seen. It holds scene coordinates, so that an edit which moves the sheet's bounds leaves it standing. */
export interface Camera {
  readonly scale: number;
  readonly at: Point;
}

/** Closest look, as a multiple of the whole sheet's scale. */
const closest = 12;

/** Returns the view through a camera.
 *  whole view of the whole sheet   camera none for the whole sheet   -> view of the same size [px]
 *  Valid: the camera never leaves the sheet.
 *  Source: analytic. */
export function cameraView(whole: View, camera: Camera | undefined): View {
  if (camera === undefined || camera.scale <= whole.scale * 1.001) return whole;
  const { scale, at } = held(whole, camera);
  const middle = { x: whole.width / 2, y: (whole.height - whole.foot) / 2 };
  return {
    ...whole,
    scale,
    toScreen: ({ x, y }) => ({ x: middle.x + (x - at.x) * scale, y: middle.y - (y - at.y) * scale }),
    toScene: ({ x, y }) => ({ x: at.x + (x - middle.x) / scale, y: at.y - (y - middle.y) / scale }),
  };
}

/** Returns the camera after a zoom that keeps what is under a point of the picture there.
 *  whole, view   factor above 1 comes closer   point [px]   -> camera; undefined where the whole sheet fits again
 *  Source: analytic. */
export function zoomAt(whole: View, view: View, factor: number, point: Point): Camera | undefined {
  const scale = Math.min(whole.scale * closest, view.scale * factor);
  if (!(scale > whole.scale * 1.001)) return undefined;
  return pinned(whole, scale, view.toScene(point), point);
}

/** Returns the camera after the sheet has moved with a hand.
 *  whole, view   by way of the hand [px]   -> camera; undefined for the whole sheet, which does not move
 *  Source: analytic. */
export function panBy(whole: View, view: View, by: Point): Camera | undefined {
  if (!(view.scale > whole.scale * 1.001)) return undefined;
  const middle = { x: whole.width / 2, y: (whole.height - whole.foot) / 2 };
  return pinned(whole, view.scale, view.toScene({ x: middle.x - by.x, y: middle.y - by.y }), middle);
}

/** Returns the camera that keeps a place of the scene under a point of the picture at a scale.
 *  whole   scale [px/m]   place [m]   point [px]   -> camera; undefined where the whole sheet fits
 *  Source: analytic. */
export function pinned(whole: View, scale: number, place: Point, point: Point): Camera | undefined {
  const close = Math.min(whole.scale * closest, scale);
  if (!(close > whole.scale * 1.001)) return undefined;
  const middle = { x: whole.width / 2, y: (whole.height - whole.foot) / 2 };
  return held(whole, {
    scale: close,
    at: { x: place.x + (middle.x - point.x) / close, y: place.y - (middle.y - point.y) / close },
  });
}

/** Keeps what is seen on the sheet. */
function held(whole: View, { scale, at }: Camera): Camera {
  const upper = whole.toScene({ x: 0, y: 0 });
  const lower = whole.toScene({ x: whole.width, y: whole.height - whole.foot });
  const across = whole.width / scale / 2;
  const up = (whole.height - whole.foot) / scale / 2;
  return {
    scale,
    at: { x: between(at.x, upper.x + across, lower.x - across), y: between(at.y, lower.y + up, upper.y - up) },
  };
}

const between = (value: number, low: number, high: number): number =>
  low > high ? (low + high) / 2 : Math.max(low, Math.min(high, value));
