import { type ConvergenceRecord, convergenceRecord, solveCompiled } from "@tidewright/engine";
import { type Levels, levelsFor, netFlowTo, setLoopHeads } from "./levels.ts";
import type { PreparedSystem } from "./prepare.ts";
import { type DrainSolution, solveDrains } from "./solveDrains.ts";

/** The whole system at rest in its running state: flows in every loop and drain, levels in every vessel. */
export interface SolvedSystem {
  readonly levels: Levels;
  readonly weirFlow: number;
  readonly drains: DrainSolution;
  readonly records: readonly ConvergenceRecord[];
  readonly levelIterations: number;
  readonly converged: boolean;
}

/** Levels that move less than this between two rounds have settled [m]. */
const settled = 1e-7;

/** Solves loops, weir, drains and sump together: the loops for given levels, the levels for the flows they give, until both agree.
 *  Levels move by millimetres and heads by metres, so the rounds contract fast; later ones start warm.
 *  system PreparedSystem, whose loop states are changed in place   -> SolvedSystem
 *  Source: continuity in every vessel; engine. */
export function solveSystem(system: PreparedSystem): SolvedSystem {
  const { geometry, loops } = system;
  let boxLevel = geometry.weirCrest - 0.1;
  let levels = levelsFor(
    system,
    0,
    geometry.chambers.map(() => 0),
    boxLevel,
  );
  let weirFlow = 0;
  let drains: DrainSolution | undefined;
  let round = 0;
  let converged = false;
  for (; round < 30 && !converged; round++) {
    for (const loop of loops) {
      setLoopHeads(loop, levels);
      solveCompiled(loop.net, loop.state, { warm: round > 0 });
    }
    weirFlow = Math.max(
      0,
      loops.reduce((sum, loop) => sum + netFlowTo(loop, "display"), 0),
    );
    drains = solveDrains(system, weirFlow, levels, drains);
    boxLevel = drains.box.level;
    const next = levelsFor(system, weirFlow, chamberInflows(system, drains), boxLevel);
    converged = true;
    for (const [place, level] of next) if (!(Math.abs(level - (levels.get(place) ?? 0)) < settled)) converged = false;
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
