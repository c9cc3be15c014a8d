import type { CompiledNetwork } from "./compile.ts";
import { factorise } from "./elimination.ts";
import { assemble, exactRoots } from "./linkLosses.ts";
import type { NetworkState } from "./state.ts";
import { teeLosses } from "./tees.ts";

/** Puts a state at the first flows, with every link open and the right-hand side of the first step for the heads it holds. */
export function beginCold(net: CompiledNetwork, state: NetworkState): void {
  const { firstStep, firstFlow, from, to, demand, junctionCount: size } = net;
  const { flow, x, shut, head, left, conductance, rhs, change } = state;
  for (let l = 0; l < net.linkCount; l++) {
    flow[l] = firstFlow[l];
    shut[l] = 0;
    change[l] = 0;
  }
  if (!firstStep.ready) prepare(net, state);
  for (let j = 0; j < size; j++) rhs[j] = -demand[j];
  for (let l = 0; l < net.linkCount; l++) {
    const a = from[l];
    const b = to[l];
    const p = firstStep.conductance[l];
    const r = head[a] - head[b] - firstStep.loss[l];
    const through = flow[l] + p * r;
    conductance[l] = p;
    x[l] = firstStep.x[l];
    left[l] = r;
    rhs[a] -= through;
    rhs[b] += through;
  }
  state.energyResidual = Number.POSITIVE_INFINITY;
}

function prepare(net: CompiledNetwork, state: NetworkState): void {
  const { firstStep } = net;
  // Near enough to any 1/sqrt(f) for Halley steps to find it.
  state.x.fill(7);
  if (net.tees.count > 0) teeLosses(net.tees, state.flow, state.teeLoss, state.teeSlope);
  assemble(net, state, exactRoots);
  firstStep.loss.set(state.loss);
  firstStep.conductance.set(state.conductance);
  firstStep.x.set(state.x);
  firstStep.values.set(state.values);
  factorise(net.plan, firstStep.values, firstStep.inverse);
  firstStep.ready = true;
}
