import { overflowWeirHead, sumpChamberLevel } from "@tidewright/engine";
import type { PreparedLoop, PreparedSystem } from "./prepare.ts";

/** Surface elevations [m above room floor] of every place, by place id. */
export type Levels = Map<string, number>;

/** Returns surface levels for given flows: the display stands at its crest plus the weir's head, each sump chamber at its
 *  baffle plus the head over it or at the next chamber's level where that is higher, the last at its operating level.
 *  system PreparedSystem   weirFlow [m3/s]   chamberInflow net inflow of each chamber [m3/s]   boxLevel [m]   -> Levels
 *  Source: engine weirs; geometry. */
export function levelsFor(
  system: PreparedSystem,
  weirFlow: number,
  chamberInflow: readonly number[],
  boxLevel: number,
): Levels {
  const { geometry } = system;
  const levels: Levels = new Map();
  const weirHead = overflowWeirHead(geometry.weir, Math.max(0, weirFlow));
  // A drowned crest lifts the display with the box.
  levels.set("display", Math.max(geometry.weirCrest, boxLevel) + weirHead);
  levels.set("overflowBox", boxLevel);
  let next = geometry.sumpFloor + geometry.operatingLevel;
  for (let i = geometry.chambers.length - 1; i >= 0; i--) {
    const chamber = geometry.chambers[i];
    if (!chamber) continue;
    let level = next;
    if (i < geometry.chambers.length - 1 && chamber.baffle !== undefined) {
      const over = chamberInflow.slice(0, i + 1).reduce((sum, q) => sum + q, 0);
      const crest = sumpChamberLevel({
        baffleHeight: chamber.baffle,
        baffleLength: chamber.baffleWidth,
        flow: Math.max(0, over),
      });
      level = Math.max(geometry.sumpFloor + crest, next);
    }
    levels.set(`sump.${chamber.id}`, level);
    next = level;
  }
  return levels;
}

/** The level of a place; a chamber that does not exist stands at the last chamber's. */
export function levelOf(levels: Levels, place: string): number {
  return levels.get(place) ?? [...levels.values()].at(-1) ?? 0;
}

/** Effective head below an end that lies `depth` under a surface: the surface, or its own height where it hangs above. */
export function endHead(level: number, depth: number): number {
  return level + Math.max(0, -depth);
}

/** Writes the levels into a loop's known heads. */
export function setLoopHeads(prepared: PreparedLoop, levels: Levels): void {
  const { net, loop } = prepared;
  net.head[net.nodeIndex.get("source") as number] = levelOf(levels, loop.sourcePlace);
  for (const outlet of loop.outlets)
    net.head[net.nodeIndex.get(outlet.node) as number] = endHead(levelOf(levels, outlet.place), outlet.depth);
}

/** Flow through a loop's pumps [m3/s]: what leaves its source. */
export function pumpFlowOf(prepared: PreparedLoop): number {
  const { net, state, loop } = prepared;
  let flow = 0;
  for (const outlet of loop.outlets) flow += state.flow[net.linkIndex.get(outlet.link) as number] ?? 0;
  return flow;
}

/** Flow that a loop brings to a place, less what it takes from there [m3/s]. */
export function netFlowTo(prepared: PreparedLoop, place: string): number {
  const { net, state, loop } = prepared;
  let flow = 0;
  for (const outlet of loop.outlets)
    if (outlet.place === place) flow += state.flow[net.linkIndex.get(outlet.link) as number] ?? 0;
  return loop.sourcePlace === place ? flow - pumpFlowOf(prepared) : flow;
}
