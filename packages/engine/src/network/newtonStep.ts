import type { CompiledNetwork } from "./compile.ts";
import { factorise, substitute } from "./elimination.ts";
import { mix, restart } from "./mixing.ts";
import type { NetworkState } from "./state.ts";
import { teeLosses } from "./tees.ts";

/** Works out the changes of heads (`rhs`) and flows (`change`) of one full step from the assembled equations, in correction form: with
 *  r = dH - h(Q), solve A dh = B (Q + r/g) - demand, dQ = (r + dh)/g. Because r vanishes, so does every rounding error of the
 *  linear solve. `descent` takes how fast the content falls along the step, the sum of r dQ. True where the step knows the
 *  tees' losses at its end; false where it takes them as they are at its beginning. */
export function newtonStep(net: CompiledNetwork, state: NetworkState, first: boolean, plain = false): boolean {
  const { plan, junctionCount: size, nodeCount } = net;
  const { rhs, values, inverse } = state;
  if (first) substitute(plan, net.firstStep.values, net.firstStep.inverse, rhs);
  else {
    factorise(plan, values, inverse);
    substitute(plan, values, inverse, rhs);
  }
  for (let n = size; n < nodeCount; n++) rhs[n] = 0;
  setChange(net, state);
  if (net.tees.count > 0) {
    if (!first && !plain && followTees(net, state)) return true;
  } else if (!first && state.iterations < 20) {
    // Often enough that what is left is the third derivative's, not at all where Newton's own error is below every tolerance.
    const rounds = state.energyResidual > 1e-2 ? 2 : state.energyResidual > 1e-5 ? 1 : 0;
    if (rounds > 0) bendStep(net, state, rounds);
    setDescent(state);
    // Where the bend leads uphill the plain step is taken, which never does.
    if (rounds > 0 && !(state.descent > 0)) restorePlain(net, state);
  }
  setDescent(state);
  return false;
}

function restorePlain(net: CompiledNetwork, state: NetworkState): void {
  for (let j = 0; j < net.junctionCount; j++) state.rhs[j] = state.headChange[j];
  setChange(net, state);
}

function setChange(net: CompiledNetwork, state: NetworkState): void {
  const { from, to } = net;
  const { rhs, conductance, left, change, bent } = state;
  for (let l = 0; l < net.linkCount; l++) {
    bent[l] = 0;
    change[l] = conductance[l] * (left[l] + rhs[from[l]] - rhs[to[l]]);
  }
}

function setDescent(state: NetworkState): void {
  const { left, change } = state;
  let descent = 0;
  for (let l = 0; l < change.length; l++) descent += left[l] * change[l];
  state.descent = descent;
}

/** Third order: losses bend away from their tangents over the step by c dQ^2, which is put into the right-hand side and solved for
 *  with the elimination at hand, in rounds that end where they no longer contract. */
function bendStep(net: CompiledNetwork, state: NetworkState, rounds: number): void {
  const { from, to, plan, junctionCount: size, nodeCount } = net;
  const { rhs, more, values, inverse, conductance, left, flow, change, curvature, bent, trial, headChange } = state;
  for (let j = 0; j < size; j++) headChange[j] = rhs[j];
  let before = Number.POSITIVE_INFINITY;
  for (let round = 0; round < rounds; round++) {
    for (let n = 0; n < nodeCount; n++) more[n] = 0;
    let largest = 0;
    for (let l = 0; l < net.linkCount; l++) {
      const dq = change[l];
      const q = flow[l];
      // Past half of its flow a loss is no parabola any more.
      const e = 4 * dq * dq < q * q ? curvature[l] * dq * dq : 0;
      const move = e - bent[l];
      trial[l] = e;
      const through = conductance[l] * move;
      more[from[l]] += through;
      more[to[l]] -= through;
      const far = Math.abs(move);
      if (far > largest) largest = far;
    }
    if (!(largest < 0.7 * before)) return;
    before = largest;
    substitute(plan, values, inverse, more);
    for (let j = 0; j < size; j++) rhs[j] += more[j];
    for (let l = 0; l < net.linkCount; l++) {
      bent[l] = trial[l];
      change[l] = conductance[l] * (left[l] - trial[l] + rhs[from[l]] - rhs[to[l]]);
    }
  }
}

/** Tees couple the flows of three links: their losses at the flows after the step, and the bend of all others, are put into the
 *  right-hand side and mixed until they hold, which is Newton's method with the tees' full coupling. False where they would not; the
 *  step is then the plain one. */
function followTees(net: CompiledNetwork, state: NetworkState): boolean {
  const { from, to, plan, junctionCount: size, nodeCount } = net;
  const { links } = net.tees;
  const { rhs, more, values, inverse, conductance, left, flow, change, curvature, bent, trial, mixing, headChange } =
    state;
  const { teeLoss, teeSlope, nextTeeLoss, nextTeeSlope } = state;
  // As near as the step itself will come, which is of third order.
  const enough = state.lossScale * Math.max(1e-12, Math.min(1e-3, 10 * state.energyResidual ** 3));
  if (mixing === undefined) return false;
  restart(mixing);
  for (let j = 0; j < size; j++) headChange[j] = rhs[j];
  for (let round = 0; round < 16; round++) {
    for (let i = 0; i < links.length; i++) trial[links[i]] = flow[links[i]] + change[links[i]];
    teeLosses(net.tees, trial, nextTeeLoss, nextTeeSlope);
    let largest = 0;
    for (let l = 0; l < net.linkCount; l++) {
      const dq = change[l];
      const q = flow[l];
      let e = 4 * dq * dq < q * q ? curvature[l] * dq * dq : 0;
      e += nextTeeLoss[l] - teeLoss[l] - teeSlope[l] * dq;
      if (conductance[l] === 0) e = 0;
      trial[l] = e;
      const move = e - bent[l];
      const far = Math.abs(move);
      if (far > largest) largest = far;
    }
    if (round > 0 && largest <= enough) {
      let descent = 0;
      for (let l = 0; l < net.linkCount; l++) descent += (left[l] - nextTeeLoss[l] + teeLoss[l]) * change[l];
      state.descent = descent;
      return true;
    }
    mix(mixing, bent, trial);
    for (let n = 0; n < nodeCount; n++) more[n] = 0;
    for (let l = 0; l < net.linkCount; l++) {
      const through = conductance[l] * (trial[l] - bent[l]);
      more[from[l]] += through;
      more[to[l]] -= through;
    }
    substitute(plan, values, inverse, more);
    for (let j = 0; j < size; j++) rhs[j] += more[j];
    for (let l = 0; l < net.linkCount; l++) {
      bent[l] = trial[l];
      change[l] = conductance[l] * (left[l] - trial[l] + rhs[from[l]] - rhs[to[l]]);
    }
  }
  restorePlain(net, state);
  return false;
}
