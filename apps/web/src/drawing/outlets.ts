import type { OutletPart, Part } from "@tidewright/design";
import { boreOf, type SceneBuilder } from "./builder.ts";
import { metres } from "./frame.ts";
import { nameOf } from "./partNames.ts";
import type { Figure, Point } from "./scene.ts";
import { type DrawnRun, drawRun } from "./runs.ts";

/** Returns the point at which a run ends in a place: below its surface by the depth, at a free spot along it.
 *  builder the scene   to place   depth below the surface as typed, negative above   wish wished place along [m]
 *  -> point [m]
 *  Findings: none. Throws: never.
 *  Valid: the display, the overflow box, any chamber; an unknown chamber counts as the last one.
 *  Source: own construction. */
export function targetOf(builder: SceneBuilder, to: string, depth: OutletPart["depth"], wish: number): Point {
  const { frame, lanes } = builder;
  const below = depth ? metres(depth) : 0;
  if (to === "display") return { x: lanes.displaySlot(), y: within(frame.level.display - below, frame.display.y0) };
  if (to === "overflowBox")
    return { x: frame.box.x0 + (frame.box.x1 - frame.box.x0) * 0.8, y: within(frame.level.box - below, frame.box.y0) };
  const found = frame.chambers.findIndex((chamber) => `sump.${chamber.id}` === to);
  const index = found < 0 ? frame.chambers.length - 1 : found;
  return { x: lanes.chamberSlot(index, wish), y: within(frame.chambers[index]!.level - below, frame.sump.y0) };
}

const within = (y: number, floor: number): number => Math.max(y, floor + 0.01);

/** Adds a run and, where it ends in an outlet, the outlet's jet and its numbers.
 *  builder the scene   drawn run with its line [m]
 *  Findings: none. Throws: never.
 *  Valid: any run.
 *  Source: own construction. */
export function drawOutletRun(builder: SceneBuilder, drawn: DrawnRun): void {
  drawRun(builder, drawn);
  drawn.run.forEach((part, i) => {
    if (part.kind === "outlet") drawOutlet(builder, part, `${drawn.base}/${i}`, drawn, i);
  });
}

function drawOutlet(builder: SceneBuilder, part: OutletPart, path: string, drawn: DrawnRun, index: number): void {
  const end = drawn.points.at(-1)!;
  const state = builder.assessment?.outlets.find((outlet) => outlet.path === path);
  const part_ = builder.partStates.get(path);
  const { display, open } = builder.frame;
  const inDisplay = part.to === "display";
  const bore = boreOf(builder, drawn.base, drawn.run, index);
  const jet = state?.jetDiameter ?? (part.nozzle ? metres(part.nozzle) : bore);
  // Into the display the jet turns away from the nearer wall; into the sump it leaves downward.
  const middle = (open.x0 + open.x1) / 2;
  const angle = inDisplay ? (end.x >= middle ? Math.PI * 1.04 : -Math.PI * 0.04) : -Math.PI / 2;
  builder.shapes.push({ kind: "symbol", path, symbol: "nozzle", at: end, angle, size: Math.max(bore * 1.5, jet * 1.5, 0.03) });
  const speed = state?.jetVelocity;
  if (inDisplay && (speed === undefined || speed > 1e-4)) {
    const room = angle > 1 ? end.x - open.x0 : open.x1 - end.x;
    const reach = Math.max(0.08, Math.min(0.16 + 0.12 * (speed ?? 1), room * 0.9, display.x1 * 0.32));
    builder.shapes.push({ kind: "area", path, ink: "jet", points: jetCone(end, angle, jet, reach) });
  }
  const figures: Figure[] = [];
  if (state) {
    figures.push({ value: state.jetVelocity, dimension: "velocity" });
    figures.push({ value: state.flow, dimension: "flow" });
  } else if (part_) figures.push({ value: part_.flow, dimension: "flow" });
  else if (part.depth) figures.push({ value: metres(part.depth), dimension: "length", after: "deep" });
  builder.parts.push({
    path,
    name: part.note ?? nameOf(part as Part),
    anchor: end,
    figures,
    rank: inDisplay ? 2 : 4,
    lean: angle > 1 ? Math.PI * 1.25 : inDisplay ? -Math.PI / 4 : -Math.PI / 2,
  });
}

/** A free jet widens by about a tenth of its way on each side. */
function jetCone(at: Point, angle: number, diameter: number, reach: number): Point[] {
  const along = { x: Math.cos(angle), y: Math.sin(angle) };
  const across = { x: -along.y, y: along.x };
  const edge = (way: number, side: number) => ({
    x: at.x + along.x * way + across.x * side * (diameter / 2 + 0.1 * way),
    y: at.y + along.y * way + across.y * side * (diameter / 2 + 0.1 * way),
  });
  return [edge(0.012, 1), edge(reach, 0.9), edge(reach * 1.04, 0), edge(reach, -0.9), edge(0.012, -1)];
}
