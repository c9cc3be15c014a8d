import type { Assessment } from "@tidewright/advice";
import type { Design, OutletPart, Run } from "@tidewright/design";
import { toSI } from "@tidewright/units";
import { metres } from "../elevation/frame.ts";
import type { Extent, Point, Shape } from "../elevation/scene.ts";
import { boxPlace } from "./boxPlace.ts";
import type { PlanHandle, PlanPart, PlanScene } from "./planScene.ts";

/** The plan while it is drawn. */
interface PlanBuilder {
  readonly design: Design;
  readonly assessment: Assessment | undefined;
  readonly display: Extent;
  readonly shapes: Shape[];
  readonly parts: PlanPart[];
  readonly handles: PlanHandle[];
}

/** Length of the arrow that shows a pump's aim [m]; it says a direction and no reach. */
const aimLength = 0.16;

/** Returns the tank as seen from above, to scale: walls, overflow box with the holes or pipes of its drains, zones,
 *  outlets and in-tank pumps with their aim.
 *  design checked design   assessment its numbers, if there are any
 *  -> plan [m]: x along from the left wall, y back from the front glass
 *  Valid: any checked design. Lengths are true in both directions; what the document gives no place stands at a likely
 *  one and says so (`placed`).
 *  Source: own construction. */
export function layoutPlan(design: Design, assessment: Assessment | undefined): PlanScene {
  const display = { x0: 0, y0: 0, x1: metres(design.display.length), y1: metres(design.display.width) };
  const builder: PlanBuilder = { design, assessment, display, shapes: [], parts: [], handles: [] };
  drawWalls(builder);
  const zonesWithoutArea = drawZones(builder);
  const box = drawBox(builder);
  drawHoles(builder, box);
  drawOutlets(builder, box);
  drawPumps(builder);
  const bounds = {
    x0: Math.min(display.x0, box.x0),
    y0: Math.min(display.y0, box.y0),
    x1: Math.max(display.x1, box.x1),
    y1: Math.max(display.y1, box.y1),
  };
  const { shapes, parts, handles } = builder;
  return { bounds, display, shapes, parts, handles, zonesWithoutArea };
}

const corners = ({ x0, y0, x1, y1 }: Extent): Point[] => [
  { x: x0, y: y0 },
  { x: x1, y: y0 },
  { x: x1, y: y1 },
  { x: x0, y: y1 },
];

const middle = ({ x0, y0, x1, y1 }: Extent): Point => ({ x: (x0 + x1) / 2, y: (y0 + y1) / 2 });

function drawWalls({ design, display, shapes, parts }: PlanBuilder): void {
  shapes.push({ kind: "area", path: "/display", ink: "water", points: corners(display) });
  shapes.push({ kind: "line", path: "/display", ink: "outline", points: [...corners(display), corners(display)[0]!] });
  parts.push({
    path: "/display",
    kind: "display",
    name: undefined,
    anchor: { x: display.x1, y: display.y0 },
    figures: [
      { value: metres(design.display.length), dimension: "length" },
      { value: metres(design.display.width), dimension: "length" },
    ],
    lean: -Math.PI / 2,
    placed: true,
  });
}

/** Zones lie under everything else; those without an area are told, not guessed. */
function drawZones({ design, display, shapes, parts, handles }: PlanBuilder): PlanScene["zonesWithoutArea"] {
  const without: { path: string; name: string }[] = [];
  design.display.zones?.forEach((zone, i) => {
    const path = `/display/zones/${i}`;
    if (zone.area === undefined) {
      without.push({ path, name: zone.name });
      return;
    }
    const [a, b] = zone.area.map(([x, y]): Point => ({ x: metres(x), y: metres(y) })) as [Point, Point];
    const extent = {
      x0: Math.min(a.x, b.x),
      x1: Math.max(a.x, b.x),
      y0: Math.min(a.y, b.y),
      y1: Math.max(a.y, b.y),
    };
    shapes.push({ kind: "area", path, ink: "rock", points: corners(extent) });
    parts.push({
      path,
      kind: "zone",
      name: zone.name,
      anchor: middle(extent),
      figures: zone.share === undefined ? [] : [{ value: zone.share, dimension: "share" }],
      lean: Math.PI / 2,
      placed: true,
    });
    [a, b].forEach((at, k) => {
      handles.push({
        kind: "place",
        part: path,
        label: k === 0 ? "corner" : "opposite corner",
        at,
        path: `${path}/area/${k}`,
        unit: zone.area![k]![0].unit,
        within: display,
      });
    });
  });
  return without;
}

function drawBox({ design, display, shapes, parts, handles }: PlanBuilder): Extent {
  const { extent, wall, placed } = boxPlace(design);
  shapes.push({ kind: "area", path: "/overflow/box", ink: "deepWater", points: corners(extent) });
  shapes.push({
    kind: "line",
    path: "/overflow/box",
    ink: "outline",
    points: [...corners(extent), corners(extent)[0]!],
  });
  shapes.push({ kind: "line", path: "/overflow/weir", ink: "teeth", points: weirLine(design, extent, wall) });
  const at = middle(extent);
  parts.push({
    path: "/overflow/box",
    kind: "box",
    name: undefined,
    anchor: at,
    figures: [],
    lean: wall === "back" ? Math.PI / 2 : wall === "left" ? Math.PI : 0,
    placed,
  });
  handles.push({
    kind: "wall",
    part: "/overflow/box",
    at,
    path: "/overflow/box/at",
    unit: design.overflow.box.length.unit,
    display,
    length: metres(design.overflow.box.length),
    wall,
  });
  return extent;
}

/** The weir is on the side that faces the water, from the middle out. */
function weirLine(design: Design, box: Extent, wall: "back" | "left" | "right"): Point[] {
  const along = wall === "back" ? box.x1 - box.x0 : box.y1 - box.y0;
  const half = Math.min(metres(design.overflow.weir.length), along) / 2;
  const { x, y } = middle(box);
  if (wall === "back") {
    return [
      { x: x - half, y: box.y0 },
      { x: x + half, y: box.y0 },
    ];
  }
  const face = wall === "left" ? box.x1 : box.x0;
  return [
    { x: face, y: y - half },
    { x: face, y: y + half },
  ];
}

/** Rim or pipe of each drain, as wide as it is; in a row along the box where no place is said. */
function drawHoles({ design, shapes, parts, handles }: PlanBuilder, box: Extent): void {
  const lengthwise = box.x1 - box.x0 >= box.y1 - box.y0;
  design.drains.forEach((drain, i) => {
    const path = `/drains/${i}`;
    const share = (i + 0.5) / design.drains.length;
    const likely = lengthwise
      ? { x: box.x0 + share * (box.x1 - box.x0), y: (box.y0 + box.y1) / 2 }
      : { x: (box.x0 + box.x1) / 2, y: box.y0 + share * (box.y1 - box.y0) };
    const { at: typed, diameter } = drain.inlet;
    const at = typed === undefined ? likely : { x: metres(typed[0]), y: metres(typed[1]) };
    const across = diameter === undefined ? 0.04 : metres(diameter);
    shapes.push({ kind: "area", path, ink: "body", points: circle(at, across / 2) });
    if (drain.role === "emergency") shapes.push(...cross(path, at, across / 2));
    parts.push({
      path,
      kind: "hole",
      name: drain.name,
      anchor: at,
      figures: [],
      lean: -Math.PI / 2,
      placed: typed !== undefined,
    });
    handles.push({
      kind: "place",
      part: path,
      label: "place",
      at,
      path: `${path}/inlet/at`,
      unit: typed?.[0].unit ?? design.overflow.box.length.unit,
      within: box,
    });
  });
}

const circle = ({ x, y }: Point, radius: number): Point[] =>
  Array.from({ length: 24 }, (_, k) => ({
    x: x + radius * Math.cos((k / 12) * Math.PI),
    y: y + radius * Math.sin((k / 12) * Math.PI),
  }));

/** A drain that stays dry bears a cross, so that no colour has to say it. */
const cross = (path: string, { x, y }: Point, radius: number): Shape[] => {
  const r = radius * Math.SQRT1_2;
  return [1, -1].map((way) => ({
    kind: "line",
    path,
    ink: "thin",
    points: [
      { x: x - r, y: y - way * r },
      { x: x + r, y: y + way * r },
    ],
  }));
};

/** Outlets that end in the display; without a place they stand along the wall opposite the box. */
function drawOutlets(builder: PlanBuilder, box: Extent): void {
  const { design, display, shapes, parts, handles, assessment } = builder;
  const found = design.loops.flatMap((loop, i) =>
    outletsOf(loop.run, `/loops/${i}/run`).filter(({ outlet }) => outlet.to === "display"),
  );
  const right = (box.x0 + box.x1) / 2 < (display.x0 + display.x1) / 2;
  found.forEach(({ path, outlet }, k) => {
    const likely = {
      x: right ? display.x1 - 0.05 - 0.14 * Math.floor(k / 4) : display.x0 + 0.05 + 0.14 * Math.floor(k / 4),
      y: display.y1 * (0.85 - 0.2 * (k % 4)),
    };
    const at = outlet.at === undefined ? likely : { x: metres(outlet.at[0]), y: metres(outlet.at[1]) };
    const across = outlet.nozzle === undefined ? 0.03 : metres(outlet.nozzle);
    const flow = assessment?.outlets.find((one) => one.path === path)?.flow;
    shapes.push({ kind: "area", path, ink: "jet", points: circle(at, across / 2) });
    parts.push({
      path,
      kind: "outlet",
      name: undefined,
      anchor: at,
      figures: flow === undefined ? [] : [{ value: flow, dimension: "flow" }],
      lean: right ? 0 : Math.PI,
      placed: outlet.at !== undefined,
    });
    handles.push({
      kind: "place",
      part: path,
      label: "place",
      at,
      path: `${path}/at`,
      unit: outlet.at?.[0].unit ?? design.display.length.unit,
      within: display,
    });
  });
}

function outletsOf(run: Run, base: string): { readonly path: string; readonly outlet: OutletPart }[] {
  return run.flatMap((part, i) => {
    const path = `${base}/${i}`;
    if (part.kind === "outlet") return [{ path, outlet: part }];
    if (part.kind === "tee") return part.branches.flatMap((branch, k) => outletsOf(branch, `${path}/branches/${k}`));
    return [];
  });
}

function drawPumps({ design, display, assessment, shapes, parts, handles }: PlanBuilder): void {
  design.tankPumps?.forEach((pump, i) => {
    const path = `/tankPumps/${i}`;
    const state = assessment?.tankPumps.find((one) => one.path === path);
    const at = { x: metres(pump.at[0]), y: metres(pump.at[1]) };
    const yaw = pump.aim === undefined ? 0 : toSI(pump.aim.yaw, "angle");
    const pitch = pump.aim?.pitch ?? { value: 0, unit: "deg" };
    const tip = { x: at.x + aimLength * Math.cos(yaw), y: at.y + aimLength * Math.sin(yaw) };
    shapes.push({ kind: "symbol", path, symbol: "tankPump", at, angle: yaw, size: 0.075, share: pump.speed ?? 1 });
    shapes.push({ kind: "line", path, ink: "hidden", points: [at, tip] });
    parts.push({
      path,
      kind: "tankPump",
      name: pump.name ?? state?.label ?? pump.ref.replace(/-/g, " "),
      anchor: at,
      figures: state ? [{ value: state.flow, dimension: "flow" }] : [],
      lean: Math.cos(yaw) < 0 ? 0 : Math.PI,
      placed: true,
    });
    handles.push({
      kind: "place",
      part: path,
      label: "place",
      at,
      path: `${path}/at`,
      height: pump.at[2],
      unit: pump.at[0].unit,
      within: display,
    });
    handles.push({ kind: "turn", part: path, at, reach: aimLength, yaw, path: `${path}/aim`, pitch });
  });
}
