import type { PumpState } from "@tidewright/advice";
import type { Loop } from "@tidewright/design";
import { boreOf, type SceneBuilder } from "./builder.ts";
import { metres } from "./frame.ts";
import { tidyPolyline } from "./polyline.ts";
import { drawRun } from "./runs.ts";
import type { Figure, Point } from "./scene.ts";

/** Where a loop's run begins: the joined discharge of its pumps. */
export interface PumpStation {
  readonly discharge: Point;
  readonly inSump: boolean;
}

/** Width of a pump's symbol [m]. */
const pumpSize = 0.11;

/** Adds the pumps of a loop with their suction line and the pipes that join them.
 *  builder the scene   loop, index its place in the design   -> the point at which its run begins [m]
 *  Findings: none. Throws: never.
 *  Valid: one to six pumps, side by side in the order of the design, in parallel or in series.
 *  Source: own construction. */
export function drawPumps(builder: SceneBuilder, loop: Loop, index: number): PumpStation {
  const base = `/loops/${index}`;
  const spots = pumpSpots(builder, loop);
  const bore = Math.max(0.016, boreOf(builder, `${base}/run`, loop.run, 0));
  const inSump = loop.pumps[0]!.placed === "inSump";
  const joined = joinPumps(builder, loop, base, spots, bore, inSump);
  if (!inSump) drawSuction(builder, loop, base, spots, bore);
  loop.pumps.forEach((pump, i) => {
    const path = `${base}/pumps/${i}`;
    const state = builder.assessment?.pumps.find((one) => one.path === path);
    const at = spots[i]!;
    const speed = state?.speed ?? pump.speed ?? 1;
    builder.shapes.push({ kind: "symbol", path, symbol: "pump", at, angle: Math.PI / 2, size: pumpSize, share: speed });
    builder.parts.push({
      path,
      name: state?.label ?? (pump.ref ? pump.ref.replace(/-/g, " ") : "pump to be chosen"),
      anchor: at,
      figures: pumpFigures(state, speed),
      rank: 1,
      lean: inSump ? -Math.PI / 4 : 0,
      handle: {
        part: path,
        label: "speed",
        axis: "arc",
        at,
        targets: [{ path: `${path}/speed`, value: pump.speed ?? 1, sign: 1 }],
        min: 0.1,
        max: 1,
      },
    });
  });
  return { discharge: joined, inSump };
}

function pumpFigures(state: PumpState | undefined, speed: number): Figure[] {
  if (!state) return [{ value: speed, dimension: "share", after: "speed" }];
  return [
    { value: state.flow, dimension: "flow" },
    { before: "at", value: state.head, dimension: "head" },
    { value: state.speed, dimension: "share", after: "speed" },
    { value: state.electricalPower, dimension: "power" },
  ];
}

/** In the sump in the chamber they draw from, in the tank at its right wall, outside to the right of sump or tank. */
function pumpSpots(builder: SceneBuilder, loop: Loop): Point[] {
  const { frame, lanes } = builder;
  const count = loop.pumps.length;
  const placed = loop.pumps[0]!.placed;
  const chamber = frame.chambers.find((one) => `sump.${one.id}` === loop.from.place) ?? frame.chambers.at(-1)!;
  const heights = loop.pumps.map((pump) => pumpElevation(builder, pump));
  if (placed === "inSump") {
    // Every pump of the chamber has its share of it, whichever loop it belongs to.
    const total = builder.design.loops
      .filter((other) => other.from.place === loop.from.place && other.pumps[0]!.placed === "inSump")
      .reduce((sum, other) => sum + other.pumps.length, 0);
    const gap = Math.min(0.17, (chamber.x1 - chamber.x0) / (total + 0.4));
    const used = builder.shapes.filter(
      (shape) =>
        shape.kind === "symbol" && shape.symbol === "pump" && shape.at.x > chamber.x0 && shape.at.x < chamber.x1,
    ).length;
    const right = Math.max(chamber.x0 + 0.05, chamber.x1 - Math.min(0.09, (chamber.x1 - chamber.x0) / 3) - used * gap);
    return heights.map((y, i) => ({ x: right - gap * (count - 1 - i), y }));
  }
  if (placed === "inTank") return heights.map((y, i) => ({ x: frame.open.x1 - 0.1 - 0.16 * (count - 1 - i), y }));
  const fromDisplay = loop.from.place === "display";
  const beside = fromDisplay ? lanes.riser().x + 0.22 : frame.sump.x1 + 0.24;
  const start = fromDisplay ? beside : Math.max(beside, usedExternal(builder) + 0.3);
  const spots = heights.map((y, i) => ({ x: start + 0.24 * i, y }));
  lanes.clear(spots.at(-1)!.x);
  return spots;
}

/** Right edge of the pumps that already stand outside [m]. */
function usedExternal(builder: SceneBuilder): number {
  const xs = builder.shapes.flatMap((shape) =>
    shape.kind === "symbol" && shape.symbol === "pump" && shape.at.x > builder.frame.sump.x1 ? [shape.at.x] : [],
  );
  return Math.max(builder.frame.sump.x1 - 0.1, ...xs);
}

/** Pumps in parallel meet in a level header above them; in series each feeds the next. */
function joinPumps(
  builder: SceneBuilder,
  loop: Loop,
  base: string,
  spots: readonly Point[],
  bore: number,
  inSump: boolean,
): Point {
  const outlet = (spot: Point) => ({ x: spot.x, y: spot.y + pumpSize / 2 });
  const last = spots.at(-1)!;
  if (spots.length === 1) return outlet(last);
  const pipe = (i: number, points: Point[]) =>
    builder.shapes.push({
      kind: "pipe",
      path: `${base}/pumps/${i}`,
      points: tidyPolyline(points),
      bore,
      water: "full",
    });
  if (loop.arrangement === "series") {
    spots.slice(0, -1).forEach((spot, i) => {
      const next = spots[i + 1]!;
      const rise = Math.max(spot.y, next.y) + pumpSize * 0.85;
      const middle = (spot.x + next.x) / 2;
      pipe(i, [
        outlet(spot),
        { x: spot.x, y: rise },
        { x: middle, y: rise },
        { x: middle, y: next.y },
        { x: next.x - pumpSize / 2, y: next.y },
      ]);
    });
    return outlet(last);
  }
  const highest = Math.max(...spots.map((spot) => spot.y)) + pumpSize / 2;
  const header = inSump ? Math.max(highest + 0.03, builder.frame.sump.y1 + 0.03) : highest + 0.08;
  spots.forEach((spot, i) => pipe(i, [outlet(spot), { x: spot.x, y: header }, { x: last.x, y: header }]));
  return { x: last.x, y: header };
}

/** From the wall of the place it draws from to the first pump, and on to the others where they work in parallel. */
function drawSuction(builder: SceneBuilder, loop: Loop, base: string, spots: readonly Point[], bore: number): void {
  const { frame } = builder;
  const first = spots[0]!;
  const depth = loop.from.depth ? metres(loop.from.depth) : 0.1;
  const chamber = frame.chambers.find((one) => `sump.${one.id}` === loop.from.place);
  const body = chamber
    ? { x1: frame.sump.x1, y0: frame.sump.y0, level: chamber.level, x: chamber.x1 }
    : { x1: frame.display.x1, y0: frame.display.y0, level: frame.level.display, x: frame.display.x1 };
  const y = Math.max(body.y0 + bore, body.level - depth);
  const start = { x: Math.min(body.x, body.x1) - 0.1, y };
  const inlet = { x: first.x - pumpSize / 2, y: first.y };
  const middle = Math.max(body.x1 + 0.06, inlet.x - Math.max(0.09, 1.7 * bore));
  const points = tidyPolyline([start, { x: middle, y }, { x: middle, y: inlet.y }, inlet]);
  if (loop.suction) drawRun(builder, { run: loop.suction, base: `${base}/suction`, points, water: "full" });
  else builder.shapes.push({ kind: "pipe", path: `${base}/from`, points, bore, water: "full" });
  if (loop.arrangement === "series") return;
  spots.slice(1).forEach((spot, i) => {
    const low = Math.min(first.y, spot.y) - pumpSize * 0.75;
    const points = [
      { x: middle, y: inlet.y },
      { x: middle, y: low },
      { x: spot.x - 0.09, y: low },
      { x: spot.x - 0.09, y: spot.y },
      { x: spot.x - pumpSize / 2, y: spot.y },
    ];
    builder.shapes.push({
      kind: "pipe",
      path: `${base}/pumps/${i + 1}`,
      points: tidyPolyline(points),
      bore,
      water: "full",
    });
  });
}

/** Height of a pump's impeller above the room's floor; without one 60 mm over the floor it stands on. */
function pumpElevation(builder: SceneBuilder, pump: Loop["pumps"][number]): number {
  const { sump, display } = builder.frame;
  if (pump.placed === "inSump") return sump.y0 + (pump.elevation ? metres(pump.elevation) : 0.06);
  if (pump.placed === "inTank") return pump.elevation ? metres(pump.elevation) : display.y0 + 0.12;
  return pump.elevation ? metres(pump.elevation) : 0.1;
}
