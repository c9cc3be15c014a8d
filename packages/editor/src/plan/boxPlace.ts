import type { Design } from "@tidewright/design";
import { layoutFrame, metres } from "../elevation/frame.ts";
import type { Extent } from "../elevation/scene.ts";

/** A box on the plan: its outline, and the wall it hangs on [m]. */
export interface BoxPlace {
  readonly extent: Extent;
  readonly wall: "back" | "left" | "right";
  readonly placed: boolean;
}

/** Returns where the overflow box is as seen from above: inside along its wall, or outside on it. Where the document says
 *  nothing it stands where the side elevation shows it: at the back wall's left end, or beside the left wall.
 *  design checked design   -> outline [m], wall, and whether the document said so
 *  Source: own construction. */
export function boxPlace(design: Design): BoxPlace {
  const { box, kind } = design.overflow;
  const length = metres(design.display.length);
  const width = metres(design.display.width);
  const [along, deep] = [metres(box.length), metres(box.width)];
  const inside = kind === "internalBox";
  const wall = box.at?.wall ?? (inside ? "back" : "left");
  const start =
    box.at === undefined
      ? wall === "back"
        ? Math.max(0, layoutFrame(design, undefined).box.x0)
        : Math.max(0, (width - along) / 2)
      : metres(box.at.along);
  const placed = box.at !== undefined;
  const span = (end: number): readonly [number, number] => {
    const near = Math.min(Math.max(0, start), Math.max(0, end - along));
    return [near, near + along];
  };
  if (wall === "back") {
    const [x0, x1] = span(length);
    const y = inside ? [width - deep, width] : [width, width + deep];
    return { extent: { x0, x1, y0: y[0]!, y1: y[1]! }, wall, placed };
  }
  const [y0, y1] = span(width);
  const left = inside ? [0, deep] : [-deep, 0];
  const x = wall === "left" ? left : [length - left[1]!, length - left[0]!];
  return { extent: { x0: x[0]!, x1: x[1]!, y0, y1 }, wall, placed };
}
