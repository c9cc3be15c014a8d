import type { Assessment } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import { boundsOf } from "./bounds.ts";
import { type SceneBuilder, startScene } from "./builder.ts";
import { drawDrains } from "./drains.ts";
import { frameAlongFlow, metres } from "./frame.ts";
import { drawHangOn } from "./hangOn.ts";
import { drawLoops } from "./loops.ts";
import { mirroredDimension, mirroredPart, mirroredShape } from "./mirrored.ts";
import { drawOverflow } from "./overflow.ts";
import { drawPowerStrip } from "./powerStrip.ts";
import type { DimensionLine, Figure, Flag, Levels, Point, Scene, ScenePart } from "./scene.ts";
import { separateBoxes } from "./separateBoxes.ts";
import { drawTankPumps } from "./tankPumps.ts";
import { drawVessels } from "./vessels.ts";

/** Returns the side elevation of a design to scale: shapes in painting order, parts in the order of flow, findings at
 *  the parts they are about, dimension lines and the numbers for the title block.
 *  design checked design   assessment its numbers, if there are any   levels water levels that count instead [m]
 *  -> scene [m]: x along the display from its left wall, y up from the room's floor
 *  Findings: none. Throws: never for a checked design.
 *  Valid: any checked design. Heights are true everywhere, lengths are true for tanks, boxes and chambers; pipes end
 *  where they end and are as wide as they are, and are drawn as short between as they can pass each other.
 *  Source: own construction; symbols after ISO 14617 and ISO 10628-2. */
export function layoutElevation(design: Design, assessment: Assessment | undefined, levels?: Levels): Scene {
  const builder = startScene(design, frameAlongFlow(design, assessment, levels), assessment);
  drawVessels(builder);
  if (builder.frame.inner) drawHangOn(builder, builder.frame.inner);
  else drawOverflow(builder);
  drawDrains(builder);
  drawLoops(builder);
  drawTankPumps(builder);
  separateBoxes(builder);
  drawPowerStrip(builder);
  // All is laid out along the flow, from left to right; where the box hangs right the picture is that one turned round.
  const back = builder.frame.flow < 0;
  const length = builder.frame.display.x1;
  const shapes = back ? builder.shapes.map((shape) => mirroredShape(shape, length)) : builder.shapes;
  const ordered = inFlowOrder(builder.parts);
  const parts = back ? ordered.map((part) => mirroredPart(part, length)) : ordered;
  const lines = dimensionLines(builder);
  return {
    name: design.name,
    bounds: boundsOf(shapes),
    shapes,
    parts,
    flags: placeFlags(assessment, parts),
    dimensions: back ? lines.map((line) => mirroredDimension(line, length)) : lines,
    summary: summaryOf(assessment),
  };
}

const sections = ["display", "overflow", "drains", "sump", "loops", "tankPumps", "power"];
const sides = ["suction", "pumps", "run"];

/** Display, weir and box, drains, sump, loops, in-tank pumps; inside a loop suction, pumps, run; a run part by part. */
function inFlowOrder(parts: readonly ScenePart[]): ScenePart[] {
  const keys = parts.map(({ path }) => {
    if (path === "/display/standHeight") return [sections.length];
    const [, section = "", index = "", side = "", ...rest] = path.split("/");
    const place = Number(index);
    const head = [sections.indexOf(section), Number.isNaN(place) ? 0 : place, sides.indexOf(side)];
    return [...head, ...rest.filter((word) => word !== "branches").map(Number)];
  });
  const order = parts.map((_, i) => i);
  return order.sort((a, b) => compare(keys[a]!, keys[b]!) || a - b).map((i) => parts[i]!);
}

function compare(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < Math.max(a.length, b.length); i++) {
    const difference = (a[i] ?? -1) - (b[i] ?? -1);
    if (difference !== 0) return difference;
  }
  return 0;
}

/** Each finding stands at the part that its path names, or at the nearest part above it. */
function placeFlags(assessment: Assessment | undefined, parts: readonly ScenePart[]): Flag[] {
  const byPath = new Map(parts.map((part) => [part.path, part]));
  const find = (at: string): ScenePart | undefined => {
    for (let path = at; path !== ""; path = path.slice(0, path.lastIndexOf("/"))) {
      const part = byPath.get(path) ?? parts.find((one) => one.path.startsWith(`${path}/`));
      if (part) return part;
    }
    // The top-off's reservoir is not drawn; its water goes into the return chamber.
    return at.startsWith("/topOff") ? parts.filter((one) => one.path.startsWith("/sump/chambers/")).at(-1) : undefined;
  };
  return (assessment?.findings ?? []).flatMap((finding, i) => {
    const part = find(finding.at);
    return part ? [{ path: part.path, at: part.anchor, severity: finding.severity, number: i + 1 }] : [];
  });
}

function dimensionLines({ frame, design }: SceneBuilder): DimensionLine[] {
  const { display, sump, standTop, crest, chambers } = frame;
  const p = (x: number, y: number): Point => ({ x, y });
  const left = Math.min(display.x0, frame.box.x0);
  const lines: DimensionLine[] = [
    {
      path: "/display/length",
      a: p(display.x0, display.y1),
      b: p(display.x1, display.y1),
      side: "above",
      step: 2,
      value: display.x1,
    },
    {
      path: "/display/height",
      a: p(left, display.y0),
      b: p(left, display.y1),
      side: "left",
      step: 2,
      value: display.y1 - display.y0,
    },
    {
      path: "/overflow/weir/crest",
      a: p(left, display.y0),
      b: p(left, crest),
      side: "left",
      step: 1,
      value: crest - display.y0,
    },
    {
      path: "/sump/height",
      a: p(sump.x0, sump.y0),
      b: p(sump.x0, sump.y1),
      side: "left",
      step: 1,
      value: sump.y1 - sump.y0,
    },
    ...design.sump.chambers.map((chamber, i) => ({
      path: `/sump/chambers/${i}/length`,
      a: p(chambers[i]!.x0, sump.y0),
      b: p(chambers[i]!.x1, sump.y0),
      side: "below" as const,
      step: 1,
      value: metres(chamber.length),
    })),
  ];
  if (standTop > 0.01)
    lines.push({
      path: "/display/standHeight",
      a: p(left, 0),
      b: p(left, standTop),
      side: "left",
      step: 2,
      value: standTop,
    });
  return lines;
}

function summaryOf(assessment: Assessment | undefined): Figure[] {
  if (!assessment) return [];
  return [
    { before: "over the weir", value: assessment.overflow.flow, dimension: "flow" },
    { before: "turnover", value: assessment.turnover.return.value, dimension: "turnover" },
    { before: "water", value: assessment.volumes.system, dimension: "volume" },
    { before: "power", value: assessment.power.watts, dimension: "power" },
  ];
}
