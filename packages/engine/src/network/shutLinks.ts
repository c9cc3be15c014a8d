import { type CompiledNetwork, linkType } from "./compile.ts";
import { balanceFlows } from "./spanningForest.ts";
import type { NetworkState } from "./state.ts";

/** Shuts every one-way link that carries more than `rounding` [m3/s] backward, and closed valves. True when any was shut. */
export function shutBackwardLinks(
  net: CompiledNetwork,
  state: NetworkState,
  single: boolean,
  rounding: number,
): boolean {
  let any = false;
  for (let l = 0; l < net.linkCount; l++) {
    if (state.shut[l] !== 0) continue;
    const backward = net.oneWay[l] !== 0 && state.flow[l] < -rounding;
    if (!backward && net.type[l] !== linkType.closed) continue;
    state.shut[l] = net.type[l] === linkType.closed ? 2 : 1;
    state.flow[l] = 0;
    if (single) return true;
    any = true;
  }
  return any;
}

/** Balances the flows after links were shut; a shut one-way link that has to carry water forward to a demand is let go again.
 *  False where a junction's demand can no longer be met. */
export function settleShutFlows(net: CompiledNetwork, state: NetworkState): boolean {
  balanceFlows(state.forest, net.from, net.to, net.demand, state.flow, state.surplus);
  let reachable = true;
  for (let l = 0; l < net.linkCount; l++) {
    if (state.shut[l] === 0 || state.flow[l] === 0) continue;
    if (state.flow[l] > 1e-9 && state.shut[l] === 1) {
      state.shut[l] = 0;
      continue;
    }
    if (Math.abs(state.flow[l]) > 1e-9) reachable = false;
    state.flow[l] = 0;
  }
  return reachable;
}

/** Opens shut one-way links whose heads would drive water forward. True when any was opened. */
export function reopenWillingLinks(
  net: CompiledNetwork,
  state: NetworkState,
  single: boolean,
  threshold: number,
): boolean {
  let any = false;
  for (let l = 0; l < net.linkCount; l++) {
    if (state.shut[l] === 0 || net.type[l] === linkType.closed) continue;
    const shutoff = net.pumpTerms[l]?.shutoff ?? 0;
    const drive = state.head[net.from[l]] - state.head[net.to[l]] + shutoff;
    if (drive <= threshold * state.lossScale) continue;
    state.shut[l] = 0;
    state.flow[l] = 0;
    if (single) return true;
    any = true;
  }
  return any;
}

/** A flow below which nothing is told from rounding [m3/s]. */
export function flowRounding(state: NetworkState): number {
  let largest = 0;
  for (let l = 0; l < state.flow.length; l++) largest = Math.max(largest, Math.abs(state.flow[l]));
  return 1e-15 * largest;
}

/** Takes what rounding left out of links that carry nothing: shut ones, and one-way links that would run backward. True when
 *  one of the latter is open, whose loss has to be looked at again. */
export function clearRestingFlows(net: CompiledNetwork, state: NetworkState): boolean {
  const { flow, shut } = state;
  let any = false;
  for (let l = 0; l < net.linkCount; l++) {
    if (shut[l] !== 0) flow[l] = 0;
    else if (net.oneWay[l] !== 0 && flow[l] < 0) {
      flow[l] = 0;
      any = true;
    }
  }
  return any;
}
