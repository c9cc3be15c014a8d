import type { Loop, Run } from "@tidewright/design";
import { boreOf, type SceneBuilder } from "./builder.ts";
import { drawOutletRun, targetOf } from "./outlets.ts";
import { tidyPolyline } from "./polyline.ts";
import { drawPumps, type PumpStation } from "./pumps.ts";
import type { Point } from "./scene.ts";

/** Adds every loop: its pumps where they are placed, its suction, and its run as a tree with tees and branches.
 *  builder the scene
 *  Findings: none. Throws: never.
 *  Valid: any checked design. Ends and pumps stand at their true heights; what lies between is drawn as short as
 *  it can pass the rest: up beside the tank and over its rim, or across between sump and stand top.
 *  Source: own construction. */
export function drawLoops(builder: SceneBuilder): void {
  // The loops that lift from the sump rise next to the tank; those that go round in the display stand outside them.
  const order = builder.design.loops.map((_, i) => i);
  const outer = (i: number) => (builder.design.loops[i]!.from.place === "display" ? 1 : 0);
  order.sort((a, b) => outer(a) - outer(b));
  for (const i of order) drawLoop(builder, builder.design.loops[i]!, i);
}

function drawLoop(builder: SceneBuilder, loop: Loop, index: number): void {
  const path = `/loops/${index}`;
  const station = drawPumps(builder, loop, index);
  const flowing = builder.assessment ? Math.abs(builder.assessment.loops[index]?.flow ?? 0) > 1e-9 : true;
  drawTree({ builder, water: flowing ? "full" : "dry" }, loop.run, `${path}/run`, station.discharge, station);
}

interface Tree {
  readonly builder: SceneBuilder;
  readonly water: "full" | "dry";
}

type Side = "display" | "sump" | "mixed";

/** Draws a run from a port to its outlet, or to its tee and on through every branch. */
function drawTree(tree: Tree, run: Run, base: string, from: Point, station: PumpStation | undefined): void {
  const last = run.at(-1);
  const side = sideOf(run);
  const lead = leadOf(tree.builder, from, station);
  if (last?.kind !== "tee") {
    const end = outletPoint(tree.builder, run, from);
    drawOutletRun(tree.builder, {
      run,
      base,
      points: tidyPolyline([...lead, ...wayTo(tree.builder, lead.at(-1)!, end, side)]),
      water: tree.water,
    });
    return;
  }
  if (side === "mixed") drawCabinetTee(tree, run, base, lead);
  else drawHeaderTee(tree, run, base, lead, side);
}

/** A pump in the sump lifts straight out of it first, so that no pipe runs through glass; one outside clears itself. */
function leadOf(builder: SceneBuilder, from: Point, station: PumpStation | undefined): Point[] {
  if (!station) return [from];
  if (!station.inSump) return [from, { x: from.x, y: from.y + 0.09 }];
  return [from, { x: from.x, y: Math.max(from.y, builder.frame.sump.y1 + 0.03) }];
}

function outletPoint(builder: SceneBuilder, run: Run, from: Point): Point {
  const outlet = run.find((part) => part.kind === "outlet");
  const lastChamber = builder.design.sump.chambers.at(-1)!.id;
  if (outlet?.kind !== "outlet") return targetOf(builder, `sump.${lastChamber}`, undefined, from.x);
  return targetOf(builder, outlet.to, outlet.depth, from.x - 0.2);
}

/** Corners from a port to an end: up a riser and over the rim, or across above the sump and down into it. */
function wayTo(builder: SceneBuilder, from: Point, end: Point, side: Side): Point[] {
  const { display } = builder.frame;
  const within = from.x > display.x0 && from.x < display.x1 && from.y > display.y0;
  if (side !== "sump" && within) return [{ x: end.x, y: from.y }, end];
  if (side !== "sump") {
    const { x, over } = builder.lanes.riser();
    return [{ x, y: from.y }, { x, y: over }, { x: end.x, y: over }, end];
  }
  const across = Math.max(from.y, builder.lanes.cabinet());
  return [{ x: from.x, y: across }, { x: end.x, y: across }, end];
}

/** All branches end on one side: the tee is a level header above them, with a drop to each. */
function drawHeaderTee(tree: Tree, run: Run, base: string, lead: readonly Point[], side: Side): void {
  const { builder } = tree;
  const tee = run.at(-1)!;
  if (tee.kind !== "tee") return;
  const ends = leftToLeft(
    tee.branches,
    tee.branches.map((branch) => collectEnds(builder, branch, lead.at(-1)!)),
    builder.frame.flow,
  );
  const way = wayTo(builder, lead.at(-1)!, ends[0]![0]!, side);
  const level = way.at(-2)!.y;
  const inlet = {
    x: nearest(
      lead,
      way,
      ends.map((group) => group[0]!.x),
    ),
    y: level,
  };
  drawOutletRun(builder, {
    run,
    base,
    points: tidyPolyline([...lead, ...way.slice(0, -2), inlet]),
    water: tree.water,
  });
  const bore = boreOf(builder, base, run, run.length - 1);
  const xs = ends.map((group) => group[0]!.x);
  drawTeeMark(
    tree,
    `${base}/${run.length - 1}`,
    inlet,
    [
      { x: Math.min(...xs, inlet.x), y: level },
      { x: Math.max(...xs, inlet.x), y: level },
    ],
    bore,
  );
  tee.branches.forEach((branch, i) =>
    drawDrops(tree, branch, `${base}/${run.length - 1}/branches/${i}`, { x: xs[i]!, y: level }, ends[i]!),
  );
}

/** Outlets that are called left and right stand so, where the names tell. */
function leftToLeft(branches: readonly Run[], ends: Point[][], flow: 1 | -1): Point[][] {
  const sides = branches.map((branch) => {
    const note = branch.at(-1)?.note ?? "";
    return /\bleft\b/i.test(note) ? -flow : /\bright\b/i.test(note) ? flow : 0;
  });
  if (ends.some((group) => group.length !== 1) || !sides.includes(-1) || !sides.includes(1)) return ends;
  const order = sides.map((side, i) => ({ side, i })).sort((a, b) => a.side - b.side || a.i - b.i);
  const xs = ends.map((group) => group[0]!.x).sort((a, b) => a - b);
  const placed: Point[][] = [];
  order.forEach(({ i }, k) => {
    placed[i] = [{ x: xs[k]!, y: ends[i]![0]!.y }];
  });
  return placed;
}

/** Where the header is met: at the drop nearest to where the water comes from. */
function nearest(lead: readonly Point[], way: readonly Point[], xs: readonly number[]): number {
  const from = way.length > 3 ? way.at(-3)!.x : lead.at(-1)!.x;
  return xs.reduce((best, x) => (Math.abs(x - from) < Math.abs(best - from) ? x : best), xs[0]!);
}

/** The ends of a branch in order; nested tees give one end for each of theirs. */
function collectEnds(builder: SceneBuilder, run: Run, from: Point): Point[] {
  const last = run.at(-1);
  if (last?.kind === "tee") return last.branches.flatMap((branch) => collectEnds(builder, branch, from));
  return [outletPoint(builder, run, from)];
}

/** A branch below a header: straight down to its end, or to a header of its own halfway down. */
function drawDrops(tree: Tree, run: Run, base: string, from: Point, ends: readonly Point[]): void {
  const last = run.at(-1);
  const first = ends[0]!;
  if (last?.kind !== "tee") {
    const points = tidyPolyline([from, { x: first.x, y: from.y }, first]);
    drawOutletRun(tree.builder, { run, base, points, water: tree.water });
    return;
  }
  const level = from.y - Math.min(0.09, Math.abs(from.y - first.y) * 0.4);
  const inlet = { x: from.x, y: level };
  drawOutletRun(tree.builder, { run, base, points: [from, inlet], water: tree.water });
  const xs = ends.map((end) => end.x);
  const path = `${base}/${run.length - 1}`;
  const span = [
    { x: Math.min(...xs, inlet.x), y: level },
    { x: Math.max(...xs, inlet.x), y: level },
  ];
  drawTeeMark(tree, path, inlet, span, boreOf(tree.builder, base, run, run.length - 1));
  let used = 0;
  last.branches.forEach((branch, i) => {
    const own = ends.slice(used, used + countEnds(branch));
    used += own.length;
    drawDrops(tree, branch, `${path}/branches/${i}`, { x: own[0]!.x, y: level }, own);
  });
}

const countEnds = (run: Run): number => {
  const last = run.at(-1);
  return last?.kind === "tee" ? last.branches.reduce((sum, branch) => sum + countEnds(branch), 0) : 1;
};

/** Branches to both sides: an upright header in the cabinet with the ports to the sump. A single branch to the display
 *  leaves at its top; of several the header goes on beside the tank, where there is height for their ports. */
function drawCabinetTee(tree: Tree, run: Run, base: string, lead: readonly Point[]): void {
  const { builder } = tree;
  const tee = run.at(-1)!;
  if (tee.kind !== "tee") return;
  const end = lead.at(-1)!;
  const path = `${base}/${run.length - 1}`;
  const branches = tee.branches.map((branch, i) => ({ branch, i, side: sideOf(branch) }));
  // Of the branches into the sump the nearest leaves lowest, so that none crosses another on its way down.
  const down = branches
    .filter(({ side }) => side === "sump")
    .sort((a, b) => wishOf(builder, b.branch) - wishOf(builder, a.branch));
  const up = branches.filter(({ side }) => side !== "sump");
  const ports = new Map<number, Point>();
  let level = end.y + 0.01;
  for (const { i } of down) {
    level = Math.max(builder.lanes.cabinet(), level);
    ports.set(i, { x: end.x, y: level });
    level += 0.03;
  }
  const top = Math.max(level, Math.min(builder.frame.standTop - 0.045, level + 0.03));
  const header: Point[] = [
    { x: end.x, y: Math.min(top, ...[...ports.values()].map((port) => port.y)) },
    { x: end.x, y: top },
  ];
  if (up.length > 1) {
    const { x } = builder.lanes.riser();
    header.push({ x, y: top }, { x, y: top + 0.09 * up.length });
    // The highest port takes the nearest riser, so that the others pass below and outside it.
    up.reverse().forEach(({ i }, k) => ports.set(i, { x, y: top + 0.09 * (up.length - k) }));
  } else for (const { i } of up) ports.set(i, { x: end.x, y: top });
  drawOutletRun(builder, { run, base, points: tidyPolyline([...lead, header[0]!]), water: tree.water });
  drawTeeMark(tree, path, header[0]!, header, boreOf(builder, base, run, run.length - 1));
  for (const { branch, i, side } of [...down, ...up])
    drawPort(tree, branch, `${path}/branches/${i}`, ports.get(i)!, side);
}

function drawPort(tree: Tree, branch: Run, base: string, port: Point, side: Side): void {
  const { builder } = tree;
  if (branch.at(-1)?.kind === "tee") {
    drawTree(tree, branch, base, port, undefined);
    return;
  }
  const target = outletPoint(builder, branch, port);
  const points =
    side === "sump" ? [port, { x: target.x, y: port.y }, target] : [port, ...wayTo(builder, port, target, side)];
  drawOutletRun(builder, { run: branch, base, points: tidyPolyline(points), water: tree.water });
}

/** Place along the sump that a branch goes to; larger is nearer to the pumps on the right. */
function wishOf(builder: SceneBuilder, run: Run): number {
  const to = firstPlace(run);
  return builder.frame.chambers.find((chamber) => `sump.${chamber.id}` === to)?.x0 ?? 0;
}

function firstPlace(run: Run): string {
  const last = run.at(-1);
  if (last?.kind === "tee") return firstPlace(last.branches[0]!);
  return last?.kind === "outlet" ? last.to : "";
}

function sideOf(run: Run): Side {
  const last = run.at(-1);
  if (last?.kind === "tee") {
    const sides = new Set(last.branches.map(sideOf));
    return sides.size === 1 ? [...sides][0]! : "mixed";
  }
  return last?.kind === "outlet" && !last.to.startsWith("sump.") ? "display" : "sump";
}

function drawTeeMark(tree: Tree, path: string, at: Point, span: readonly Point[], bore: number): void {
  const { builder } = tree;
  builder.shapes.push({ kind: "pipe", path, points: tidyPolyline(span), bore, water: tree.water, square: true });
  builder.shapes.push({ kind: "symbol", path, symbol: "tee", at, angle: 0, size: bore * 1.5 });
  const state = builder.partStates.get(path);
  builder.parts.push({
    path,
    name: "tee",
    anchor: at,
    figures: state
      ? [
          { value: Math.abs(state.flow), dimension: "flow" },
          { value: Math.abs(state.headLoss), dimension: "head", after: "lost" },
        ]
      : [],
    rank: 4,
    lean: Math.PI / 4,
  });
}
