import { rectangle, type SceneBuilder } from "./builder.ts";
import { inletPlaces } from "./drains.ts";
import { metres } from "./frame.ts";
import { addOverflowParts, clearOf, drawFall, drawTeeth } from "./overflow.ts";
import type { Extent, Figure } from "./scene.ts";
import { drawGlass, drawSurface } from "./vessels.ts";

/** Adds an overflow that hangs on the glass, seen along the wall it hangs on: the box inside with its weir, the box outside with the
 *  drains, the tubes of the siphon over the rim, and the level in each box.
 *  builder the scene   inner the box inside [m]
 *  Findings: none. Throws: never.
 *  Valid: any overflow of the kind "hangOn". Tubes that stand one behind the other are drawn as one, and told how many they are.
 *  Source: own construction; heights true, the way across as the boxes leave room for it. */
export function drawHangOn(builder: SceneBuilder, inner: Extent): void {
  const { box, level, crest } = builder.frame;
  const { shapes } = builder;
  const water = (path: string, extent: Extent, surface: number) =>
    shapes.push({
      kind: "area",
      path,
      ink: "deepWater",
      points: rectangle({ ...extent, y1: Math.min(Math.max(surface, extent.y0), Math.max(extent.y1, extent.y0)) }),
    });
  shapes.push({ kind: "area", path: "/overflow/siphon", ink: "body", points: rectangle(inner) });
  water("/overflow/siphon", inner, level.inner);
  water("/overflow/box", box, level.box);
  drawGlass(builder, "/overflow/siphon", inner.x0, inner.x1, inner.y0, crest, crest);
  drawGlass(builder, "/overflow/box", box.x0, box.x1, box.y0, box.y1, box.y1);
  drawTeeth(builder);
  const edge = inner.x1;
  drawFall(builder, edge, level.inner, inner.y0);
  drawTube(builder, inner);
  const markX = clearOf(inletPlaces(builder), box.x0, box.x1);
  drawSurface(builder, "/overflow/box", box.x0, box.x1, level.box, markX);
  drawSurface(builder, "/overflow/siphon", inner.x0, inner.x1, level.inner, inner.x0 + 0.7 * (inner.x1 - inner.x0));
  addOverflowParts(builder, edge, markX);
}

/** One tube as it is seen: up from the box inside, over both walls, and down into the box outside, full of water. */
function drawTube(builder: SceneBuilder, inner: Extent): void {
  const { assessment, design } = builder;
  const { siphon } = design.overflow;
  if (siphon === undefined) return;
  const { box, display } = builder.frame;
  const bore = metres(siphon.bore);
  const mouth = display.y0 + metres(siphon.mouth);
  const crest = display.y0 + metres(siphon.crest);
  // The crest is the highest point of the water, the tube's middle runs half a bore below it.
  const middle = crest - bore / 2;
  const inside = inner.x0 + Math.max(bore, 0.3 * (inner.x1 - inner.x0));
  const outside = box.x1 - Math.max(bore, Math.min(0.06, 0.2 * (box.x1 - box.x0)));
  builder.shapes.push({
    kind: "pipe",
    path: "/overflow/siphon",
    bore,
    water: "full",
    points: [
      { x: inside, y: mouth },
      { x: inside, y: middle },
      { x: outside, y: middle },
      { x: outside, y: mouth },
    ],
  });
  const state = assessment?.overflow.siphon;
  const figures: Figure[] = state
    ? [
        { before: "head", value: state.head, dimension: "length" },
        { value: state.velocity, dimension: "velocity" },
      ]
    : [{ value: bore, dimension: "length" }];
  builder.parts.push({
    path: "/overflow/siphon",
    name: "siphon over the glass",
    state: siphon.tubes === 1 ? "one tube" : `${siphon.tubes} tubes`,
    anchor: { x: (inside + outside) / 2, y: crest },
    figures,
    rank: 1,
    lean: Math.PI / 2,
  });
}
