import { standardGravity } from "../water/index.ts";
import { type CompiledNetwork, compileNetwork } from "./compile.ts";
import type { NetworkModel } from "./model.ts";
import type { ConvergenceRecord } from "./record.ts";
import { type SolveOptions, solveCompiled } from "./solve.ts";
import { type NetworkState, newNetworkState } from "./state.ts";

/** The answer for one node: head [m] and gauge pressure [Pa] at its elevation. */
export interface NodeAnswer {
  readonly id: string;
  readonly head: number;
  readonly pressure: number;
}

/** The answer for one link: flow [m3/s] from -> to, mean velocity [m/s] (NaN where it has no bore) and head loss [m]
 *  in the direction from -> to, negative for a pump that lifts. */
export interface LinkAnswer {
  readonly id: string;
  readonly flow: number;
  readonly velocity: number;
  readonly headLoss: number;
  readonly shut: boolean;
}

/** A solved network: convergence record, and heads [m] and flows [m3/s] by element. */
export interface NetworkSolution {
  readonly status: ConvergenceRecord["status"];
  readonly iterations: number;
  readonly residual: number;
  readonly record: ConvergenceRecord;
  /** Heads [m] and flows [m3/s] in the model's own order. */
  readonly heads: Float64Array;
  readonly flows: Float64Array;
  readonly nodes: readonly NodeAnswer[];
  readonly links: readonly LinkAnswer[];
}

/** Returns flows, heads and the convergence record of a network, from a cold start.
 *  model NetworkModel   options SolveOptions   -> NetworkSolution
 *  Findings: none. Throws: RangeError naming every problem when the model is unsound (see `networkProblems`).
 *  Valid: any topology; see `solveCompiled`.
 *  Source: as `solveCompiled`.
 *  Example: solveNetwork({ liquid: { density: 1000, kinematicViscosity: 1e-6 }, nodes: [{ id: "a", kind: "fixedHead", head: 1 }, { id: "b", kind: "fixedHead", head: 0 }], links: [{ id: "p", kind: "device", from: "a", to: "b", coefficient: 4e6 }] }).links[0].headLoss  ->  1 */
export function solveNetwork(model: NetworkModel, options: SolveOptions = {}): NetworkSolution {
  const net = compileNetwork(model);
  const state = newNetworkState(net);
  solveCompiled(net, state, options);
  return networkSolution(net, state);
}

/** Returns a solved state as named answers in the model's own order.
 *  net CompiledNetwork   state NetworkState after `solveCompiled`   -> NetworkSolution
 *  Findings: none. Throws: never.
 *  Valid: for the network the state was made for.
 *  Source: definitions: pressure = rho g (head - elevation), velocity = Q / A.
 *  Example: solveNetwork({ liquid: { density: 1000, kinematicViscosity: 1e-6 }, nodes: [{ id: "a", kind: "fixedHead", head: 1 }, { id: "b", kind: "fixedHead", head: 0 }], links: [{ id: "p", kind: "device", from: "a", to: "b", coefficient: 4e6 }] }).nodes[1].head  ->  0 */
export function networkSolution(net: CompiledNetwork, state: NetworkState): NetworkSolution {
  const { model } = net;
  const record = convergenceRecord(net, state);
  const heads = new Float64Array(net.nodeCount);
  net.nodeOrder.forEach((modelIndex, i) => {
    heads[modelIndex] = state.head[i];
  });
  const nodes = model.nodes.map((node, i) => {
    const elevation = node.elevation ?? (node.kind === "fixedHead" ? node.head : 0);
    return { id: node.id, head: heads[i], pressure: model.liquid.density * standardGravity * (heads[i] - elevation) };
  });
  const links = model.links.map((link, i) => ({
    id: link.id,
    flow: state.flow[i],
    velocity: state.flow[i] / net.area[i],
    headLoss: state.shut[i] !== 0 ? state.head[net.from[i]] - state.head[net.to[i]] : state.loss[i],
    shut: state.shut[i] !== 0,
  }));
  const flows = state.flow.slice();
  return {
    status: record.status,
    iterations: record.iterations,
    residual: record.residual,
    record,
    heads,
    flows,
    nodes,
    links,
  };
}

/** Returns the convergence record of a solved state.
 *  net CompiledNetwork   state NetworkState   -> ConvergenceRecord
 *  Findings: none. Throws: never.
 *  Valid: after `solveCompiled`.
 *  Source: own construction; relative errors as EPANET reports them.
 *  Example: solveNetwork({ liquid: { density: 1000, kinematicViscosity: 1e-6 }, nodes: [{ id: "a", kind: "fixedHead", head: 1 }, { id: "b", kind: "fixedHead", head: 0 }], links: [{ id: "p", kind: "device", from: "a", to: "b", coefficient: 4e6 }] }).record.status  ->  "converged" */
export function convergenceRecord(net: CompiledNetwork, state: NetworkState): ConvergenceRecord {
  const size = net.junctionCount;
  const surplus = new Float64Array(size);
  // Below a microlitre a second nothing moves.
  let flowScale = 1e-9;
  for (let j = 0; j < size; j++) surplus[j] = -net.demand[j];
  for (let l = 0; l < net.linkCount; l++) {
    const q = state.flow[l];
    flowScale = Math.max(flowScale, Math.abs(q));
    if (net.from[l] < size) surplus[net.from[l]] -= q;
    if (net.to[l] < size) surplus[net.to[l]] += q;
  }
  let worst = 0;
  let worstNode = -1;
  surplus.forEach((value, j) => {
    if (Math.abs(value) > worst) {
      worst = Math.abs(value);
      worstNode = j;
    }
  });
  const continuityResidual = worst / flowScale;
  return {
    status: state.status,
    iterations: state.iterations,
    shortened: state.shortened,
    residual: Math.max(state.energyResidual, continuityResidual),
    energyResidual: state.energyResidual,
    continuityResidual,
    worstLink: net.model.links[state.worstLink]?.id,
    worstNode: net.model.nodes[net.nodeOrder[worstNode]]?.id,
    history: Array.from(state.history.subarray(0, Math.min(256, state.iterations))),
  };
}
