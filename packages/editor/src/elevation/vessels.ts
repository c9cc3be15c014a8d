import { rectangle, type SceneBuilder } from "./builder.ts";
import { metres } from "./frame.ts";
import { type Figure, type Ink, type Point, rimFigure } from "./scene.ts";

/** Drawn thickness of glass [m]; the design says nothing of it. */
const glass = 0.01;

/** Adds floor, stand, display with water and rock, and the sump with its chambers: all that pipes are drawn over.
 *  builder the scene
 *  Findings: none. Throws: never.
 *  Valid: any checked design. A sump far below the floor gets a floor of its own.
 *  Source: own construction. */
export function drawVessels(builder: SceneBuilder): void {
  drawGround(builder);
  drawStand(builder);
  drawDisplay(builder);
  drawSump(builder);
}

const area = (builder: SceneBuilder, path: string, ink: Ink, points: readonly Point[]) =>
  builder.shapes.push({ kind: "area", path, ink, points });
const line = (builder: SceneBuilder, path: string, ink: Ink, points: readonly Point[]) =>
  builder.shapes.push({ kind: "line", path, ink, points });

/** Adds a water surface with the drafting mark for a level: a triangle standing on it. */
export function drawSurface(
  builder: SceneBuilder,
  path: string,
  x0: number,
  x1: number,
  y: number,
  mark: number,
): void {
  drawSurfaceLine(builder, path, x0, x1, y);
  builder.shapes.push({ kind: "symbol", path, symbol: "waterLevel", at: { x: mark, y }, angle: 0, size: 0.05 });
}

function drawSurfaceLine(builder: SceneBuilder, path: string, x0: number, x1: number, y: number): void {
  line(builder, path, "surface", [
    { x: x0, y },
    { x: x1, y },
  ]);
}

/** A tank open at the top: two walls and a floor as one cut piece of glass. */
export function drawGlass(
  builder: SceneBuilder,
  path: string,
  x0: number,
  x1: number,
  y0: number,
  leftTop: number,
  rightTop: number,
): void {
  area(builder, path, "glass", [
    { x: x0 - glass, y: leftTop },
    { x: x0 - glass, y: y0 - glass },
    { x: x1 + glass, y: y0 - glass },
    { x: x1 + glass, y: rightTop },
    { x: x1, y: rightTop },
    { x: x1, y: y0 },
    { x: x0, y: y0 },
    { x: x0, y: leftTop },
  ]);
}

function drawGround(builder: SceneBuilder): void {
  const { display, sump, box } = builder.frame;
  const left = Math.min(display.x0, sump.x0, box.x0) - 0.12;
  const right = Math.max(display.x1, sump.x1) + 0.3;
  const cellar = sump.y0 < -0.25;
  area(builder, "/room", "ground", rectangle({ x0: left, x1: right, y0: -0.035, y1: 0 }));
  if (cellar) {
    const y1 = sump.y0 - glass;
    area(builder, "/room", "ground", rectangle({ x0: sump.x0 - 0.1, x1: sump.x1 + 0.4, y0: y1 - 0.035, y1 }));
  } else if (sump.y0 > glass + 0.004) {
    line(builder, "/sump", "thin", [
      { x: sump.x0 - glass, y: sump.y0 - glass },
      { x: sump.x1 + glass, y: sump.y0 - glass },
    ]);
  }
}

function drawStand(builder: SceneBuilder): void {
  const { display, standTop } = builder.frame;
  const path = "/display/standHeight";
  if (standTop > 0.02) {
    const top = standTop - glass;
    const plate = Math.max(0, top - 0.025);
    area(builder, path, "stand", rectangle({ x0: -0.015, x1: display.x1 + 0.015, y0: plate, y1: top }));
    for (const [x0, x1] of [
      [-0.015, 0.012],
      [display.x1 - 0.012, display.x1 + 0.015],
    ] as const)
      area(builder, path, "stand", rectangle({ x0, x1, y0: 0, y1: plate }));
  }
  const { standHeight } = builder.design.display;
  builder.parts.push({
    path,
    name: "stand",
    anchor: { x: display.x1, y: Math.max(0.05, standTop * 0.16) },
    figures: [{ value: standTop, dimension: "length", after: "high" }],
    rank: 4,
    lean: 0,
    handle: {
      part: path,
      label: "stand height",
      axis: "y",
      at: { x: display.x1, y: standTop },
      targets: [{ path, unit: standHeight.unit, value: standHeight.value, sign: 1 }],
      min: 0,
      max: 10,
    },
  });
}

function drawDisplay(builder: SceneBuilder): void {
  const { display, level, open, crest, box, surfaces } = builder.frame;
  const { assessment, design } = builder;
  area(builder, "/display", "water", rectangle({ ...display, y1: Math.min(level.display, display.y1) }));
  drawRock(builder);
  // A box beside the tank takes its water over the wall, which is cut down to the crest there.
  const cut = design.overflow.kind === "externalBox" && box.x1 <= 0;
  const leftTop = cut ? Math.min(crest, display.y1) : display.y1;
  drawGlass(builder, "/display", display.x0, display.x1, display.y0, leftTop, display.y1);
  for (const { x0, x1 } of surfaces.slice(0, -1)) drawSurfaceLine(builder, "/display", x0, x1, level.display);
  drawSurface(builder, "/display", open.x0, open.x1, level.display, open.x0 + (open.x1 - open.x0) * 0.5);
  const figures: Figure[] = [];
  if (assessment) {
    figures.push({ value: assessment.volumes.display, dimension: "volume" });
    figures.push(rimFigure(assessment.overflow.displayFreeboard));
    figures.push({ value: assessment.turnover.return.value, dimension: "turnover" });
  }
  builder.parts.push({
    path: "/display",
    name: "display",
    anchor: { x: open.x0 + (open.x1 - open.x0) * 0.5, y: level.display },
    figures,
    rank: 1,
    lean: Math.PI / 2,
  });
}

/** A heap of rock whose drawn area is the rock's share of the water it stands in. */
function drawRock(builder: SceneBuilder): void {
  const { display, open, level } = builder.frame;
  const share = builder.design.display.rockShare ?? 0;
  const x0 = open.x0 + 0.1;
  const x1 = open.x1 - 0.1;
  const depth = Math.max(0, Math.min(level.display, display.y1) - display.y0);
  if (share <= 0 || x1 - x0 < 0.2 || depth < 0.05) return;
  const heap = (t: number) =>
    Math.sin(Math.PI * t) ** 0.7 *
    (0.62 + 0.26 * Math.sin(5.1 * t + 0.9) + 0.16 * Math.sin(12.7 * t) + 0.06 * Math.sin(31 * t));
  const steps = 44;
  const heights = Array.from({ length: steps + 1 }, (_, i) => Math.max(0, heap(i / steps)));
  const mean = heights.reduce((sum, height) => sum + height, 0) / steps;
  const wanted = (share * depth * display.x1) / (x1 - x0);
  const scale = Math.min(wanted / mean, (0.92 * depth) / Math.max(...heights));
  const points = heights.map((height, i) => ({ x: x0 + ((x1 - x0) * i) / steps, y: display.y0 + height * scale }));
  area(builder, "/display/rockShare", "rock", points);
}

function drawSump(builder: SceneBuilder): void {
  const { sump, chambers } = builder.frame;
  const { assessment, design } = builder;
  chambers.forEach((chamber) => {
    area(builder, chamber.path, "water", rectangle({ ...chamber, y0: sump.y0, y1: Math.min(chamber.level, sump.y1) }));
  });
  drawGlass(builder, "/sump", sump.x0, sump.x1, sump.y0, sump.y1, sump.y1);
  chambers.forEach((chamber, i) => {
    const last = i === chambers.length - 1;
    if (!last) drawBaffle(builder, i);
    drawSurface(builder, chamber.path, chamber.x0, chamber.x1, chamber.level, (chamber.x0 + chamber.x1) / 2);
    const state = assessment?.sump.chambers[i];
    const figures: Figure[] = [{ value: state?.depth ?? chamber.level - sump.y0, dimension: "length", after: "deep" }];
    if (state) figures.push({ value: state.volume, dimension: "volume" });
    const { operatingLevel } = design.sump;
    const baffle = design.sump.chambers[i]!.baffle;
    builder.parts.push({
      path: chamber.path,
      name: `${design.sump.chambers[i]!.name ?? chamber.id} chamber`.replace(/chamber chamber$/i, "chamber"),
      anchor: { x: (chamber.x0 + chamber.x1) / 2, y: Math.min(chamber.level, sump.y1) - 0.03 },
      figures,
      narrow: true,
      notIn: [
        builder.frame.display,
        builder.frame.box,
        ...chambers
          .filter((other) => other !== chamber)
          .map((other) => ({ x0: other.x0, x1: other.x1, y0: sump.y0, y1: sump.y1 })),
      ],
      rank: last ? 2 : 3,
      lean: -Math.PI / 2,
      ...(last
        ? {
            handle: {
              part: chamber.path,
              label: "operating level",
              axis: "y" as const,
              at: { x: chamber.x1 - 0.03, y: chamber.level },
              targets: [
                {
                  path: "/sump/operatingLevel",
                  unit: operatingLevel.unit,
                  value: operatingLevel.value,
                  sign: 1 as const,
                },
              ] as const,
              min: 0.01,
              max: metres(design.sump.height),
            },
          }
        : baffle
          ? {
              handle: {
                part: chamber.path,
                label: "baffle height",
                axis: "y" as const,
                at: { x: chamber.x1, y: chamber.baffle! },
                targets: [
                  { path: `${chamber.path}/baffle`, unit: baffle.unit, value: baffle.value, sign: 1 as const },
                ] as const,
                min: 0.01,
                max: metres(design.sump.height),
              },
            }
          : {}),
    });
  });
  builder.parts.push({
    path: "/sump",
    name: "sump",
    anchor: { x: sump.x0 + 0.03, y: sump.y0 + 0.02 },
    figures: assessment
      ? [
          {
            value: Math.abs(assessment.sump.margin),
            dimension: "volume",
            after: assessment.sump.margin < 0 ? "over the rim" : "to spare",
          },
          { value: assessment.sump.drainDown.total, dimension: "volume", after: "back in a power cut" },
        ]
      : [{ value: metres(design.sump.height), dimension: "length", after: "high" }],
    notIn: [sump],
    rank: 1,
    lean: -Math.PI / 2,
  });
}

/** The wall after a chamber: glass up to the baffle, or a dashed line where the side is open. */
function drawBaffle(builder: SceneBuilder, index: number): void {
  const { chambers, sump } = builder.frame;
  const { x1, baffle, path, level } = chambers[index]!;
  if (baffle === undefined) {
    line(builder, path, "hidden", [
      { x: x1, y: sump.y0 },
      { x: x1, y: sump.y1 },
    ]);
    return;
  }
  const thick = glass * 0.8;
  area(builder, path, "glass", rectangle({ x0: x1 - thick / 2, x1: x1 + thick / 2, y0: sump.y0, y1: baffle }));
  const below = chambers[index + 1]!.level;
  if (level > baffle && below < baffle - 0.004)
    area(builder, path, "nappe", nappe({ x: x1 - thick / 2, y: level }, { x: x1 + thick / 2, y: baffle }, below, 1));
}

/** The sheet of water over a crest: from the surface above it down to the surface below, thinning as it falls.
 *  above edge of the upper surface [m]   crest [m]   below lower surface [m]   way +1 to the right, -1 to the left
 *  Source: own construction. */
export function nappe(above: Point, crest: Point, below: number, way: 1 | -1): Point[] {
  const head = Math.max(0.003, above.y - crest.y);
  const fall = Math.max(0.001, crest.y - below);
  // A jet leaving the crest level with the speed of critical depth lands about sqrt(head x fall) away.
  const reach = Math.min(0.09, 0.9 * Math.sqrt(head * fall) + 0.006);
  const upper: Point[] = [];
  const lower: Point[] = [];
  for (let i = 0; i <= 8; i++) {
    const t = i / 8;
    lower.push({ x: crest.x + way * reach * t, y: crest.y - fall * t * t });
    const thick = head * (1 - 0.55 * t);
    upper.push({ x: crest.x + way * (reach * t + 0.55 * thick * t), y: crest.y - fall * t * t + thick * (1 - t) });
  }
  return [above, ...upper, ...lower.reverse()];
}
