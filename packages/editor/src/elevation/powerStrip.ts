import { boundsOf } from "./bounds.ts";
import type { SceneBuilder } from "./builder.ts";
import type { Extent, Figure, Point, Shape } from "./scene.ts";

/** Size of the strip as it hangs on the stand [m]. */
const high = 0.17;
const wide = 0.28 * high;
/** Air kept between the strip and whatever else is drawn [m]. */
const gap = 0.02;

/** Adds the power strip: the place of everything that is said of circuits, sockets and running cost.
 *  builder the scene, with everything else drawn already
 *  Findings: none. Throws: never.
 *  Valid: any checked design. The strip hangs inside the stand where it covers nothing, else to the right of all; its
 *  place tells nothing of the room.
 *  Source: own construction. */
export function drawPowerStrip(builder: SceneBuilder): void {
  const { assessment, shapes } = builder;
  const at = freePlace(builder);
  shapes.push({ kind: "symbol", path: "/power", symbol: "powerStrip", at, angle: 0, size: high });
  const circuit = assessment?.power.circuits[0];
  const figures: Figure[] = assessment ? [{ value: assessment.power.watts, dimension: "power" }] : [];
  if (circuit) figures.push({ value: circuit.current, dimension: "current" });
  builder.parts.push({ path: "/power", name: "power strip", anchor: at, figures, rank: 3, lean: 0 });
}

function freePlace({ frame, shapes }: SceneBuilder): Point {
  const { display, standTop } = frame;
  const bounds = boundsOf(shapes);
  const height = Math.max(high / 2 + 0.05, standTop - 0.1 - high / 2);
  const outside = { x: bounds.x1 + 0.06 + wide / 2, y: Math.max(high / 2 + 0.05, standTop * 0.6) };
  // Between the stand's legs, from the right; a tank on the floor has no stand to hang it in.
  const places: Point[] = [];
  for (let x = display.x1 - 0.06; x > display.x0 + 0.06 && standTop > high + 0.1; x -= 0.04)
    for (const y of [height, height - 0.12, height - 0.24]) if (y > high / 2) places.push({ x, y });
  const taken = shapes.filter(({ path }) => path !== "/display/standHeight").flatMap(rectsOf);
  return places.find((place) => taken.every((rect) => isClear(place, rect))) ?? outside;
}

const isClear = ({ x, y }: Point, rect: Extent): boolean =>
  x + wide / 2 + gap < rect.x0 ||
  x - wide / 2 - gap > rect.x1 ||
  y + high / 2 + gap < rect.y0 ||
  y - high / 2 - gap > rect.y1;

/** What a shape covers: a pipe each of its pieces, anything else its box. */
function rectsOf(shape: Shape): Extent[] {
  if (shape.kind !== "pipe") return [boundsOf([shape])];
  return shape.points.slice(1).map((point, i) => boundsOf([{ ...shape, points: [shape.points[i]!, point] }]));
}
