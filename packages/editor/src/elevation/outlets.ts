import type { OutletPart, Part } from "@tidewright/design";
import { boreOf, type SceneBuilder } from "./builder.ts";
import { type Frame, metres } from "./frame.ts";
import { nameOf } from "./partNames.ts";
import { type DrawnRun, drawRun, runsBackward } from "./runs.ts";
import type { Figure, Point } from "./scene.ts";

/** Returns the point at which a run ends in a place: below its surface by the depth, at a free spot along it.
 *  builder the scene   to place   depth below the surface as typed, negative above   wish wished place along [m]
 *  -> point [m]
 *  Findings: none. Throws: never.
 *  Valid: the display, the overflow box, any chamber; an unknown chamber counts as the last one.
 *  Source: own construction. */
export function targetOf(builder: SceneBuilder, to: string, depth: OutletPart["depth"], wish: number): Point {
  const { frame, lanes } = builder;
  const y = endLevel(frame, to, depth);
  if (to === "display") return { x: lanes.displaySlot(), y };
  if (to === "overflowBox") return { x: frame.box.x0 + (frame.box.x1 - frame.box.x0) * 0.8, y };
  const found = frame.chambers.findIndex((chamber) => `sump.${chamber.id}` === to);
  return { x: lanes.chamberSlot(found < 0 ? frame.chambers.length - 1 : found, wish), y };
}

/** Returns the elevation at which a run ends in a place: its surface less the depth, but never under its floor.
 *  frame levels and floors [m]   to place   depth below the surface as typed, negative above   -> elevation [m]
 *  Findings: none. Throws: never.
 *  Valid: any place; an unknown chamber counts as the last one.
 *  Source: own construction. */
export function endLevel(frame: Frame, to: string, depth: OutletPart["depth"]): number {
  const below = depth ? metres(depth) : 0;
  if (to === "display") return Math.max(frame.level.display - below, frame.display.y0 + 0.01);
  if (to === "overflowBox") return Math.max(frame.level.box - below, frame.box.y0 + 0.01);
  const chamber = frame.chambers.find((one) => `sump.${one.id}` === to) ?? frame.chambers.at(-1)!;
  return Math.max(chamber.level - below, frame.sump.y0 + 0.01);
}

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
  const angle = inDisplay ? (end.x >= middle ? Math.PI : 0) : -Math.PI / 2;
  const size = Math.max(bore * 1.35, 0.03);
  const along = { x: Math.cos(angle), y: Math.sin(angle) };
  // The spout begins at the pipe's axis and points the way the jet goes.
  const spout = { x: end.x + along.x * size * 0.38, y: end.y + along.y * size * 0.38 };
  const mouth = { x: end.x + along.x * size * 0.8, y: end.y + along.y * size * 0.8 };
  if (inDisplay || part.nozzle) builder.shapes.push({ kind: "symbol", path, symbol: "nozzle", at: spout, angle, size });
  const backward = runsBackward(state);
  const speed = backward ? 0 : state?.jetVelocity;
  if (inDisplay && (speed === undefined || speed > 1e-4)) {
    const room = angle > 1 ? end.x - open.x0 : open.x1 - end.x;
    const reach = Math.max(0.08, Math.min(0.16 + 0.12 * (speed ?? 1), room * 0.9, display.x1 * 0.32));
    builder.shapes.push({ kind: "area", path, ink: "jet", points: jetCone(mouth, angle, jet, reach) });
  }
  const figures: Figure[] = [];
  if (state) {
    figures.push({ value: Math.abs(state.jetVelocity), dimension: "velocity" });
    figures.push({ value: Math.abs(state.flow), dimension: "flow" });
  } else if (part_) figures.push({ value: part_.flow, dimension: "flow" });
  else if (part.depth) figures.push({ value: metres(part.depth), dimension: "length", after: "deep" });
  builder.parts.push({
    path,
    name: outletName(part),
    anchor: end,
    figures,
    ...(backward ? { state: "draws water in" } : {}),
    rank: inDisplay ? 2 : 4,
    lean: angle > 1 ? Math.PI * 1.25 : inDisplay ? -Math.PI / 4 : -Math.PI / 2,
    handle: {
      part: path,
      label: "depth",
      axis: "y",
      at: end,
      // Deeper is lower, and without a depth the end stands at the surface.
      targets: [
        {
          path: `${path}/depth`,
          unit: part.depth?.unit ?? builder.design.display.length.unit,
          value: part.depth?.value ?? 0,
          sign: -1,
        },
      ],
      min: -1,
      max: 5,
    },
  });
}

/** The note where it names the outlet, such as "left return"; a bare "left" is told to be one. */
function outletName(part: OutletPart): string {
  const { note } = part;
  if (!note || note.length > 28) return nameOf(part as Part);
  return /outlet|return|nozzle|jet|spray/i.test(note) ? note : `outlet, ${note}`;
}

/** A free jet widens by about a tenth of its way on each side. */
function jetCone(at: Point, angle: number, diameter: number, reach: number): Point[] {
  const along = { x: Math.cos(angle), y: Math.sin(angle) };
  const across = { x: -along.y, y: along.x };
  const edge = (way: number, side: number) => ({
    x: at.x + along.x * way + across.x * side * (diameter / 2 + 0.1 * way),
    y: at.y + along.y * way + across.y * side * (diameter / 2 + 0.1 * way),
  });
  return [edge(0.004, 1), edge(reach, 0.9), edge(reach * 1.04, 0), edge(reach, -0.9), edge(0.004, -1)];
}
