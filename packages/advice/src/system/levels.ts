import { hangOnSiphonHead, overflowWeirHead, sumpChamberLevel } from "@tidewright/engine";
import type { PreparedLoop, PreparedSystem } from "./prepare.ts";

/** Surface elevations [m above room floor] of every place, by place id. */
export type Levels = Map<string, number>;

/** Returns surface levels for given flows: the display stands at its crest plus the weir's head, the box
 *  inside of a hang-on overflow by the head of its tubes above the box outside, each sump chamber at its
 *  baffle plus the head over it or at the next chamber's level where that is higher, the last at its operating level.
 *  system PreparedSystem   weirFlow [m3/s]   chamberInflow net inflow of each chamber [m3/s]   boxLevel [m]   -> Levels
 *  Source: engine weirs; geometry. */
export function levelsFor(
  system: PreparedSystem,
  weirFlow: number,
  chamberInflow: readonly number[],
  boxLevel: number,
): Levels {
  const { geometry, hangOn } = system;
  const levels: Levels = new Map();
  const weirHead = overflowWeirHead(geometry.weir, Math.max(0, weirFlow));
  // What stands behind the crest: the box, or where tubes lead to it, the box inside by their head above it.
  const behind = hangOn ? boxLevel + hangOnSiphonHead(hangOn.tubes, Math.max(0, weirFlow), system.water) : boxLevel;
  // A drowned crest lifts the display with the box.
  levels.set("display", Math.max(geometry.weirCrest, behind) + weirHead);
  levels.set("overflowBox", boxLevel);
  if (hangOn) levels.set("innerBox", behind);
  const { chambers } = geometry;
  let next = geometry.sumpFloor + geometry.operatingLevel;
  let over = 0;
  for (let i = 0; i < chambers.length - 1; i++) over += chamberInflow[i] ?? 0;
  for (let i = chambers.length - 1; i >= 0; i--) {
    const chamber = chambers[i] as (typeof chambers)[number];
    let level = next;
    if (i < chambers.length - 1) {
      if (chamber.baffle !== undefined) {
        const { baffle: baffleHeight, baffleWidth: baffleLength } = chamber;
        const crest = sumpChamberLevel({ baffleHeight, baffleLength, flow: Math.max(0, over) });
        level = Math.max(geometry.sumpFloor + crest, next);
      }
      // What runs over the baffle before this one is less by what comes into this chamber.
      over -= chamberInflow[i] ?? 0;
    }
    levels.set(system.chamberPlaces[i] as string, level);
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
  const { net, loop, sourceNode, outletNodes } = prepared;
  net.head[sourceNode] = levelOf(levels, loop.sourcePlace);
  for (let i = 0; i < outletNodes.length; i++) {
    const outlet = loop.outlets[i] as (typeof loop.outlets)[number];
    net.head[outletNodes[i] as number] = endHead(levelOf(levels, outlet.place), outlet.depth);
  }
}

/** Flow through a loop's pumps [m3/s]: what leaves its source. */
export function pumpFlowOf(prepared: PreparedLoop): number {
  const { state, outletLinks } = prepared;
  let flow = 0;
  for (const link of outletLinks) flow += state.flow[link] ?? 0;
  return flow;
}

/** Flow that a loop brings to a place, less what it takes from there [m3/s]. */
export function netFlowTo(prepared: PreparedLoop, place: string): number {
  const flow = outletFlowTo(prepared, place);
  return prepared.loop.sourcePlace === place ? flow - pumpFlowOf(prepared) : flow;
}

/** Flow that all loops but one bring over the weir [m3/s]; negative where they draw on the display. */
export function otherFlowToDisplay(loops: readonly PreparedLoop[], one: PreparedLoop): number {
  let flow = 0;
  for (const loop of loops) if (loop !== one) flow += netFlowTo(loop, "display");
  return flow;
}

/** Flow from a loop's outlets to a place [m3/s]. */
export function outletFlowTo(prepared: PreparedLoop, place: string): number {
  const { state, loop, outletLinks } = prepared;
  let flow = 0;
  for (let i = 0; i < outletLinks.length; i++)
    if (loop.outlets[i]?.place === place) flow += state.flow[outletLinks[i] as number] ?? 0;
  return flow;
}
