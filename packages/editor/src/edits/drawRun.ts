import type { Design, Drain, Loop, OutletPart, Part } from "@tidewright/design";
import { type Frame, layoutFrame, metres } from "../elevation/frame.ts";
import type { Point } from "../elevation/scene.ts";
import { freeName } from "./freeName.ts";
import { insertPart } from "./insertPart.ts";
import { typedLength } from "./lengths.ts";
import { type Outcome, refused } from "./outcome.ts";
import { partsAlong, pointOfPlace, routeBetween } from "./route.ts";
import { runPartAt, seriesAround } from "./runPart.ts";

/** One end of a line that is being drawn: a place that holds water, or a spot on a line that is there. */
export type RunEnd =
  | { readonly kind: "place"; readonly place: string; readonly at?: Point }
  /** A part of a run, or a pump: the new line branches off there, or the outlet is led elsewhere. */
  | { readonly kind: "line"; readonly path: string; readonly share: number; readonly at: Point };

/** Returns the way that a line between two ends would take, for a look before it is drawn.
 *  design checked design   from, to its ends; a bare point is where the pointer is   -> corners [m]
 *  Source: own construction. */
export function previewRun(design: Design, from: RunEnd, to: RunEnd | Point): Point[] {
  const frame = layoutFrame(design, undefined);
  const end = "kind" in to ? to : undefined;
  const target = end === undefined ? (to as Point) : endPoint(frame, end);
  const start = from.kind === "line" ? from.at : startOf(frame, from);
  const drain = from.kind === "place" && from.place === "overflowBox";
  return routeBetween(frame, start, target, drain);
}

/** Returns the edits of a line drawn from one end to another: a return, a closed or a side loop, a drain, a branch of a
 *  line that is there, or an outlet led elsewhere; lengths and rises to scale, an elbow for every bend.
 *  design checked design   from, to ends   -> Outcome; a new loop's pump is still to be chosen
 *  Source: own construction. */
export function drawRun(design: Design, from: RunEnd, to: RunEnd): Outcome {
  if (to.kind !== "place") return refused("drawing.why.endsInPlace");
  if (from.kind === "place") return fromPlace(design, from.place, to.place, from.at, to.at);
  const there = runPartAt(design, from.path);
  const pump = /^\/loops\/(\d+)\/pumps\/\d+$/.exec(from.path);
  if (there?.part.kind === "outlet" && there.side === "pressure") return redirect(design, from.path, to.place);
  if (there?.part.kind === "outlet") return redirectDrain(from.path, to.place);
  const path = pump ? `/loops/${pump[1]}/run/0` : from.path;
  return branchTo(design, { path, share: pump ? 0 : from.share, at: from.at }, to);
}

/** Returns the edits of a line from one place to another.
 *  design   place, to their names: "display", "overflowBox", "sump.<chamber id>"   fromAt, toAt places in the picture [m]
 *  -> Outcome
 *  Source: own construction. */
export function fromPlace(design: Design, place: string, to: string, fromAt?: Point, toAt?: Point): Outcome {
  const frame = layoutFrame(design, undefined);
  if (place === "overflowBox") {
    if (!to.startsWith("sump.")) return refused("drawing.why.boxGoesDown");
    return newDrain(design, frame, to, toAt);
  }
  if (to === "overflowBox") return refused("drawing.why.boxTakesWeir");
  if (place === "display" && to !== "display") return refused("drawing.why.displayDrains");
  if (design.loops.length >= 12) return refused("drawing.why.twelveLoops");
  return newLoop(design, frame, place, to, fromAt, toAt);
}

function newLoop(
  design: Design,
  frame: Frame,
  place: string,
  to: string,
  fromAt: Point | undefined,
  toAt: Point | undefined,
): Outcome {
  const { unit } = design.display.length;
  const purpose = to === "display" ? (place === "display" ? "closed" : "return") : "side";
  const closed = purpose === "closed";
  const start = startOf(frame, { place, ...(fromAt === undefined ? {} : { at: fromAt }) });
  // Two lines into one chamber are not drawn over each other.
  const wish = toAt?.x ?? (place === to && !closed ? start.x - 0.15 * frame.flow : undefined);
  const end = pointOfPlace(frame, to, wish, closed ? 0.1 : 0.03);
  const series = purpose === "side" ? "hose-16" : closed ? "pn16-40" : "pn16-32";
  const outlet: OutletPart = { kind: "outlet", to, depth: typedLength(closed ? 0.1 : 0.03, unit) };
  // Without a hole below the surface a return would draw the tank down when its pump stops; 15 mm is common practice.
  if (purpose === "return") outlet.siphonBreak = { value: 15, unit: "mm" };
  const run = [...partsAlong(routeBetween(frame, start, end), series, unit), outlet];
  const name = freeName(
    purpose,
    design.loops.map((loop) => loop.name),
  );
  const loop: Loop = {
    name,
    purpose,
    from: { place, depth: typedLength(closed ? 0.2 : 0.1, unit) },
    ...(closed
      ? {
          suction: [
            { kind: "fitting", fitting: "bulkhead" },
            { kind: "pipe", series, length: typedLength(0.4, unit) },
          ] satisfies Part[],
        }
      : {}),
    pumps: [
      closed
        ? { placed: "external", elevation: typedLength(Math.max(0.1, Math.min(0.3, frame.standTop - 0.2)), unit) }
        : { placed: "inSump" },
    ],
    run,
  };
  const place_ = design.loops.length;
  return {
    ok: true,
    edits: [{ op: "insert", path: `/loops/${place_}`, value: loop }],
    select: `/loops/${place_}/pumps/0`,
    label: { key: `drawing.step.add.${purpose}` },
  };
}

/** The next drain is what the box is short of: a way for emergencies, then a second way. Its inlet stands 10 mm above the
 *  highest one there is, as far as the rim allows; common practice, no source. */
function newDrain(design: Design, frame: Frame, to: string, toAt: Point | undefined): Outcome {
  if (design.drains.length >= 12) return refused("drawing.why.twelveDrains");
  const { unit } = design.display.length;
  const emergency = !design.drains.some(({ role }) => role === "emergency");
  const floor = frame.display.y0;
  const highest = Math.max(...design.drains.map(({ inlet }) => metres(inlet.elevation)));
  const inlet = Math.max(0.05, Math.min(highest + 0.01, frame.box.y1 - floor - 0.005));
  const start = { x: (frame.box.x0 + frame.box.x1) / 2, y: floor + inlet };
  const end = pointOfPlace(frame, to, toAt?.x ?? start.x, emergency ? -0.01 : 0.02);
  const series = largestDrain(design);
  const down = frame.box.y0 - start.y;
  const unitLength = (m: number) => typedLength(m, unit);
  const below = { x: start.x, y: frame.box.y0 };
  const rest = partsAlong(routeBetween(frame, below, end, true), series, unit, true);
  const run: Part[] = [
    {
      kind: "pipe",
      series,
      length: unitLength(-down),
      rise: { ...unitLength(-down), value: -unitLength(-down).value },
    },
    { kind: "fitting", fitting: "bulkhead" },
    ...rest,
    { kind: "outlet", to, depth: unitLength(emergency ? -0.01 : 0.02) },
  ];
  const role = emergency ? "emergency" : "secondary";
  const drain: Drain = {
    name: freeName(
      role,
      design.drains.map(({ name }) => name),
    ),
    role,
    kind: emergency ? "dryStandpipe" : "openChannel",
    inlet: { elevation: unitLength(inlet) },
    run,
  };
  return {
    ok: true,
    edits: [{ op: "insert", path: `/drains/${design.drains.length}`, value: drain }],
    select: `/drains/${design.drains.length}`,
    label: { key: "drawing.step.addDrain" },
  };
}

/** A drain for emergencies must carry what the others carry, so it takes the widest of their pipes. */
function largestDrain(design: Design): string {
  const sizes = design.drains.flatMap(({ run }) =>
    run.flatMap((part) => (part.kind === "pipe" && part.series !== undefined ? [part.series] : [])),
  );
  const size = (series: string) => Number(/([\d.]+)$/.exec(series)?.[1] ?? 0);
  return sizes.reduce((best, one) => (size(one) > size(best) ? one : best), sizes[0] ?? "pn16-40");
}

/** A branch off a line: a tee where the line is met, its second branch the way to the new end. */
function branchTo(
  design: Design,
  spot: { readonly path: string; readonly share: number; readonly at: Point },
  to: Extract<RunEnd, { kind: "place" }>,
): Outcome {
  if (to.place === "overflowBox") return refused("drawing.why.boxTakesWeir");
  const teed = insertPart(design, spot, "tee");
  if (!teed.ok) return teed;
  const there = runPartAt(design, spot.path)!;
  const frame = layoutFrame(design, undefined);
  const { unit } = design.display.length;
  const series = seriesAround(design, there.base, there.index);
  const end = pointOfPlace(frame, to.place, to.at?.x, 0.03);
  const branch: Part[] = [
    ...partsAlong(routeBetween(frame, spot.at, end), series, unit),
    { kind: "outlet", to: to.place, depth: typedLength(0.03, unit) },
  ];
  const label = { key: "drawing.step.addBranch" } as const;
  const edit = teed.edits[0]!;
  const purpose = purposeEdit(design, there.line, [to.place]);
  // The tee that came with a short branch gets the drawn one in its place.
  if (edit.op === "insert")
    return {
      ...teed,
      edits: [{ ...edit, value: branch }, ...purpose],
      select: `${edit.path}/${branch.length - 1}`,
      label,
    };
  if (edit.op !== "set") return teed;
  const run = edit.value as Part[];
  const tee = run.at(-1)!;
  if (tee.kind !== "tee") return teed;
  const branches = [...tee.branches.slice(0, -1), branch];
  const path = `${edit.path}/${run.length - 1}/branches/${branches.length - 1}/${branch.length - 1}`;
  return {
    ok: true,
    edits: [{ ...edit, value: [...run.slice(0, -1), { ...tee, branches }] }, ...purpose],
    select: path,
    label,
  };
}

/** Leads an outlet to another place; what its loop is called follows where it no longer fits. */
function redirect(design: Design, path: string, to: string): Outcome {
  const there = runPartAt(design, path)!;
  if (there.part.kind !== "outlet") return refused("drawing.why.noRunHere");
  if (to === "overflowBox") return refused("drawing.why.boxTakesWeir");
  const others = outletPlaces(design.loops[there.line]!.run, `/loops/${there.line}/run`).filter(
    (one) => one.path !== path,
  );
  return {
    ok: true,
    edits: [
      { op: "set", path: `${path}/to`, value: to },
      ...purposeEdit(
        design,
        there.line,
        [to],
        others.map((one) => one.to),
      ),
    ],
    select: path,
    label: { key: "drawing.step.redirect" },
  };
}

function redirectDrain(path: string, to: string): Outcome {
  if (!to.startsWith("sump.")) return refused("drawing.why.boxGoesDown");
  return {
    ok: true,
    edits: [{ op: "set", path: `${path}/to`, value: to }],
    select: path,
    label: { key: "drawing.step.redirect" },
  };
}

/** A loop is called after where it goes; one that goes to several sides keeps "return" as long as one end is the display. */
function purposeEdit(design: Design, line: number, more: readonly string[], kept?: readonly string[]) {
  const loop = design.loops[line];
  if (loop?.purpose === undefined) return [];
  const ends = [...(kept ?? outletPlaces(loop.run, "").map(({ to }) => to)), ...more];
  const toDisplay = ends.includes("display");
  const from = loop.from.place;
  const fits = {
    return: from.startsWith("sump.") && toDisplay,
    closed: from === "display" && ends.every((to) => to === "display"),
    side: !(toDisplay && from.startsWith("sump.")),
  };
  if (fits[loop.purpose]) return [];
  const path = `/loops/${line}/purpose`;
  const next = (["return", "closed", "side"] as const).find((one) => fits[one]);
  return next === undefined ? [{ op: "remove" as const, path }] : [{ op: "set" as const, path, value: next }];
}

function outletPlaces(run: readonly Part[], base: string): { readonly path: string; readonly to: string }[] {
  return run.flatMap((part, i) => {
    if (part.kind === "outlet") return [{ path: `${base}/${i}`, to: part.to }];
    if (part.kind === "tee") return part.branches.flatMap((one, b) => outletPlaces(one, `${base}/${i}/branches/${b}`));
    return [];
  });
}

const endPoint = (frame: Frame, end: RunEnd): Point =>
  end.kind === "line" ? end.at : pointOfPlace(frame, end.place, end.at?.x, 0.03);

/** A loop's line begins at its pump: in the sump at its floor, beside the tank for one that goes round in the display. */
function startOf(frame: Frame, { place, at }: { readonly place: string; readonly at?: Point }): Point {
  if (place === "overflowBox") return pointOfPlace(frame, place, undefined, 0);
  if (place === "display")
    return {
      x:
        frame.flow > 0
          ? Math.max(frame.display.x1, frame.sump.x1) + 0.3
          : Math.min(frame.display.x0, frame.sump.x0) - 0.3,
      y: Math.max(0.1, Math.min(0.3, frame.standTop - 0.2)) + 0.055,
    };
  return { x: pointOfPlace(frame, place, at?.x, 0.05).x, y: frame.sump.y0 + 0.06 + 0.055 };
}
