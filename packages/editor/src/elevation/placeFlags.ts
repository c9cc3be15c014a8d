import { boxRects, obstaclesOf, overlap, type Rect } from "./placeLabels.ts";
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
 *  scene with its findings   view of it   obstacles what is drawn, as obstaclesOf gives it [px]   -> flags [px]
 *  Findings: none. Throws: never.
 *  Valid: any number of findings; a row holds three, two on a phone.
 *  Source: own construction. */
export function placeFlags(scene: Scene, view: View, obstacles = obstaclesOf(scene, view)): PlacedFlag[] {
  const groups = new Map<string, Flag[]>();
  for (const flag of scene.flags) groups.set(flag.path, [...(groups.get(flag.path) ?? []), flag]);
  const most = view.width < 560 ? 2 : 3;
  const placed: PlacedFlag[] = [];
  const boxes = boxRects(scene, view);
  for (const flags of groups.values()) {
    const anchor = view.toScreen(flags[0]!.at);
    const shown = flags.slice(0, most);
    const row = freeRow(anchor, shown.length, [...flagRects(placed), ...boxes], obstacles, view);
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

/** Near the part, over as few other marks as can be, and over no other flag or device. */
function freeRow(anchor: Point, count: number, others: readonly Rect[], obstacles: readonly Rect[], view: View): Point {
  const wide = (count - 1) * step;
  let best: Point | undefined;
  let least = Infinity;
  for (const ring of [15, 22, 31, 42, 56, 72]) {
    if (ring * 3 >= least) break;
    for (let k = 0; k < 16; k++) {
      const angle = Math.PI / 4 + (k * Math.PI) / 8;
      const x = anchor.x + Math.cos(angle) * ring - (Math.cos(angle) < -0.01 ? wide : 0);
      const y = anchor.y - Math.sin(angle) * ring;
      const rect = { x: x - flagRadius, y: y - flagRadius, width: wide + 2 * flagRadius, height: 2 * flagRadius };
      if (rect.x < 4 || rect.x + rect.width > view.width - 4 || rect.y < 4) continue;
      if (rect.y + rect.height > view.height - view.foot) continue;
      if (others.some((other) => overlap(rect, other, 2) > 0)) continue;
      let cost = ring * 3;
      for (let i = 0; i < obstacles.length && cost < least; i++) cost += overlap(rect, obstacles[i]!, 1) * 0.6;
      if (cost >= least) continue;
      least = cost;
      best = { x, y };
    }
  }
  return best ?? { x: anchor.x + 14, y: anchor.y - 16 };
}

/** Returns the areas on the screen that flags cover, for labels to keep free of [px].
 *  Source: own construction. */
export function flagRects(flags: readonly PlacedFlag[]): Rect[] {
  return flags.map(({ at }) => ({
    x: at.x - flagRadius,
    y: at.y - flagRadius,
    width: 2 * flagRadius,
    height: 2 * flagRadius,
  }));
}
