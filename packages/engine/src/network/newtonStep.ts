import type { CompiledNetwork } from "./compile.ts";
import { factorise, substitute } from "./elimination.ts";
import type { NetworkState } from "./state.ts";
import { teeLosses } from "./tees.ts";

/** Works out the changes of heads (`rhs`) and flows (`change`) of one full step from the assembled equations, in correction form: with
 *  r = dH - h(Q), solve A dh = B (Q + r/g) - demand, dQ = (r + dh)/g. Because r vanishes, so does every rounding error of the
 *  linear solve. `descent` takes how fast the content falls along the step. */
export function newtonStep(net: CompiledNetwork, state: NetworkState, first: boolean): void {
  const { plan, junctionCount: size, nodeCount } = net;
  const { rhs, values, inverse } = state;
  factorise(plan, values, inverse);
  substitute(plan, values, inverse, rhs);
  for (let n = size; n < nodeCount; n++) rhs[n] = 0;
  if (net.tees.count > 0 && state.iterations < 20) followTees(net, state);
  setChange(net, state);
  if (!first && state.energyResidual < 0.3) bendStep(net, state);
}

function setChange(net: CompiledNetwork, state: NetworkState): void {
  const { from, to } = net;
  const { rhs, conductance, left, slope, change, teeBent, teeSlope } = state;
  const tees = net.tees.count > 0;
  let descent = 0;
  for (let l = 0; l < net.linkCount; l++) {
    const p = conductance[l];
    if (p === 0) {
      change[l] = 0;
      continue;
    }
    let r = left[l] + rhs[from[l]] - rhs[to[l]];
    let g = slope[l];
    if (tees) {
      r -= teeBent[l];
      g -= teeSlope[l];
    }
    const dq = p * r;
    change[l] = dq;
    descent += g * dq * dq;
  }
  state.descent = descent;
}

/** Third order: losses bend over the step by c dQ^2, which one more substitution takes into account. Left out where the bend is no
 *  small correction, or where the step would no longer lead downhill. */
function bendStep(net: CompiledNetwork, state: NetworkState): void {
  const { from, to, plan, junctionCount: size, nodeCount } = net;
  const { rhs, more, values, inverse, conductance, curvature, flow, change, bent } = state;
  for (let n = 0; n < nodeCount; n++) more[n] = 0;
  for (let l = 0; l < net.linkCount; l++) {
    const dq = change[l];
    const q = flow[l];
    // Past half of its flow a loss is no parabola any more.
    if (4 * dq * dq < q * q) {
      const e = curvature[l] * dq * dq;
      const through = conductance[l] * e;
      bent[l] = e;
      more[from[l]] += through;
      more[to[l]] -= through;
    } else bent[l] = 0;
  }
  substitute(plan, values, inverse, more);
  for (let n = size; n < nodeCount; n++) more[n] = 0;
  const { slope, teeSlope } = state;
  let descent = 0;
  for (let l = 0; l < net.linkCount; l++) {
    const p = conductance[l];
    const dq = change[l] + p * (more[from[l]] - more[to[l]] - bent[l]);
    if (p !== 0) descent += ((slope[l] - teeSlope[l]) * dq + bent[l]) * dq;
    bent[l] = dq;
  }
  if (!(descent > 0.5 * state.descent)) return;
  state.descent = descent;
  for (let j = 0; j < size; j++) rhs[j] += more[j];
  for (let l = 0; l < net.linkCount; l++) change[l] = bent[l];
}

/** Tees couple the flows of three links. Their losses at the flows after the step are put into the step itself, by substituting
 *  again with the same elimination until they hold; that is Newton's method with the tees' full coupling. */
function followTees(net: CompiledNetwork, state: NetworkState): void {
  const { from, to, plan, junctionCount: size, nodeCount } = net;
  const { links } = net.tees;
  const { rhs, more, values, inverse, conductance, left, flow, trial } = state;
  const { teeLoss, teeSlope, nextTeeLoss, nextTeeSlope, teeBent } = state;
  for (let i = 0; i < links.length; i++) teeBent[links[i]] = 0;
  const enough = state.lossScale * Math.max(1e-13, 0.1 * state.energyResidual * state.energyResidual);
  let before = Number.POSITIVE_INFINITY;
  for (let round = 0; round < 12; round++) {
    for (let i = 0; i < links.length; i++) {
      const l = links[i];
      trial[l] = flow[l] + conductance[l] * (left[l] - teeBent[l] + rhs[from[l]] - rhs[to[l]]);
    }
    teeLosses(net.tees, trial, nextTeeLoss, nextTeeSlope);
    for (let n = 0; n < nodeCount; n++) more[n] = 0;
    let largest = 0;
    for (let i = 0; i < links.length; i++) {
      const l = links[i];
      if (conductance[l] === 0) continue;
      const bent = nextTeeLoss[l] - teeLoss[l] - teeSlope[l] * (trial[l] - flow[l]);
      const move = bent - teeBent[l];
      trial[l] = bent;
      const through = conductance[l] * move;
      more[from[l]] += through;
      more[to[l]] -= through;
      const size = move < 0 ? -move : move;
      if (size > largest) largest = size;
    }
    // Where following does not contract, the step keeps what it has; the next one looks again.
    if (!(largest < 0.7 * before)) return;
    before = largest;
    for (let i = 0; i < links.length; i++) if (conductance[links[i]] !== 0) teeBent[links[i]] = trial[links[i]];
    substitute(plan, values, inverse, more);
    for (let j = 0; j < size; j++) rhs[j] += more[j];
    if (largest <= enough) return;
  }
}
