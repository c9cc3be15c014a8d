import { pointAlong } from "../elevation/polyline.ts";
import type { FlowLine } from "./flowLines.ts";

/** A mark on the water: its place [m], the direction of flow [rad], and the bore it moves in [m]. */
export interface FlowMark {
  readonly x: number;
  readonly y: number;
  readonly angle: number;
  readonly bore: number;
}

/** How many times slower than the water the marks move on the sheet, metre for metre; at its own speed no eye could follow.
 *  Source: own choice. */
export const flowSlowing = 6;

/** A mark enters every run so often [s]. */
const interval = 0.7;

/** Returns the marks of a line at a time: they enter at even times and move at the water's speed divided by `flowSlowing`, so
 *  that they stand far apart where water is fast and close where it is slow.
 *  line   time [s]   closest least distance between two marks [m]; where they would be closer some are left out   -> marks
 *  Valid: any time; at equal times equal marks.
 *  Source: analytic, x = v t along each piece. */
export function flowMarks(line: FlowLine, time: number, closest: number): FlowMark[] {
  const slowest = Math.min(...line.pieces.map(({ velocity }) => velocity)) / flowSlowing;
  const every = interval * Math.max(1, Math.ceil(closest / (slowest * interval)));
  const phase = (line.backward ? time : -time) + line.after * flowSlowing;
  // Water's own time at which the first mark passes the run's beginning.
  const first = ((((-phase % every) + every) % every) + every) % every;
  const marks: FlowMark[] = [];
  let entered = 0;
  let next = first;
  for (const piece of line.pieces) {
    const speed = piece.velocity / flowSlowing;
    const leaves = entered + piece.length / speed;
    for (; next < leaves && marks.length < 400; next += every) {
      const at = pointAlong(piece.points, (next - entered) * speed);
      marks.push({ x: at.x, y: at.y, angle: at.angle + (line.backward ? Math.PI : 0), bore: piece.bore });
    }
    entered = leaves;
  }
  return marks;
}
