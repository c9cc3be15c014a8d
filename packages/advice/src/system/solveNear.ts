import { type NetworkState, solveCompiled } from "@tidewright/engine";
import type { WorkNetwork } from "./networkLoan.ts";

/** Near enough to the answer without tees for their losses to be taken in [-]. */
const withoutTees = 1e-3;

/** Solves a network from its last solution, and from nothing where that leads nowhere: near by is no promise, and the last solution
 *  may have been none. From nothing, tees are left out at first: far from the answer their losses lead astray.
 *  work networks and state, changed in place   warm whether there is a last solution   tolerance as of `solveCompiled`
 *  -> the state */
export function solveNear({ net, state, start }: WorkNetwork, warm: boolean, tolerance = 1e-10): NetworkState {
  if (warm) {
    solveCompiled(net, state, { warm: true, tolerance });
    if (state.status === "converged") return state;
  }
  if (start) {
    start.head.set(net.head);
    start.demand.set(net.demand);
    solveCompiled(start, state, { tolerance: withoutTees });
    if (state.status === "converged") {
      solveCompiled(net, state, { warm: true, tolerance });
      if (state.status === "converged") return state;
    }
  }
  return solveCompiled(net, state, { tolerance });
}
