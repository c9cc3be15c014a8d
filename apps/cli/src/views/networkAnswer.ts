import type { NetworkSolution } from "@tidewright/engine";

/** The contract of `network --json`: SI numbers, positive flow from -> to, a pump's headLoss negative, null where a
 *  link has no bore and so no velocity. */
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

/** Returns a solution cut to the contract. */
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
