import type { PartState } from "@tidewright/advice";
import type { Part, Run } from "@tidewright/design";
import { sharePathOf } from "../edits/mainQuantity.ts";
import { boreOf, type SceneBuilder } from "./builder.ts";
import { metres } from "./frame.ts";
import { nameOf, symbolOf } from "./partNames.ts";
import { type Bead, placeParts } from "./placeParts.ts";
import { pieceAlong, pointAlong } from "./polyline.ts";
import type { DragTarget, Figure, LineHandle, PipeWater, Point, ScenePart } from "./scene.ts";

/** Size of symbols on the line [m]: never smaller than a thumbnail, growing with the pipe. */
const symbolSize = (bore: number): number => Math.max(0.06, 1.5 * bore + 0.015);
const deviceWidth = 0.19;
const deviceHeight = 0.076;

/** A run with the line it is drawn on. */
export interface DrawnRun {
  readonly run: Run;
  /** JSON Pointer of the run. */
  readonly base: string;
  readonly points: readonly Point[];
  readonly water: PipeWater;
}

/** Adds the parts of one run along its drawn line: pipes, symbols on them, devices as boxes, the outlet's nozzle.
 *  Branches of a tee are not followed here.
 *  builder the scene   drawn the run and its line [m]
 *  Findings: none. Throws: never.
 *  Valid: any run with a line of two points or more.
 *  Source: own construction. */
export function drawRun(builder: SceneBuilder, drawn: DrawnRun): void {
  const { run, base, points, water } = drawn;
  const bores = run.map((_, i) => boreOf(builder, base, run, i));
  const places = placeParts(
    points,
    run.map((part, i) => bead(part, bores[i]!)),
  );
  const longest = longestPipe(run, places);
  run.forEach((part, i) => {
    const path = `${base}/${i}`;
    const place = places[i]!;
    const state = builder.partStates.get(path);
    if (place.to - place.from > 1e-6)
      builder.shapes.push({
        kind: "pipe",
        path,
        points: pieceAlong(points, place.from, place.to),
        bore: bores[i]!,
        water,
      });
    const middle = pointAlong(points, place.at);
    if (part.kind === "fitting" || part.kind === "valve") {
      const count = part.kind === "fitting" ? part.count : undefined;
      const size = symbolOf(part) === "elbow" ? bores[i]! * 1.5 : symbolSize(bores[i]!);
      const out = pointAlong(points, place.at + 0.004).angle;
      const share = part.kind === "valve" ? valveShare(builder, part.opening, `${base}/${i}`) : undefined;
      builder.shapes.push({
        kind: "symbol",
        path,
        symbol: symbolOf(part),
        at: { x: middle.x, y: middle.y },
        angle: middle.angle,
        ...(Math.abs(out - middle.angle) > 1e-6 ? { out } : {}),
        size,
        ...(count && count > 1 ? { count } : {}),
        ...(share === undefined ? {} : { share }),
      });
    } else if (part.kind === "device") {
      builder.shapes.push({
        kind: "box",
        path,
        extent: {
          x0: middle.x - deviceWidth / 2,
          x1: middle.x + deviceWidth / 2,
          y0: middle.y - deviceHeight / 2,
          y1: middle.y + deviceHeight / 2,
        },
        text: state?.label ?? nameOf(part),
      });
    }
    // The tee's own mark and the outlet's jet belong to whoever knows the branches and the place.
    if (part.kind === "tee" || part.kind === "outlet") return;
    builder.parts.push(scenePart(builder, part, path, middle, state, i === longest, base));
  });
  if (water !== "dry" && longest >= 0) {
    const place = places[longest]!;
    const arrow = pointAlong(points, place.from + (place.to - place.from) * 0.62);
    builder.shapes.push({
      kind: "symbol",
      path: `${base}/${longest}`,
      symbol: "flowArrow",
      at: { x: arrow.x, y: arrow.y },
      angle: arrow.angle + (runsBackward(builder.partStates.get(`${base}/${longest}`)) ? Math.PI : 0),
      size: bores[longest]! * 1.2,
    });
  }
}

function bead(part: Part, bore: number): Bead {
  if (part.kind === "pipe") {
    const rise = part.rise ? metres(part.rise) : 0;
    return { kind: "pipe", length: metres(part.length), half: 0, rise };
  }
  if (part.kind === "device") return { kind: "point", length: 0, half: deviceWidth * 0.56 };
  if (part.kind === "outlet" || part.kind === "tee") return { kind: "end", length: 0, half: bore / 2 };
  const symbol = symbolOf(part);
  if (symbol === "elbow") return { kind: "elbow", length: 0, half: bore * 0.7 };
  return { kind: "point", length: 0, half: symbolSize(bore) * (/valve|check/i.test(symbol) ? 0.58 : 0.26) };
}

function longestPipe(run: Run, places: readonly { from: number; to: number }[]): number {
  let longest = -1;
  let most = 0;
  run.forEach((part, i) => {
    const drawn = places[i]!.to - places[i]!.from;
    if (part.kind === "pipe" && drawn > most) {
      most = drawn;
      longest = i;
    }
  });
  return longest;
}

/** A valve that is set for a share of the flow shows the opening that was found for it. */
function valveShare(builder: SceneBuilder, opening: number, path: string): number {
  const shared = sharePathOf(builder.design, path);
  if (shared === undefined) return opening;
  return builder.drainStates.get(shared.replace(/\/share$/, ""))?.valveOpening ?? opening;
}

function scenePart(
  builder: SceneBuilder,
  part: Exclude<Part, { kind: "tee" | "outlet" }>,
  path: string,
  at: Point & { angle: number },
  state: PartState | undefined,
  main: boolean,
  base: string,
): ScenePart {
  const figures: Figure[] = [];
  if (part.kind === "valve")
    figures.push({ value: valveShare(builder, part.opening, path), dimension: "share", after: "open" });
  if (part.kind === "pipe") {
    if (state) figures.push({ value: Math.abs(state.velocity), dimension: "velocity" });
    figures.push({ value: metres(part.length), dimension: "length", after: "long" });
  }
  if (state && part.kind !== "pipe") figures.push({ value: Math.abs(state.flow), dimension: "flow" });
  if (state) figures.push({ value: Math.abs(state.headLoss), dimension: "head", after: "lost" });
  const upright = Math.abs(Math.sin(at.angle)) > 0.7;
  const handle =
    part.kind === "pipe"
      ? pipeHandle(part, path, at, upright)
      : part.kind === "valve"
        ? valveHandle(builder, part.opening, path, at, base)
        : undefined;
  return {
    path,
    name: part.kind === "fitting" ? nameOf(part) : (state?.label ?? nameOf(part)),
    anchor: part.kind === "device" ? { x: at.x, y: at.y + deviceHeight / 2 } : { x: at.x, y: at.y },
    figures,
    ...(runsBackward(state) ? { state: "runs backward" } : {}),
    ...(part.kind === "device" ? { lettered: deviceWidth, shown: 1 } : part.kind === "pipe" ? { shown: 1 } : {}),
    rank: rankOf(builder, part, main, base),
    lean: upright && part.kind !== "device" ? 0 : Math.PI / 2,
    ...(handle ? { handle } : {}),
  };
}

/** Returns true where water runs against the direction in which the run is written, as after a pump too weak to lift.
 *  state of the part, if it is known   -> true or false
 *  Findings: none. Throws: never.
 *  Valid: any part; less than a millilitre an hour counts as still.
 *  Source: own construction. */
export const runsBackward = (state: { readonly flow: number } | undefined): boolean => (state?.flow ?? 0) < -3e-10;

/** Devices always, throttled valves and the trunk of a loop where there is room, the rest in hand only. */
function rankOf(builder: SceneBuilder, part: Part, main: boolean, base: string): ScenePart["rank"] {
  if (part.kind === "device") return 2;
  if (part.kind === "valve") return part.opening < 1 && !(builder.manyValves && base.startsWith("/loops")) ? 3 : 4;
  return part.kind === "pipe" && main && /^\/loops\/\d+\/run$/.test(base) ? 3 : 4;
}

/** A valve's arc turns its opening; where a drain's valve is set for a share of the flow, it turns that share. */
function valveHandle(builder: SceneBuilder, opening: number, path: string, at: Point, base: string): LineHandle {
  const sharePath = sharePathOf(builder.design, path);
  const shared = sharePath === undefined ? undefined : builder.design.drains[Number(base.split("/")[2])]?.share;
  return {
    part: path,
    label: shared === undefined ? "opening" : "share of the flow",
    axis: "arc",
    at: { x: at.x, y: at.y },
    targets:
      sharePath === undefined || shared === undefined
        ? [{ path: `${path}/opening`, value: opening, sign: 1 }]
        : [{ path: sharePath, value: shared, sign: 1 }],
    min: shared === undefined ? 0 : 0.05,
    max: shared === undefined ? 1 : 0.99,
  };
}

/** Along a pipe that runs up or down, its rise grows with its length. */
function pipeHandle(
  part: Extract<Part, { kind: "pipe" }>,
  path: string,
  at: Point & { angle: number },
  upright: boolean,
): LineHandle {
  const rising = part.rise && part.rise.value !== 0 ? part.rise : undefined;
  const way = upright ? Math.sign(Math.sin(at.angle)) : Math.sign(Math.cos(at.angle));
  const sign = way < 0 ? -1 : 1;
  const length: DragTarget = { path: `${path}/length`, unit: part.length.unit, value: part.length.value, sign };
  const targets: [DragTarget, ...DragTarget[]] = [length];
  if (rising && upright)
    targets.push({
      path: `${path}/rise`,
      unit: rising.unit,
      value: rising.value,
      sign: (rising.value < 0 ? -sign : sign) as 1 | -1,
    });
  const floor = rising && upright ? Math.max(0.01, metres(part.length) - Math.abs(metres(rising)) + 0.01) : 0.01;
  return {
    part: path,
    label: "length",
    axis: upright ? "y" : "x",
    at: { x: at.x, y: at.y },
    targets,
    min: floor,
    max: 50,
  };
}
