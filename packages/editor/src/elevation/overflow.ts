import { rectangle, type SceneBuilder } from "./builder.ts";
import { inletPlaces } from "./drains.ts";
import { metres } from "./frame.ts";
import { type Figure, type Point, rimFigure } from "./scene.ts";
import { drawGlass, drawSurface, nappe } from "./vessels.ts";

/** Adds the overflow: box with its water, weir with teeth, and the sheet of water falling into the box.
 *  builder the scene
 *  Findings: none. Throws: never.
 *  Valid: internal box, box beside the tank, box through the wall; for an overflow that hangs on the glass see `drawHangOn`.
 *  Source: own construction. */
export function drawOverflow(builder: SceneBuilder): void {
  const { box, level, crest } = builder.frame;
  const { design, shapes } = builder;
  const inside = design.overflow.kind === "internalBox";
  // A box before or behind the tank's water is told from it by its own ground.
  if (box.x1 > 0)
    shapes.push({
      kind: "area",
      path: "/overflow/box",
      ink: "body",
      points: rectangle({ ...box, y1: inside ? Math.max(crest, box.y0) : Math.max(box.y1, box.y0) }),
    });
  shapes.push({
    kind: "area",
    path: "/overflow/box",
    ink: "deepWater",
    points: rectangle({ ...box, y1: Math.min(Math.max(level.box, box.y0), Math.max(box.y1, box.y0)) }),
  });
  const crestTop = Math.max(crest, box.y0);
  if (inside) drawGlass(builder, "/overflow/box", box.x0, box.x1, box.y0, crestTop, crestTop);
  else drawGlass(builder, "/overflow/box", box.x0, box.x1, box.y0, box.y1, Math.min(crestTop, box.y1));
  drawTeeth(builder);
  // Inside the tank the water comes from the right into the box; beside it, from the tank on the right as well.
  const edge = box.x1;
  drawFall(builder, edge, level.box, box.y0);
  const markX = clearOf(inletPlaces(builder), box.x0, box.x1);
  drawSurface(builder, "/overflow/box", box.x0, box.x1, level.box, markX);
  addOverflowParts(builder, edge, markX);
}

/** The sheet of water that falls over the crest, where water runs and the crest is not drowned.
 *  builder the scene   edge where it falls   behind level it falls into   floor of what it falls into [m]
 *  Source: own construction. */
export function drawFall({ frame, shapes }: SceneBuilder, edge: number, behind: number, floor: number): void {
  const { crest, level } = frame;
  if (level.display > crest + 1e-5 && behind < crest)
    shapes.push({
      kind: "area",
      path: "/overflow/weir",
      ink: "nappe",
      points: nappe({ x: edge + 0.01, y: level.display }, { x: edge, y: crest }, Math.max(behind, floor), -1),
    });
}

/** The labels and handles of weir and box.
 *  builder the scene   edge where the water falls   markX where the box's level is marked [m]
 *  Source: own construction. */
export function addOverflowParts(builder: SceneBuilder, edge: number, markX: number): void {
  const { assessment, design } = builder;
  const { crest, display, level } = builder.frame;
  const { crest: typed } = design.overflow.weir;
  const figures: Figure[] = assessment
    ? [
        { value: assessment.overflow.flow, dimension: "flow" },
        { value: assessment.overflow.weirHead, dimension: "length", after: "over the crest" },
      ]
    : [{ value: metres(typed), dimension: "length", after: "crest" }];
  builder.parts.push({
    path: "/overflow/weir",
    name: "weir",
    anchor: { x: edge, y: crest },
    figures,
    rank: 1,
    lean: 2.2,
    handle: {
      part: "/overflow/weir",
      label: "weir crest",
      axis: "y",
      at: { x: edge, y: crest },
      targets: [{ path: "/overflow/weir/crest", unit: typed.unit, value: typed.value, sign: 1 }],
      min: 0.01,
      max: display.y1 - display.y0,
    },
  });
  builder.parts.push({
    path: "/overflow/box",
    name: "overflow box",
    anchor: { x: markX, y: level.box },
    figures: assessment
      ? [
          assessment.overflow.fall < 0
            ? { before: "drowns the weir by", value: -assessment.overflow.fall, dimension: "length" }
            : { before: "fall", value: assessment.overflow.fall, dimension: "length" },
          rimFigure(assessment.overflow.boxFreeboard),
        ]
      : [],
    rank: 2,
    lean: Math.PI * 0.9,
  });
}

/** Middle of the widest gap between the standpipes, for the mark of the water level. */
export function clearOf(taken: readonly number[], x0: number, x1: number): number {
  const edges = [x0, ...taken, x1].sort((a, b) => a - b);
  let best = (x0 + x1) / 2;
  let widest = 0;
  for (let i = 1; i < edges.length; i++) {
    const gap = edges[i]! - edges[i - 1]!;
    // At a wall half of the gap is as good as the whole between two pipes.
    const worth = i === 1 || i === edges.length - 1 ? gap * 1.3 : gap;
    if (worth <= widest) continue;
    widest = worth;
    best = (edges[i]! + edges[i - 1]!) / 2;
  }
  return best;
}

/** A comb along the crest, its open share and tooth height as typed; a plain crest gets a single line. */
export function drawTeeth(builder: SceneBuilder): void {
  const { weir, crest } = builder.frame;
  const { toothOpenShare = 1, toothHeight } = builder.design.overflow.weir;
  const width = weir.x1 - weir.x0;
  if (width <= 0) return;
  if (toothOpenShare >= 1) {
    builder.shapes.push({
      kind: "line",
      path: "/overflow/weir",
      ink: "outline",
      points: [
        { x: weir.x0, y: crest },
        { x: weir.x1, y: crest },
      ],
    });
    return;
  }
  const height = toothHeight ? metres(toothHeight) : 0.03;
  const count = Math.max(3, Math.min(40, Math.round(width / 0.016)));
  const pitch = width / count;
  const solid = pitch * (1 - toothOpenShare);
  const points: Point[] = [];
  for (let i = 0; i < count; i++) {
    const x = weir.x0 + pitch * i;
    points.push({ x, y: crest }, { x: x + pitch - solid, y: crest });
    points.push({ x: x + pitch - solid, y: crest + height }, { x: x + pitch, y: crest + height });
  }
  points.push({ x: weir.x1, y: crest });
  builder.shapes.push({ kind: "line", path: "/overflow/weir", ink: "teeth", points });
}
