import {
  atmosphericPressure,
  hangOnSiphonHead,
  pipeFroude,
  siphonCrestPressure,
  standardGravity,
  timeToOverflow,
} from "@tidewright/engine";
import { toSI } from "@tidewright/units";
import type { OverflowSiphonState } from "../assessment.ts";
import { levelOf } from "../system/levels.ts";
import type { PreparedSystem } from "../system/prepare.ts";
import type { SolvedSystem } from "../system/solveSystem.ts";

/** Intake above its vessel's floor, where nobody said how deep it lies [m]. Source: common practice, no source. */
const intakeHeight = 0.03;

/** Returns the siphon of a hang-on overflow as it runs; undefined for every other overflow.
 *  Source: engine `hangOnSiphonHead`, `siphonCrestPressure`, `timeToOverflow`. */
export function overflowSiphonState(system: PreparedSystem, solved: SolvedSystem): OverflowSiphonState | undefined {
  const { hangOn, geometry, design, water } = system;
  if (hangOn === undefined) return undefined;
  const { levels, weirFlow } = solved;
  const { tubes } = hangOn;
  const boxLevel = levelOf(levels, "overflowBox");
  const head = hangOnSiphonHead(tubes, weirFlow, water);
  const each = weirFlow / tubes.count;
  const velocity = each / ((Math.PI / 4) * tubes.bore ** 2);
  const altitude = design.room?.altitude ? toSI(design.room.altitude, "length") : 0;
  const surfacePressure = atmosphericPressure(altitude);
  const weight = water.density * standardGravity;
  // All that is lost counts before the crest, but for the speed that leaves the tubes: the pressure there is no lower than this.
  const pressure = siphonCrestPressure({
    surfacePressure,
    density: water.density,
    level: boxLevel + head,
    crestElevation: hangOn.crest,
    velocity,
    headLoss: Math.max(0, head - velocity ** 2 / (2 * standardGravity)),
  });
  const lowestInlet = Math.min(...solved.drains.lines.map((line) => line.inletElevation));
  const display = levelOf(levels, "display");
  const room = geometry.displayRim - display;
  const pumpable = pumpableVolume(system, solved, lowestInlet);
  const trouble = timeToOverflow({ area: geometry.displayWaterArea, room, flow: weirFlow, pumpable });
  return {
    tubes: tubes.count,
    bore: tubes.bore,
    innerLevel: boxLevel + head,
    head,
    velocity,
    froude: pipeFroude(each, tubes.bore),
    standingCover: Math.min(geometry.weirCrest, lowestInlet) - hangOn.mouth,
    crestVacuum: (surfacePressure - pressure) / weight,
    vacuumMargin: (pressure - water.vapourPressure) / weight,
    airReleased: Math.min(1, Math.max(0, 1 - pressure / surfacePressure)),
    timeToTrouble: trouble.seconds,
    overflows: trouble.overflows,
    freeVolume: geometry.displayWaterArea * Math.max(0, room),
    pumpable,
  };
}

/** Water that return pumps can still lift once nothing runs over: the return chamber down to their intakes, what stands above the
 *  baffles before it, and what the box outside and the drains still let down [m3]. */
function pumpableVolume(
  { geometry, design, drains, loops, hangOn }: PreparedSystem,
  solved: SolvedSystem,
  lowest: number,
) {
  const { levels } = solved;
  const last = geometry.chambers.at(-1);
  const surface = levelOf(levels, `sump.${last?.id}`);
  const depths = loops
    .filter(({ purpose }) => purpose === "return")
    .map(({ index, loop }) => {
      const from = design.loops[index]?.from;
      if (from?.depth) return toSI(from.depth, "length");
      return surface - Math.min(...loop.pumps.map((pump) => pump.elevation));
    });
  const deepest = surface - geometry.sumpFloor - intakeHeight;
  const chamber = (last?.area ?? 0) * Math.max(0, Math.min(deepest, Math.max(0, ...depths)));
  const before = geometry.chambers.slice(0, -1).reduce((sum, { id, area, baffle }) => {
    const level = levelOf(levels, `sump.${id}`);
    return sum + (baffle === undefined ? 0 : area * Math.max(0, level - geometry.sumpFloor - baffle));
  }, 0);
  const box = geometry.boxArea * Math.max(0, levelOf(levels, "overflowBox") - Math.max(lowest, hangOn?.mouth ?? 0));
  // A full siphon lets down all of its pipe; a film on the wall of a vented one is next to nothing.
  const full = drains.reduce((sum, { pipeVolume }, i) => {
    const regime = solved.drains.box.regimes[i];
    return sum + (regime === "siphon" || regime === "beyondSiphon" ? pipeVolume : 0);
  }, 0);
  return chamber + before + box + full;
}
