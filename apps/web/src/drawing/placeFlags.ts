import type { Rect } from "./placeLabels.ts";
import type { Flag, Point, Scene } from "./scene.ts";
import type { View } from "./view.ts";

/** A flag on the screen, its number in a shape that tells how bad it is [px]. */
export interface PlacedFlag {
  readonly flag: Flag;
  readonly at: Point;
  readonly anchor: Point;
  /** Further findings that the flag stands for where they would not fit beside it. */
  readonly more: number;
}

/** Radius of a flag [px]. */
export const flagRadius = 8.5;
const step = 2 * flagRadius + 3;

/** Returns the flags in rows at their parts, the worst first, with what does not fit counted on the last of a row.
 *  scene with its findings   view of it   -> flags [px]
 *  Findings: none. Throws: never.
 *  Valid: any number of findings; a row holds three, two on a phone.
 *  Source: own construction. */
export function placeFlags(scene: Scene, view: View): PlacedFlag[] {
  const groups = new Map<string, Flag[]>();
  for (const flag of scene.flags) groups.set(flag.path, [...(groups.get(flag.path) ?? []), flag]);
  const most = view.width < 560 ? 2 : 3;
  const placed: PlacedFlag[] = [];
  for (const flags of groups.values()) {
    const anchor = view.toScreen(flags[0]!.at);
    const shown = flags.slice(0, most);
    const row = freeRow(anchor, shown.length, placed, view);
    shown.forEach((flag, i) =>
      placed.push({
        flag,
        at: { x: row.x + i * step, y: row.y },
        anchor,
        more: i === shown.length - 1 ? flags.length - shown.length : 0,
      }),
    );
  }
  return placed;
}

/** Above and to the right of the part, moved on until no flag is hit. */
function freeRow(anchor: Point, count: number, placed: readonly PlacedFlag[], view: View): Point {
  const wide = (count - 1) * step;
  const spots: Point[] = [];
  for (let ring = 0; ring < 6; ring++)
    for (const [dx, dy] of [
      [14, -16],
      [14, 16],
      [-14 - wide, -16],
      [-14 - wide, 16],
    ] as const)
      spots.push({ x: anchor.x + dx * (1 + ring * 0.5), y: anchor.y + dy * (1 + ring * 0.9) });
  const fits = (spot: Point) =>
    spot.x > flagRadius + 2 &&
    spot.x + wide < view.width - flagRadius - 2 &&
    spot.y > flagRadius + 2 &&
    spot.y < view.height - view.foot - flagRadius &&
    placed.every(({ at }) => Math.abs(at.y - spot.y) >= step || at.x < spot.x - step || at.x > spot.x + wide + step);
  return spots.find(fits) ?? spots[0]!;
}

/** Returns the areas on the screen that flags cover, for labels to keep free of [px]. */
export function flagRects(flags: readonly PlacedFlag[]): Rect[] {
  return flags.map(({ at }) => ({ x: at.x - flagRadius, y: at.y - flagRadius, width: 2 * flagRadius, height: 2 * flagRadius }));
}
