import type { Drain, Run } from "@tidewright/design";
import { boreOf, type SceneBuilder } from "./builder.ts";
import { metres } from "./frame.ts";
import { drawOutletRun, endLevel } from "./outlets.ts";
import { tidyPolyline } from "./polyline.ts";
import type { Figure, PipeWater, Point } from "./scene.ts";

const drainWords = {
  ventedStandpipe: "vented standpipe",
  throttledSiphon: "throttled siphon",
  openChannel: "open channel",
  dryStandpipe: "dry standpipe",
} as const;

/** Adds every drain from its inlet in the overflow box down to its chamber.
 *  builder the scene
 *  Findings: none. Throws: never.
 *  Valid: any number of drains; they stand side by side in the box in the order of the design.
 *  Source: own construction. */
export function drawDrains(builder: SceneBuilder): void {
  const { design, frame } = builder;
  const xs = inletPlaces(builder);
  const starts = design.drains.map((drain, i) => ({
    x: xs[i]!,
    y: frame.display.y0 + metres(drain.inlet.elevation),
  }));
  const targets = drainTargets(builder, starts);
  const crossings = jogHeights(builder, starts, targets);
  design.drains.forEach((drain, i) => {
    const start = starts[i]!;
    const end = targets[i]!;
    const points = tidyPolyline([start, { x: start.x, y: crossings[i]! }, { x: end.x, y: crossings[i]! }, end]);
    drawDrain(builder, drain, i, points);
  });
}

/** Returns where the drains' inlets stand: side by side in the box, as straight above the first chamber as the box allows.
 *  builder the scene   -> places along [m], one for each drain
 *  Findings: none. Throws: never.
 *  Valid: any number of drains.
 *  Source: own construction. */
export function inletPlaces({ design, frame: { box, chambers } }: SceneBuilder): number[] {
  const count = design.drains.length;
  const gap = Math.min(0.15, (box.x1 - box.x0) / count);
  const half = (gap * count) / 2;
  const wish = (chambers[0]!.x0 + chambers[0]!.x1) / 2;
  const middle = Math.max(box.x0 + half, Math.min(wish, box.x1 - half));
  return design.drains.map((_, i) => middle + gap * (i + 0.5) - half);
}

/** Each drain ends in the place its first outlet names; those that share a chamber keep their order in it. */
function drainTargets(builder: SceneBuilder, starts: readonly Point[]): Point[] {
  const { design, frame } = builder;
  const places = design.drains.map((drain) => firstOutlet(drain.run)?.to ?? `sump.${design.sump.chambers[0]!.id}`);
  const targets: Point[] = [];
  for (const place of new Set(places)) {
    const members = places.flatMap((to, i) => (to === place ? [i] : []));
    const chamber = frame.chambers.findIndex((one) => `sump.${one.id}` === place);
    const wishes = members.map((i) => starts[i]!.x);
    const xs = chamber >= 0 ? builder.lanes.chamberSlots(chamber, wishes) : wishes;
    members.forEach((i, k) => {
      targets[i] = { x: xs[k]!, y: endLevel(frame, place, firstOutlet(design.drains[i]!.run)?.depth) };
    });
  }
  return targets;
}

function firstOutlet(run: Run): Extract<Run[number], { kind: "outlet" }> | undefined {
  for (const part of run) {
    if (part.kind === "outlet") return part;
    if (part.kind === "tee") return firstOutlet(part.branches[0] ?? []);
  }
  return undefined;
}

/** Drains that move right cross lowest on the left, drains that move left lowest on the right: none crosses another. */
function jogHeights(builder: SceneBuilder, starts: readonly Point[], targets: readonly Point[]): number[] {
  const heights = starts.map((start, i) => Math.min(start.y, Math.max(targets[i]!.y, builder.frame.sump.y1 + 0.1)));
  const moving = starts.flatMap((start, i) => (Math.abs(start.x - targets[i]!.x) > 0.004 ? [i] : []));
  const right = moving.filter((i) => targets[i]!.x > starts[i]!.x);
  const left = moving.filter((i) => targets[i]!.x <= starts[i]!.x).reverse();
  for (const group of [right, left]) for (const i of group) heights[i] = Math.min(builder.lanes.jog(), starts[i]!.y);
  return heights;
}

function drawDrain(builder: SceneBuilder, drain: Drain, index: number, points: readonly Point[]): void {
  const path = `/drains/${index}`;
  const state = builder.drainStates.get(path);
  const start = points[0]!;
  const bore = boreOf(builder, `${path}/run`, drain.run, 0);
  const mouth = drain.inlet.diameter ? Math.max(metres(drain.inlet.diameter), bore) : bore;
  builder.shapes.push({
    kind: "area",
    path,
    ink: "body",
    points: [
      { x: start.x - mouth / 2 - 0.004, y: start.y },
      { x: start.x + mouth / 2 + 0.004, y: start.y },
      { x: start.x + bore / 2 + 0.003, y: start.y - 0.03 },
      { x: start.x - bore / 2 - 0.003, y: start.y - 0.03 },
    ],
  });
  const { elevation } = drain.inlet;
  const figures: Figure[] = state
    ? [
        { value: state.flow, dimension: "flow" },
        // At the rim a standpipe is counted on without a siphon; what runs full as it should carries more than that, and its
        // own limit is the open valve's.
        drain.kind === "throttledSiphon"
          ? { before: "open", value: state.capacity.siphon, dimension: "flow" }
          : { before: "up to", value: state.capacityAtRim, dimension: "flow" },
      ]
    : [{ value: metres(elevation), dimension: "length", after: "inlet" }];
  builder.parts.push({
    path,
    name: /drain/i.test(drain.name) ? drain.name : `${drain.name} drain`,
    state: state ? `${drainWords[drain.kind]}, ${regimeWords[state.regime]}` : drainWords[drain.kind],
    anchor: { x: start.x, y: start.y },
    figures,
    rank: drain.role === "main" ? 1 : 2,
    lean: Math.PI,
    handle: {
      part: path,
      label: "inlet height",
      axis: "y",
      at: start,
      targets: [{ path: `${path}/inlet/elevation`, unit: elevation.unit, value: elevation.value, sign: 1 }],
      min: -5,
      max: builder.frame.box.y1 - builder.frame.display.y0,
    },
  });
  drawOutletRun(builder, { run: drain.run, base: `${path}/run`, points, water: drainWater(drain, state) });
}

/** A siphon runs full, a vented pipe carries a film on its wall, a dry one nothing. */
function drainWater(drain: Drain, state: { readonly flow: number; readonly regime: string } | undefined): PipeWater {
  if (state && !(state.flow > 1e-9)) return "dry";
  if (state && /siphon|full/i.test(state.regime)) return "full";
  if (drain.kind === "throttledSiphon") return "full";
  if (drain.kind === "dryStandpipe" && !state) return "dry";
  return "film";
}

const regimeWords: Readonly<Record<string, string>> = {
  dry: "dry",
  quiet: "quiet",
  bursts: "in bursts",
  swept: "air swept along",
  siphon: "runs full",
  beyondSiphon: "overrun",
};
