import type { CompiledNetwork } from "./compile.ts";
import { factorise, substitute } from "./elimination.ts";
import type { NetworkState } from "./state.ts";
import { teeLosses } from "./tees.ts";

/** Works out the changes of heads (`rhs`) and flows (`change`) of one full step from the assembled equations, in correction form: with
 *  r = dH - h(Q), solve A dh = B (Q + r/g) - demand, dQ = (r + dh)/g. Because r vanishes, so does every rounding error of the
 *  linear solve. `descent` takes how fast the content falls along the step, the sum of r dQ. */
export function newtonStep(net: CompiledNetwork, state: NetworkState, first: boolean): void {
  const { plan, junctionCount: size, nodeCount } = net;
  const { rhs, values, inverse, left, change, teeLoss, nextTeeLoss } = state;
  if (first) substitute(plan, net.firstStep.values, net.firstStep.inverse, rhs);
  else {
    factorise(plan, values, inverse);
    substitute(plan, values, inverse, rhs);
  }
  for (let n = size; n < nodeCount; n++) rhs[n] = 0;
  setChange(net, state);
  const rounds = roundsOf(net, state, first);
  if (rounds > 0) refine(net, state, rounds);
  let descent = 0;
  for (let l = 0; l < net.linkCount; l++) descent += left[l] * change[l];
  if (rounds > 0) {
    const { links } = net.tees;
    for (let i = 0; i < links.length; i++) descent -= (nextTeeLoss[links[i]] - teeLoss[links[i]]) * change[links[i]];
  }
  state.descent = descent;
}

/** How often a step is refined: often enough that what is left is the third derivative's, not at all where Newton's own error
 *  is below every tolerance. Tees need more: they contract tenfold a round. */
function roundsOf(net: CompiledNetwork, state: NetworkState, first: boolean): number {
  const tees = net.tees.count > 0;
  const { energyResidual: size } = state;
  if (first || state.iterations >= 20) return 0;
  if (tees) return size > 1e-2 ? 3 : 8;
  return size > 1e-2 ? 3 : size > 1e-5 ? 1 : 0;
}

function setChange(net: CompiledNetwork, state: NetworkState): void {
  const { from, to } = net;
  const { rhs, conductance, left, change, bent } = state;
  for (let l = 0; l < net.linkCount; l++) {
    bent[l] = 0;
    change[l] = conductance[l] * (left[l] + rhs[from[l]] - rhs[to[l]]);
  }
}

/** Refines a step with the elimination it has: losses bend away from their tangents over the step, by c dQ^2 in each link, and a tee's
 *  losses by what they are at the flows after it, for a tee couples the flows of three links. Both are put into the right-hand
 *  side and solved for again until they hold: steps of third order, with the tees' full coupling. Rounds end where they no longer
 *  contract. */
export function refine(net: CompiledNetwork, state: NetworkState, rounds: number): void {
  const { from, to, plan, junctionCount: size, nodeCount } = net;
  const { links } = net.tees;
  const { rhs, more, values, inverse, conductance, left, flow, change, curvature, bent, trial } = state;
  const { teeLoss, teeSlope, nextTeeLoss, nextTeeSlope } = state;
  const tees = links.length > 0;
  const enough = state.lossScale * Math.max(1e-13, 0.1 * state.energyResidual * state.energyResidual);
  let before = Number.POSITIVE_INFINITY;
  for (let round = 0; round < rounds; round++) {
    if (tees) {
      for (let i = 0; i < links.length; i++) trial[links[i]] = flow[links[i]] + change[links[i]];
      teeLosses(net.tees, trial, nextTeeLoss, nextTeeSlope);
    }
    for (let n = 0; n < nodeCount; n++) more[n] = 0;
    let largest = 0;
    for (let l = 0; l < net.linkCount; l++) {
      const dq = change[l];
      const q = flow[l];
      // Past half of its flow a loss is no parabola any more.
      let e = 4 * dq * dq < q * q ? curvature[l] * dq * dq : 0;
      if (tees) e += nextTeeLoss[l] - teeLoss[l] - teeSlope[l] * dq;
      const move = e - bent[l];
      trial[l] = e;
      const through = conductance[l] * move;
      more[from[l]] += through;
      more[to[l]] -= through;
      if (move > largest) largest = move;
      else if (-move > largest) largest = -move;
    }
    if (!(largest < 0.7 * before)) return;
    before = largest;
    substitute(plan, values, inverse, more);
    for (let j = 0; j < size; j++) rhs[j] += more[j];
    for (let l = 0; l < net.linkCount; l++) {
      bent[l] = trial[l];
      change[l] = conductance[l] * (left[l] - trial[l] + rhs[from[l]] - rhs[to[l]]);
    }
    if (largest <= enough) return;
  }
}
