import { type ConvergenceRecord, convergenceRecord } from "@tidewright/engine";
import { type Levels, levelsFor, netFlowTo, setLoopHeads } from "./levels.ts";
import type { PreparedSystem } from "./prepare.ts";
import { type DrainSolution, solveDrains } from "./solveDrains.ts";
import { solveNear } from "./solveNear.ts";

/** The whole system at rest in its running state: flows in every loop and drain, levels in every vessel. */
export interface SolvedSystem {
  readonly levels: Levels;
  readonly weirFlow: number;
  readonly drains: DrainSolution;
  readonly records: readonly ConvergenceRecord[];
  readonly levelIterations: number;
  readonly converged: boolean;
}

/** Levels have settled when they are this near to where all further rounds would take them, reckoned from how the moves fall [m]. */
const settled = 1e-9;
/** Where rounds fall slowly they go on for so long; a last move below this then still counts as settled [m]. */
const mostRounds = 60;
/** Rounds before the display's level is searched for instead. */
const plainRounds = 8;
const settledAtLast = 1e-7;
/** How closely networks are solved: while levels are on their way, nothing is gained by more. */
const tolerance = 1e-10;
const firstTolerances = [1e-3, 1e-7];

/** Solves loops, weir, drains and sump together: the loops for given levels, the levels for the flows they give, until both agree.
 *  Levels move by millimetres and heads by metres, so the rounds contract fast; later ones start warm.
 *  system PreparedSystem, whose loop states are changed in place   -> SolvedSystem
 *  Source: continuity in every vessel; engine. */
export function solveSystem(system: PreparedSystem): SolvedSystem {
  const { loops } = system;
  let levels = firstLevels(system);
  let weirFlow = 0;
  let drains: DrainSolution | undefined;
  let round = 0;
  let converged = false;
  let move = Number.POSITIVE_INFINITY;
  const display = new DisplaySearch();
  for (; round < mostRounds && !converged; round++) {
    weirFlow = 0;
    for (const loop of loops) {
      setLoopHeads(loop, levels);
      solveNear(loop, round > 0, firstTolerances[round] ?? tolerance);
      weirFlow += netFlowTo(loop, "display");
    }
    weirFlow = Math.max(0, weirFlow);
    drains = solveDrains(system, weirFlow, levels, drains);
    const next = levelsFor(system, weirFlow, chamberInflows(system, drains), drains.box.level);
    const before = move;
    move = 0;
    for (const [place, level] of next) move = Math.max(move, Math.abs(level - (levels.get(place) ?? 0)));
    const away = move < before ? move / (1 - move / before) : Number.POSITIVE_INFINITY;
    converged =
      round >= firstTolerances.length && (away < settled || (round === mostRounds - 1 && move < settledAtLast));
    if (round >= plainRounds && !converged) next.set("display", display.next(levels, next));
    levels = next;
  }
  return {
    levels,
    weirFlow,
    drains: drains as DrainSolution,
    records: loops.map((loop) => convergenceRecord(loop.net, loop.state)),
    levelIterations: round,
    converged: converged && loops.every((loop) => loop.state.status === "converged"),
  };
}

/** Where drains near their limit lift the display with the box, plain rounds swing or creep: more water up lifts the display, which
 *  lets less water up. What comes out falls as what goes in rises, so regula falsi (Illinois) finds where both agree. */
class DisplaySearch {
  #low = Number.NEGATIVE_INFINITY;
  #lowError = 0;
  #high = Number.POSITIVE_INFINITY;
  #highError = 0;
  #side = 0;

  /** The level to try after one that came out as another. */
  next(before: Levels, after: Levels): number {
    const tried = before.get("display") ?? 0;
    const came = after.get("display") ?? 0;
    const error = came - tried;
    if (error > 0) {
      if (this.#side === 1) this.#highError /= 2;
      this.#side = 1;
      this.#low = tried;
      this.#lowError = error;
    } else {
      if (this.#side === -1) this.#lowError /= 2;
      this.#side = -1;
      this.#high = tried;
      this.#highError = error;
    }
    if (!(this.#low < this.#high) || this.#low === Number.NEGATIVE_INFINITY || this.#high === Number.POSITIVE_INFINITY)
      return came;
    return (this.#low * this.#highError - this.#high * this.#lowError) / (this.#highError - this.#lowError);
  }
}

/** Levels to begin with: half of what the return pumps could give runs over the weir and through the drains in equal parts. */
function firstLevels(system: PreparedSystem): Levels {
  const { geometry, drains, chamberPlaces } = system;
  let flow = 0;
  for (const { purpose, loop } of system.loops)
    if (purpose === "return")
      for (const pump of loop.pumps) flow += 0.5 * pump.speed * (pump.row?.curves[0]?.points.at(-1)?.flow ?? 0);
  const inflows = chamberPlaces.map(
    (place) => (flow * drains.filter((drain) => drain.place === place).length) / drains.length,
  );
  return levelsFor(system, flow, inflows, geometry.weirCrest - 0.1);
}

/** What drains and loops bring to each chamber, less what loops take [m3/s]. */
function chamberInflows(system: PreparedSystem, drains: DrainSolution): number[] {
  return system.chamberPlaces.map((place) => {
    let flow = 0;
    for (let i = 0; i < system.drains.length; i++)
      if (system.drains[i]?.place === place) flow += drains.box.flows[i] ?? 0;
    for (const loop of system.loops) flow += netFlowTo(loop, place);
    return flow;
  });
}
