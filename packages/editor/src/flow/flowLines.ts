import type { Assessment } from "@tidewright/advice";
import { polylineLength } from "../elevation/polyline.ts";
import type { PipeShape, Point, Scene } from "../elevation/scene.ts";

/** One drawn pipe on the way of the water. */
export interface FlowPiece {
  readonly points: readonly Point[];
  /** Drawn length [m]. */
  readonly length: number;
  /** Speed of the water, never negative [m/s]. */
  readonly velocity: number;
  readonly bore: number;
}

/** A run as the water passes it: its pipes in order, all filled and all moving one way. */
export interface FlowLine {
  /** JSON Pointer of the run. */
  readonly path: string;
  readonly pieces: readonly FlowPiece[];
  /** True where water runs against the direction in which the run is written. */
  readonly backward: boolean;
  /** Water's way through the runs before it, which keeps marks in step across a tee [s on the sheet, before slowing]. */
  readonly after: number;
}

/** Slower than this no mark is worth showing [m/s]. */
const least = 0.004;

/** Returns the moving water of a drawing: for every run its drawn pipes with the speed in them. Dry and still pipes are left
 *  out, and so are headers, whose water goes several ways.
 *  scene   assessment numbers of the same document   -> lines
 *  Source: own construction. */
export function flowLines(scene: Scene, assessment: Assessment | undefined): FlowLine[] {
  if (assessment === undefined) return [];
  const states = new Map(assessment.parts.map((part) => [part.path, part]));
  const runs = new Map<string, PipeShape[]>();
  for (const shape of scene.shapes) {
    if (shape.kind !== "pipe" || shape.square || shape.water === "dry" || !states.has(shape.path)) continue;
    const base = shape.path.slice(0, shape.path.lastIndexOf("/"));
    const pipes = runs.get(base);
    if (pipes) pipes.push(shape);
    else runs.set(base, [shape]);
  }
  const passed = new Map<string, number>();
  const lines: FlowLine[] = [];
  for (const [path, pipes] of runs) {
    const pieces = pipes.map((pipe) => ({
      points: pipe.points,
      length: polylineLength(pipe.points),
      velocity: Math.abs(states.get(pipe.path)!.velocity),
      bore: pipe.bore,
    }));
    const before = passed.get(path.replace(/\/\d+\/branches\/\d+$/, "")) ?? 0;
    const time = pieces.reduce((sum, { length, velocity }) => sum + length / Math.max(least, velocity), 0);
    passed.set(path, before + time);
    if (pieces.some(({ velocity }) => !(velocity > least))) continue;
    const flow = states.get(pipes[0]!.path)!.flow;
    lines.push({ path, pieces, backward: flow < 0, after: before });
  }
  return lines;
}
