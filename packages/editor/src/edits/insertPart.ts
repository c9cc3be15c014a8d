import type { Design, OutletPart, Part, Run } from "@tidewright/design";
import { valueAt } from "@tidewright/design";
import { layoutFrame, metres } from "../elevation/frame.ts";
import type { Point } from "../elevation/scene.ts";
import { typedLength } from "./lengths.ts";
import { type Outcome, refused } from "./outcome.ts";
import { choiceLooks, type PartChoice, plainPart } from "./partChoices.ts";
import { type RunPart, runPartAt, seriesAround, teeAbove } from "./runPart.ts";
import { splitPipe } from "./splitPipe.ts";

/** Where a part goes: at a share along a part of a run, from its beginning to its end in the direction of flow. */
export interface RunSpot {
  /** JSON Pointer of the part of the run. */
  readonly path: string;
  /** 0 is before it, 1 behind it; between the two a pipe is cut. */
  readonly share: number;
  /** Place in the picture, from which a branch finds its way [m]. */
  readonly at?: Point;
}

/** Returns the edits that put a part at a spot of a run: a pipe is cut there, its length and rise shared out.
 *  design checked design   spot   choice which part   -> Outcome, the new part in hand
 *  Source: own construction. */
export function insertPart(design: Design, spot: RunSpot, choice: PartChoice): Outcome {
  const there = runPartAt(design, spot.path);
  if (there === undefined) return refused("drawing.why.noRunHere");
  if (choice === "siphonBreak") return addSiphonBreak(there);
  if (choice === "tee") return insertTee(design, there, spot);
  const { base, index, part, run } = there;
  const series = seriesAround(design, base, index + (spot.share > 0.5 ? 1 : 0));
  const made = plainPart(choice, series, design.display.length.unit)!;
  const label = { key: "drawing.step.insert", named: { part: choiceLooks[choice].name } } as const;
  const pieces = part.kind === "pipe" && choice !== "pipe" ? splitPipe(part, spot.share) : undefined;
  if (pieces !== undefined)
    return {
      ok: true,
      edits: [
        { op: "set", path: there.path, value: pieces[0] },
        { op: "insert", path: `${base}/${index + 1}`, value: made },
        { op: "insert", path: `${base}/${index + 2}`, value: pieces[1] },
      ],
      select: `${base}/${index + 1}`,
      label,
    };
  // Nothing stands behind the end of a run.
  const end = part.kind === "outlet" || part.kind === "tee";
  const place = end || spot.share < 0.5 ? index : index + 1;
  return {
    ok: true,
    edits: [{ op: "insert", path: `${base}/${Math.min(place, run.length)}`, value: made }],
    select: `${base}/${Math.min(place, run.length)}`,
    label,
  };
}

/** A hole just below the surface lets air in when the pump stops. 15 mm is common practice, no source. */
function addSiphonBreak(there: RunPart): Outcome {
  const end = there.run.at(-1);
  if (end?.kind !== "outlet" || there.side !== "pressure") return refused("drawing.why.siphonBreakAtOutlet");
  if (end.siphonBreak !== undefined) return refused("drawing.why.siphonBreakThere");
  const path = `${there.base}/${there.run.length - 1}`;
  return {
    ok: true,
    edits: [{ op: "set", path: `${path}/siphonBreak`, value: { value: 15, unit: "mm" } }],
    select: path,
    label: { key: "drawing.step.insert", named: { part: choiceLooks.siphonBreak.name } },
  };
}

/** The rest of the run becomes the first branch; the second is short and ends at a sensible place. A run that ends in a tee
 *  right here gets one more branch on it instead of a tee upon a tee. */
function insertTee(design: Design, there: RunPart, spot: RunSpot): Outcome {
  const { base, index, part, run, side } = there;
  if (side !== "pressure")
    return refused(side === "drain" ? "drawing.why.drainBranches" : "drawing.why.suctionBranches");
  const series = seriesAround(design, base, index);
  const branch = newBranch(design, there, series, spot.at);
  if (part.kind === "tee") return addBranch(there, branch);
  // A tee takes its size from a pipe before it, so at the very beginning of a line it goes behind some of its first pipe.
  const sized = (to: number) => teeAbove(base) !== undefined || run.slice(0, to).some(({ kind }) => kind === "pipe");
  const first = !sized(index);
  if (first && part.kind !== "pipe") {
    const pipe = run.findIndex(({ kind }, i) => i > index && kind === "pipe");
    const behind = pipe < 0 ? undefined : runPartAt(design, `${base}/${pipe}`);
    if (behind === undefined) return refused("drawing.why.noRunHere");
    return insertTee(design, behind, {
      path: behind.path,
      share: 0.2,
      ...(spot.at === undefined ? {} : { at: spot.at }),
    });
  }
  const share = first ? Math.max(0.2, spot.share) : spot.share;
  const pieces = part.kind === "pipe" ? splitPipe(part, share) : undefined;
  const before: Part[] = run.slice(0, index);
  let after: Part[] = run.slice(index + 1);
  if (pieces !== undefined) {
    before.push(pieces[0]);
    after = [pieces[1], ...after];
  } else if (part.kind === "outlet" || share < 0.5) after = [part, ...after];
  else before.push(part);
  const tee: Part = { kind: "tee", branches: [after, branch] };
  // Where the run goes on straight into another tee, that tee takes the branch.
  const next = after.length === 1 ? after[0] : undefined;
  if (next?.kind === "tee") tee.branches = [...next.branches, branch];
  if (tee.branches.length > 8) return refused("drawing.why.eightBranches");
  return {
    ok: true,
    edits: [{ op: "set", path: base, value: [...before, tee] }],
    select: `${base}/${before.length}`,
    label: { key: "drawing.step.insert", named: { part: choiceLooks.tee.name } },
  };
}

function addBranch(there: RunPart, branch: Run): Outcome {
  if (there.part.kind !== "tee") return refused("drawing.why.noRunHere");
  const count = there.part.branches.length;
  if (count >= 8) return refused("drawing.why.eightBranches");
  return {
    ok: true,
    edits: [{ op: "insert", path: `${there.path}/branches/${count}`, value: branch }],
    select: `${there.path}/branches/${count}/${branch.length - 1}`,
    label: { key: "drawing.step.addBranch" },
  };
}

/** A short branch: into the display from beside it, into a chamber from within the stand; never where its loop must not end. */
function newBranch(design: Design, there: RunPart, series: string, at: Point | undefined): Run {
  const loop = design.loops[there.line];
  const frame = layoutFrame(design, undefined);
  const y = at?.y ?? frame.standTop - 0.1;
  const purpose = loop?.purpose ?? (loop?.from.place === "display" ? "closed" : "return");
  const upward = purpose === "closed" || (purpose === "return" && y > frame.standTop - 0.02);
  const chambers = frame.chambers.length > 1 ? frame.chambers.slice(0, -1) : frame.chambers;
  const near = (x: number) => chambers.reduce((best, one) => (away(one, x) < away(best, x) ? one : best), chambers[0]!);
  const to = upward ? "display" : `sump.${near(at?.x ?? frame.chambers.at(-1)!.end).id}`;
  const level = upward ? frame.level.display : near(at?.x ?? frame.chambers.at(-1)!.end).level;
  const unit = design.display.length.unit;
  const rise = level - y;
  const length = typedLength(Math.max(0.3, Math.abs(rise) + 0.1), unit);
  const risen = typedLength(rise, unit);
  const outlet: OutletPart = { kind: "outlet", to, depth: typedLength(upward ? 0.03 : 0.02, unit) };
  return [{ kind: "pipe", series, length, ...(Math.abs(metres(risen)) > 0.004 ? { rise: risen } : {}) }, outlet];
}

const away = ({ x0, x1 }: { readonly x0: number; readonly x1: number }, x: number): number =>
  Math.max(0, x0 - x, x - x1);

/** Returns the run that a part put beside a pump or a drain goes into: the beginning of its line.
 *  design   path of a pump, a drain or a part of a run   -> path of a part of a run; undefined where there is none
 *  Source: own construction. */
export function runStartOf(design: Design, path: string): string | undefined {
  if (runPartAt(design, path) !== undefined) return path;
  const line = /^\/(drains|loops)\/\d+/.exec(path)?.[0];
  if (line === undefined || valueAt(design, `${line}/run/0`) === undefined) return undefined;
  return `${line}/run/0`;
}
