import { toSI } from "@tidewright/units";
import { tankPumpStates } from "../states/pumpStates.ts";
import { levelOf, pumpFlowOf } from "../system/levels.ts";
import type { PreparedLoop, PreparedSystem } from "../system/prepare.ts";
import type { SolvedSystem } from "../system/solveSystem.ts";

/** What is asked of a loop that is not wished for by itself, and by whom: by what runs in it now, by the water movement that the job wishes and
 *  does not have, or by nobody. */
export interface LoopWish {
  readonly from: "now" | "movement" | "nobody";
  readonly low: number;
  readonly aim: number;
  /** Infinity where nobody asks [m3/s]. */
  readonly high: number;
}

/** Where nobody asks, controllable pumps are set for this many display volumes an hour [1/h]: common practice, no source. */
const usualTurnover = 10;

/** Returns the flow asked of a closed or side loop's pumps [m3/s]. A running loop is asked for what it gives, a fifth either way. A closed loop
 *  without a running pump is asked for what the wished turnover of all water still lacks, shared with the other closed loops that stand still.
 *  Where that is not wished, or there already, any flow will do: low 0, high Infinity.
 *  system PreparedSystem   prepared one of its loops   solved its running state   -> LoopWish
 *  Source: continuity; a fifth and the usual turnover are common practice, no source. */
export function loopWish(system: PreparedSystem, prepared: PreparedLoop, solved: SolvedSystem): LoopWish {
  const { geometry, design } = system;
  const now = pumpFlowOf(prepared);
  // A place without a pump lets a trickle through, which nobody wishes.
  if (runs(prepared) && now > 0) return { from: "now", low: 0.8 * now, aim: now, high: 1.2 * now };
  const volume = geometry.displayWaterArea * (levelOf(solved.levels, "display") - geometry.displayFloor);
  const wished = design.wishes.totalTurnover;
  if (wished && prepared.purpose === "closed") {
    const closed = system.loops.filter(({ purpose }) => purpose === "closed");
    const running = closed.filter((loop) => loop !== prepared && runs(loop));
    let moved = solved.weirFlow;
    for (const loop of running) moved += pumpFlowOf(loop);
    for (const pump of tankPumpStates(system)) moved += pump.flow;
    const share = closed.length - running.length;
    const [low, high] = wished.map((turnover) => ((toSI(turnover, "turnover") * volume) / 3600 - moved) / share) as [
      number,
      number,
    ];
    const aim = (low + high) / 2;
    if (aim > 0) return { from: "movement", low: Math.max(0, low), aim, high };
  }
  return { from: "nobody", low: 0, aim: (usualTurnover * volume) / 3600, high: Number.POSITIVE_INFINITY };
}

function runs({ loop }: PreparedLoop): boolean {
  return loop.pumps.some((pump) => pump.row !== undefined && pump.speed > 0);
}
