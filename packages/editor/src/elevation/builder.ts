import type { Assessment, DrainState, PartState } from "@tidewright/advice";
import type { Design, Part, Run } from "@tidewright/design";
import { type Frame, metres } from "./frame.ts";
import type { Extent, Point, ScenePart, Shape } from "./scene.ts";

/** The scene while it is drawn: shapes and parts are added in order, and numbers are looked up by path. */
export interface SceneBuilder {
  readonly design: Design;
  readonly frame: Frame;
  readonly assessment: Assessment | undefined;
  readonly shapes: Shape[];
  readonly parts: ScenePart[];
  readonly partStates: ReadonlyMap<string, PartState>;
  readonly drainStates: ReadonlyMap<string, DrainState>;
  readonly lanes: Lanes;
  /** True where so many valves are throttled that their labels would crowd the drawing. */
  readonly manyValves: boolean;
}

/** Heights and columns for pipes that must pass each other: every call gives the next free one. */
export interface Lanes {
  /** Elevation of the next level crossing between sump and stand top [m]. */
  cabinet(): number;
  /** The next level crossing of a drain, close over the sump [m]. */
  jog(): number;
  /** The next riser beside the tank, its place along and the height at which it crosses the rim [m]. */
  riser(): { readonly x: number; readonly over: number };
  /** Makes sure that the next riser stands at `x` or to the right of it [m]. */
  clear(x: number): void;
  /** Outlets in the display, from the right wall inward [m]. */
  displaySlot(): number;
  /** A place to drop into a chamber, near the wished one where it is free [m]. */
  chamberSlot(chamber: number, wish: number): number;
  /** Places for several drops at once, in the order of their wishes and as near to them as they fit [m]. */
  chamberSlots(chamber: number, wishes: readonly number[]): number[];
}

/** Widest gap between two risers, two crossings, two drops [m]. */
const riserGap = 0.12;
const crossingGap = 0.105;
const dropGap = 0.085;

/** Returns an empty scene with its look-ups and its free lanes.
 *  design checked design   frame where the bodies stand   assessment numbers, if there are any   -> builder
 *  Findings: none. Throws: never.
 *  Valid: any checked design.
 *  Source: own construction. */
export function startScene(design: Design, frame: Frame, assessment: Assessment | undefined): SceneBuilder {
  return {
    design,
    frame,
    assessment,
    shapes: [],
    parts: [],
    partStates: new Map(assessment?.parts.map((part) => [part.path, part])),
    drainStates: new Map(assessment?.drains.map((drain) => [drain.path, drain])),
    lanes: makeLanes(design, frame),
    manyValves: [...design.drains, ...design.loops].reduce((sum, { run }) => sum + throttledValves(run), 0) > 5,
  };
}

function makeLanes(design: Design, frame: Frame): Lanes {
  const toSump = countOutlets(design.loops, (to) => to.startsWith("sump."));
  const toDisplay = Math.max(
    1,
    countOutlets(design.loops, (to) => to === "display"),
  );
  const bottom = frame.sump.y1 + 0.05;
  const room = Math.max(0.05, frame.standTop - 0.045 - frame.sump.y1);
  const ports = mixedPorts(design);
  const crossing = Math.min(crossingGap, Math.max(room / 2, room - 0.05 * ports) / Math.max(1, toSump));
  // Crossings use the room from below where there is plenty, and share it evenly where there is not.
  const lowest =
    crossing < crossingGap
      ? frame.sump.y1 + crossing / 2
      : frame.sump.y1 + Math.min(0.15, room - crossing * (toSump - 0.5));
  let jogs = 0;
  let crossings = 0;
  let risers = 0;
  let slots = 0;
  let rightmost = Math.max(frame.display.x1, frame.sump.x1);
  const taken = new Map<number, number[]>();
  const width = frame.open.x1 - frame.open.x0;
  const slotGap = Math.min(0.32, (width - 0.16) / toDisplay);
  return {
    cabinet: () => lowest + crossing * crossings++,
    jog: () => bottom + Math.min(0.05, room / 6) * jogs++,
    riser: () => {
      const x = rightmost + 0.1 + riserGap * risers;
      const over = Math.max(frame.display.y1, frame.box.y1) + 0.06 + 0.075 * risers;
      risers++;
      return { x, over };
    },
    clear: (x) => {
      rightmost = Math.max(rightmost, x - 0.1 - riserGap * risers);
    },
    displaySlot: () => frame.open.x1 - 0.09 - slotGap * slots++,
    chamberSlot: (chamber, wish) => {
      const { x0, x1 } = frame.chambers[chamber]!;
      const edge = Math.min(0.05, (x1 - x0) / 4);
      const used = taken.get(chamber) ?? [];
      const x = freeSpot(Math.min(Math.max(wish, x0 + edge), x1 - edge), used, x0 + edge, x1 - edge);
      taken.set(chamber, [...used, x]);
      return x;
    },
    chamberSlots: (chamber, wishes) => {
      const { x0, x1 } = frame.chambers[chamber]!;
      const edge = Math.min(0.035, (x1 - x0) / 4);
      const spots = evenSpots(wishes, x0 + edge, x1 - edge);
      taken.set(chamber, [...(taken.get(chamber) ?? []), ...spots]);
      return spots;
    },
  };
}

/** Wished spots in rising order, moved inside the bounds and apart from each other. */
function evenSpots(wishes: readonly number[], low: number, high: number): number[] {
  const gap = Math.min(dropGap, (high - low) / Math.max(1, wishes.length - 1));
  const order = wishes.map((x, i) => ({ x, i })).sort((a, b) => a.x - b.x || a.i - b.i);
  const spots: number[] = [];
  let least = low;
  for (const { x, i } of order) {
    spots[i] = Math.min(Math.max(x, least), high);
    least = spots[i]! + gap;
  }
  let most = high;
  for (const { i } of order.reverse()) {
    spots[i] = Math.max(Math.min(spots[i]!, most), low);
    most = spots[i]! - gap;
  }
  return spots;
}

/** Nearest spot to the wish that keeps its distance from those in use; the distance shrinks until one is found. */
function freeSpot(wish: number, used: readonly number[], low: number, high: number): number {
  for (let gap = dropGap; gap > 0.01; gap *= 0.7) {
    for (let step = 0; step <= 60; step++) {
      for (const side of [1, -1]) {
        const x = wish + side * step * 0.02;
        if (x >= low - 1e-9 && x <= high + 1e-9 && used.every((other) => Math.abs(other - x) >= gap - 1e-9)) return x;
      }
    }
  }
  return wish;
}

const throttledValves = (run: Run): number =>
  run.reduce((sum, part) => {
    if (part.kind === "valve") return sum + (part.opening < 1 ? 1 : 0);
    return part.kind === "tee" ? sum + part.branches.reduce((all, branch) => all + throttledValves(branch), 0) : sum;
  }, 0);

/** Manifolds in the cabinet with branches to both sides: one more crossing each, for what goes on to the display. */
function mixedPorts(design: Design): number {
  const inRun = (run: Run): number => {
    const tee = run.at(-1);
    if (tee?.kind !== "tee") return 0;
    const toDisplay = tee.branches.filter(
      (branch) => countOutlets([{ run: branch }], (to) => to === "display") > 0,
    ).length;
    const nested = tee.branches.reduce((sum, branch) => sum + inRun(branch), 0);
    return (toDisplay > 0 && toDisplay < tee.branches.length ? 1 : 0) + nested;
  };
  return design.loops.reduce((sum, loop) => sum + inRun(loop.run), 0);
}

function countOutlets(lines: readonly { readonly run: Run }[], matches: (to: string) => boolean): number {
  const inRun = (run: Run): number =>
    run.reduce((sum, part) => {
      if (part.kind === "outlet") return sum + (matches(part.to) ? 1 : 0);
      if (part.kind === "tee") return sum + part.branches.reduce((all, branch) => all + inRun(branch), 0);
      return sum;
    }, 0);
  return lines.reduce((sum, line) => sum + inRun(line.run), 0);
}

/** Returns the bore of a part: as computed, as typed, or as its neighbours have it.
 *  builder the scene   path of the part   run the run it stands in   index its place there   -> bore [m]
 *  Findings: none. Throws: never.
 *  Valid: any run; 26 mm where nothing says otherwise, which only happens before the first assessment.
 *  Source: own construction. */
export function boreOf(builder: SceneBuilder, base: string, run: Run, index: number): number {
  for (let away = 0; away < run.length; away++) {
    for (const i of away === 0 ? [index] : [index - away, index + away]) {
      const part = run[i];
      if (!part) continue;
      const state = part.kind === "outlet" ? undefined : builder.partStates.get(`${base}/${i}`);
      const bore = typedBore(part) ?? state?.diameter;
      if (bore !== undefined && Number.isFinite(bore) && bore > 0) return bore;
    }
  }
  return 0.026;
}

const typedBore = (part: Part): number | undefined =>
  part.kind === "pipe" && part.bore ? metres(part.bore) : undefined;

/** Returns the corners of an extent, counter-clockwise from the lower left. Example: four points for any extent. */
export function rectangle({ x0, y0, x1, y1 }: Extent): Point[] {
  return [
    { x: x0, y: y0 },
    { x: x1, y: y0 },
    { x: x1, y: y1 },
    { x: x0, y: y1 },
  ];
}
