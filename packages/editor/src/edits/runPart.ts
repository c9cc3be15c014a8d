import { type Design, fromPointer, type Part, type Run, toPointer, valueAt } from "@tidewright/design";

/** What a run is for: a line under pressure, a drain, or the way from a place to a pump. */
export type RunSide = "pressure" | "drain" | "suction";

/** One part of a run with the run it stands in. */
export interface RunPart {
  readonly path: string;
  /** JSON Pointer of the run. */
  readonly base: string;
  readonly run: Run;
  readonly index: number;
  readonly part: Part;
  readonly side: RunSide;
  /** Place of the drain or loop in its list. */
  readonly line: number;
}

/** Returns the part of a run at a path with its run, or undefined where the path leads to anything else.
 *  design checked design   path JSON Pointer   -> RunPart
 *  Source: own construction. */
export function runPartAt(design: Design, path: string): RunPart | undefined {
  const keys = fromPointer(path) ?? [];
  const [section, line, side] = keys;
  const last = Number(keys.at(-1));
  if (keys.length < 4 || !Number.isInteger(last)) return undefined;
  const list = keys.at(-2);
  const within = (section === "drains" || section === "loops") && (side === "run" || side === "suction");
  if (!within || !(keys.length === 4 || keys.at(-3) === "branches")) return undefined;
  if (list !== "run" && list !== "suction" && keys.at(-3) !== "branches") return undefined;
  const base = toPointer(keys.slice(0, -1));
  const run = valueAt(design, base) as Run | undefined;
  const part = run?.[last];
  if (run === undefined || part === undefined) return undefined;
  return {
    path,
    base,
    run,
    index: last,
    part,
    side: section === "drains" ? "drain" : side === "suction" ? "suction" : "pressure",
    line: Number(line),
  };
}

/** Returns the tee that a run branches from, or undefined for a run that begins at a pump or an inlet.
 *  base JSON Pointer of a run   -> path of the tee and the place of the branch
 *  Example: teeAbove("/loops/0/run/4/branches/1")  ->  {"tee": "/loops/0/run/4", "branch": 1} */
export function teeAbove(base: string): { readonly tee: string; readonly branch: number } | undefined {
  const found = /^(.*)\/branches\/(\d+)$/.exec(base);
  return found ? { tee: found[1]!, branch: Number(found[2]) } : undefined;
}

/** Returns the pipe size that a new part at `place` of a run should take: that of the nearest pipe before it, else after,
 *  else of the run it branches from.
 *  design   base JSON Pointer of the run   place index in it   -> series id
 *  Source: own construction. */
export function seriesAround(design: Design, base: string, place: number): string {
  const run = (valueAt(design, base) ?? []) as Run;
  for (const part of [...run.slice(0, place).reverse(), ...run.slice(place)])
    if (part.kind === "pipe" && part.series !== undefined) return part.series;
  const above = teeAbove(base);
  if (above !== undefined) {
    const tee = runPartAt(design, above.tee);
    if (tee !== undefined) return seriesAround(design, tee.base, tee.index);
  }
  return "pn16-32";
}
