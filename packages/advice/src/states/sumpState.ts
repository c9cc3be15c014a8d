import { drainBackVolume } from "@tidewright/engine";
import type { SumpState } from "../assessment.ts";
import { levelOf } from "../system/levels.ts";
import type { PreparedSystem } from "../system/prepare.ts";
import type { SolvedSystem } from "../system/solveSystem.ts";

/** Returns the sump's levels and what a power cut does to it: a static estimate, on the safe side (check valves count for nothing).
 *  Source: geometry; engine `drainBackVolume`. */
export function sumpState(system: PreparedSystem, solved: SolvedSystem): SumpState {
  const { geometry } = system;
  const { levels } = solved;
  const display = levelOf(levels, "display");
  const returns = system.loops.filter(
    (prepared) => prepared.purpose !== "closed" && prepared.loop.sourcePlace.startsWith("sump"),
  );
  const breaks = returns.flatMap(({ loop }) =>
    loop.outlets
      .filter((outlet) => outlet.place === "display")
      .map((outlet) => display - Math.max(0, outlet.siphonBreakDepth ?? outlet.depth)),
  );
  const lowestInlet = Math.min(...solved.drains.lines.map((line) => line.inletElevation));
  const pipes = [...returns.map(({ loop }) => loop.pipeVolume), ...system.drains.map((drain) => drain.pipeVolume)];
  const boxLevel = levelOf(levels, "overflowBox");
  const back = drainBackVolume({
    displayArea: geometry.displayWaterArea,
    displayLevel: display,
    weirCrest: geometry.weirCrest,
    siphonBreaks: breaks,
    boxArea: geometry.boxArea,
    boxLevel,
    boxStopLevel: Math.min(boxLevel, Math.max(geometry.boxFloor, lowestInlet)),
    pipeVolume: pipes.reduce((sum, volume) => sum + volume, 0),
  });
  // The box inside of a hang-on overflow empties through its tubes as far as the box outside does, or to their ends.
  const inner = system.hangOn
    ? geometry.innerBoxArea * Math.max(0, levelOf(levels, "innerBox") - Math.max(system.hangOn.mouth, lowestInlet))
    : 0;
  const total = back.total + inner;
  const chambers = geometry.chambers.map((chamber) => {
    const level = levelOf(levels, `sump.${chamber.id}`);
    const depth = level - geometry.sumpFloor;
    return { id: chamber.id, path: chamber.path, level, depth, area: chamber.area, volume: chamber.area * depth };
  });
  // A chamber that stands over the rim passes what falls back over it, not on to those with room.
  const spilling = chambers.filter((chamber) => chamber.level > geometry.sumpRim);
  const free = chambers.reduce((sum, chamber) => sum + chamber.area * Math.max(0, geometry.sumpRim - chamber.level), 0);
  const room = spilling.length > 0 ? 0 : free;
  return {
    chambers,
    rim: geometry.sumpRim,
    drainDown: { display: back.display, box: back.box + inner, pipes: back.pipes, total },
    room,
    margin: room - total,
    powerCutLevel: fillLevel(chambers, total),
    // Where the return chamber stands below the rim it is a baffle that holds another above it, whatever the operating level.
    safeOperatingLevel:
      spilling.length > 0 && !spilling.some(({ id }) => id === chambers.at(-1)?.id)
        ? 0
        : safeLevel(system, chambers, total),
  };
}

/** Level at which the chambers have taken in a volume: the lowest fills first, then all rise together. */
function fillLevel(chambers: readonly { level: number; area: number }[], volume: number): number {
  const sorted = [...chambers].sort((a, b) => a.level - b.level);
  let left = volume;
  let area = 0;
  for (let i = 0; i < sorted.length; i++) {
    area += sorted[i]?.area ?? 0;
    const here = sorted[i]?.level ?? 0;
    const next = sorted[i + 1]?.level ?? Number.POSITIVE_INFINITY;
    const step = left / area;
    if (here + step <= next) return here + step;
    left -= (next - here) * area;
  }
  return sorted.at(-1)?.level ?? 0;
}

/** Highest depth in the return chamber with which the drain-down still fits below the rim. A chamber stands at its running level or,
 *  drowned, at the return chamber's: room(z) = sum of area (rim - max(level, z)) = volume, solved from the rim down. */
function safeLevel(
  { geometry }: PreparedSystem,
  chambers: readonly { level: number; area: number }[],
  volume: number,
): number {
  const last = chambers.at(-1);
  if (!last) return 0;
  const others = chambers.slice(0, -1).sort((a, b) => b.level - a.level);
  let z = geometry.sumpRim;
  let room = 0;
  let area = last.area + others.reduce((sum, chamber) => sum + chamber.area, 0);
  for (const chamber of others) {
    const here = Math.min(geometry.sumpRim, chamber.level);
    if (room + area * (z - here) >= volume) break;
    room += area * (z - here);
    z = here;
    area -= chamber.area;
  }
  return Math.max(0, z - (volume - room) / area - geometry.sumpFloor);
}
