import type { Extent, ScenePart, View } from "@tidewright/editor";
import { englishWords, type Words } from "@tidewright/words";
import type { FilmScene } from "./filmScene.ts";

/** Part of the design that the highest safe line is about. */
export const safeLinePath = "/sump/operatingLevel";

/** The highest safe operating line, dashed across the return chamber. */
export function SafeLine(props: {
  readonly scene: Pick<FilmScene, "vessels">;
  readonly view: View;
  readonly level: number | undefined;
}) {
  const chamber = returnChamber(props.scene);
  if (chamber === undefined || props.level === undefined) return null;
  const a = props.view.toScreen({ x: chamber.x0, y: chamber.y0 + props.level });
  const b = props.view.toScreen({ x: chamber.x1, y: chamber.y0 + props.level });
  return <path d={`M${a.x},${a.y}H${b.x}`} className="tw-ruled" data-safe-line />;
}

/** Returns the label of the highest safe line for a film, if it is known.
 *  scene FilmScene   level above the sump's floor [m]   -> part for `placeLabels` */
export function safeLinePart(
  scene: Pick<FilmScene, "vessels">,
  level: number | undefined,
  words: Words = englishWords,
): ScenePart | undefined {
  const chamber = returnChamber(scene);
  return chamber === undefined || level === undefined
    ? undefined
    : safeLineLabel(
        chamber,
        level,
        scene.vessels.filter(({ over, place }) => over || place === "display").map(({ extent }) => extent),
        words,
      );
}

/** Returns the label of the highest safe line: at its end, on the outside of the sump.
 *  chamber its walls and floor [m]   level above the floor [m]   notIn bodies it keeps out of   -> part for `placeLabels` */
export function safeLineLabel(
  chamber: Pick<Extent, "x1" | "y0">,
  level: number,
  notIn: readonly Extent[] = [],
  { say }: Words = englishWords,
): ScenePart {
  return {
    path: safeLinePath,
    name: say("film.safeLine"),
    anchor: { x: chamber.x1, y: chamber.y0 + level },
    figures: [{ value: level, dimension: "length", after: say("film.deep") }],
    rank: 1,
    // It speaks of the sump; among tanks and boxes above it would seem to speak of them.
    notIn,
    lean: 0,
  };
}

const returnChamber = ({ vessels }: Pick<FilmScene, "vessels">): Extent | undefined =>
  vessels.filter(({ place }) => place.startsWith("sump.")).at(-1)?.extent;
