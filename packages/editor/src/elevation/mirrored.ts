import type { DimensionLine, DragTarget, Extent, Handle, LineHandle, Point, ScenePart, Shape } from "./scene.ts";

/** Symbols that stand upright and point nowhere. */
const upright = new Set(["waterLevel", "powerStrip", "siphonBreak", "tee"]);

/** Returns a shape as it is where left and right change places about the middle of the display.
 *  shape   length of the display [m]   -> shape
 *  Findings: none. Throws: never.
 *  Valid: any shape; names stay readable, symbols that bear a direction turn with it.
 *  Source: analytic. */
export function mirroredShape(shape: Shape, length: number): Shape {
  const over = overThe(length);
  if (shape.kind === "box") return { ...shape, extent: turned(shape.extent, length) };
  if (shape.kind !== "symbol") return { ...shape, points: shape.points.map(over) };
  const { angle, out } = shape;
  return {
    ...shape,
    at: over(shape.at),
    ...(upright.has(shape.symbol) ? {} : { angle: turnedAngle(angle) }),
    ...(out === undefined ? {} : { out: turnedAngle(out) }),
  };
}

/** Returns a part as it is where left and right change places; what is dragged along then grows the other way.
 *  part   length of the display [m]   -> part
 *  Findings: none. Throws: never.
 *  Valid: any part.
 *  Source: analytic. */
export function mirroredPart(part: ScenePart, length: number): ScenePart {
  const { handle, grips, notIn } = part;
  return {
    ...part,
    anchor: overThe(length)(part.anchor),
    lean: turnedAngle(part.lean),
    ...(notIn === undefined ? {} : { notIn: notIn.map((extent) => turned(extent, length)) }),
    ...(handle === undefined ? {} : { handle: mirroredLine(handle, length) }),
    ...(grips === undefined ? {} : { grips: grips.map((grip) => mirroredHandle(grip, length)) }),
  };
}

/** Returns a dimension line as it is where left and right change places.
 *  line   length of the display [m]   -> line
 *  Findings: none. Throws: never.
 *  Valid: any line.
 *  Source: analytic. */
export function mirroredDimension(line: DimensionLine, length: number): DimensionLine {
  const over = overThe(length);
  const side = line.side === "left" ? "right" : line.side === "right" ? "left" : line.side;
  return { ...line, a: over(line.a), b: over(line.b), side };
}

function mirroredHandle(handle: Handle, length: number): Handle {
  const at = overThe(length)(handle.at);
  if (handle.axis === "aim") return { ...handle, at, across: -handle.across };
  return handle.axis === "place" ? { ...handle, at, along: back(handle.along) } : mirroredLine(handle, length);
}

function mirroredLine(handle: LineHandle, length: number): LineHandle {
  const at = overThe(length)(handle.at);
  const [first, ...rest] = handle.targets;
  return handle.axis === "x" ? { ...handle, at, targets: [back(first), ...rest.map(back)] } : { ...handle, at };
}

const back = <Kind extends DragTarget>(target: Kind): Kind => ({ ...target, sign: target.sign > 0 ? -1 : 1 });

const overThe =
  (length: number) =>
  ({ x, y }: Point): Point => ({ x: length - x, y });

const turned = ({ x0, x1, y0, y1 }: Extent, length: number): Extent => ({ x0: length - x1, x1: length - x0, y0, y1 });

/** A quarter turn up or down stays exactly what it is. */
function turnedAngle(angle: number): number {
  return Math.abs(Math.cos(angle)) < 1e-12 ? angle : Math.PI - angle;
}
