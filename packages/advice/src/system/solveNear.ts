import { type NetworkState, solveCompiled } from "@tidewright/engine";
import type { WorkNetwork } from "./networkLoan.ts";

/** Solves a network from its last solution, and from nothing where that leads nowhere: near by is no promise, and the last solution
 *  may have been none.
 *  work network and state, changed in place   warm whether there is a last solution   tolerance as of `solveCompiled`
 *  -> the state */
export function solveNear({ net, state }: WorkNetwork, warm: boolean, tolerance = 1e-10): NetworkState {
  solveCompiled(net, state, { warm, tolerance });
  if (warm && state.status !== "converged") solveCompiled(net, state, { warm: false, tolerance });
  return state;
}
