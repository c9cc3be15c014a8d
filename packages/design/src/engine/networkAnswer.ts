import type { NetworkSolution } from "@tidewright/engine";

/** What is told of a solved network: SI numbers, positive flow from -> to, a pump's headLoss negative, null where a link
 *  has no bore and so no velocity. */
export interface NetworkAnswer {
  readonly status: NetworkSolution["status"];
  readonly iterations: number;
  readonly residual: number;
  readonly nodes: readonly { readonly id: string; readonly head: number; readonly pressure: number }[];
  readonly links: readonly {
    readonly id: string;
    readonly flow: number;
    readonly velocity: number | null;
    readonly headLoss: number;
  }[];
}

/** Returns a solution cut to what is told of it.
 *  solution of `solveNetwork`: heads [m], pressures [Pa], flows [m3/s], velocities [m/s]   -> NetworkAnswer, same units
 *  Findings: none. Throws: never.
 *  Valid: any solution, also one that did not converge.
 *  Source: own construction.
 *  Example: networkAnswer({ status: "limit", iterations: 3, residual: 1, nodes: [], links: [] }).status  ->  "limit" */
export function networkAnswer({ status, iterations, residual, nodes, links }: NetworkSolution): NetworkAnswer {
  return {
    status,
    iterations,
    residual,
    nodes: nodes.map(({ id, head, pressure }) => ({ id, head, pressure })),
    links: links.map(({ id, flow, velocity, headLoss }) => ({
      id,
      flow,
      velocity: Number.isFinite(velocity) ? velocity : null,
      headLoss,
    })),
  };
}
