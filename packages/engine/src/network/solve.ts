import { beginCold } from "./beginCold.ts";
import { type CompiledNetwork, linkType, refreshPumps } from "./compile.ts";
import { assemble, closeRoots, exactRoots, roughRoots } from "./linkLosses.ts";
import { newtonStep } from "./newtonStep.ts";
import {
  clearRestingFlows,
  flowRounding,
  reopenWillingLinks,
  settleShutFlows,
  shutBackwardLinks,
} from "./shutLinks.ts";
import { balanceFlows, planForest, type SpanningForest } from "./spanningForest.ts";
import type { NetworkState } from "./state.ts";
import { teeLosses } from "./tees.ts";

/** How far to go and where to begin. */
export interface SolveOptions {
  /** Energy error allowed on any link, over the head scale [-]; 1e-10 where nothing is said. */
  readonly tolerance?: number;
  /** Iterations allowed; 200 where nothing is said. */
  readonly maximumIterations?: number;
  /** Begin from the flows and heads that the state holds, as after a small edit. */
  readonly warm?: boolean;
}

/** Solves a compiled network in place: flows that balance at every junction and heads that account for every loss.
 *
 *  Newton's method on the global-gradient formulation. All losses rise with flow, so the answer is the minimum of a convex
 *  function (the network's content) and Newton steps, shortened where the content would rise, reach it from anywhere.
 *  After the first step every step is a circulation: junctions stay balanced, `balanceFlows` takes the rounding out.
 *  One-way links first meet a steep resistance backward; those that end up there are then shut for good and checked.
 *  net CompiledNetwork   state NetworkState, changed in place   options SolveOptions   -> the state
 *  Findings: none. Throws: never; not converging is told in `state.status`.
 *  Valid: any topology; resistances over many orders of magnitude.
 *  Source: E. Todini and S. Pilati, A gradient algorithm for the analysis of pipe networks (1988); content model: M. Collins
 *  et al., Solving the pipe network analysis problem using optimization techniques, Management Science 24 (1978) 747-760.
 *  Example: solveNetwork({ liquid: { density: 1000, kinematicViscosity: 1e-6 }, nodes: [{ id: "a", kind: "fixedHead", head: 1 }, { id: "b", kind: "fixedHead", head: 0 }], links: [{ id: "p", kind: "device", from: "a", to: "b", coefficient: 4e6 }] }).flows[0]  ->  0.0005 */
export function solveCompiled(net: CompiledNetwork, state: NetworkState, options: SolveOptions = {}): NetworkState {
  const tolerance = options.tolerance ?? 1e-10;
  const limit = options.maximumIterations ?? 200;
  begin(net, state, options.warm === true);
  iterate(net, state, tolerance, limit, options.warm !== true);
  if (state.status !== "converged") return state;

  // Links left leaning on their backward resistance are shut exactly, those that would open again are let go, and we go on.
  for (let round = 0; round < 60; round++) {
    // The head of a part that is cut off is known only to rounding: late in the game it takes more to open a link.
    // All at once first; one at a time where links that depend on each other would take turns for ever.
    const single = round >= 6;
    const opened = reopenWillingLinks(net, state, single, round < 20 ? 1e-9 : 1e-6);
    // A link at rest may be told to run backward by rounding alone, each time anew.
    const rounding = round < 8 ? 0 : flowRounding(state);
    const shut = (!single || !opened) && shutBackwardLinks(net, state, single, rounding);
    if (!opened && !shut) {
      if (!clearRestingFlows(net, state)) return state;
      look(net, state, exactRoots);
      if (state.energyResidual <= tolerance) return state;
      iterate(net, state, tolerance, limit, false);
      if (state.status !== "converged") return state;
      continue;
    }
    state.forest = planForest(net.junctionCount, net.from, net.to, state.shut);
    if (!settleShutFlows(net, state)) {
      state.status = "unreachable";
      return state;
    }
    look(net, state, exactRoots);
    iterate(net, state, tolerance, limit, false);
    if (state.status !== "converged") return state;
  }
  state.status = "stalled";
  return state;
}

function begin(net: CompiledNetwork, state: NetworkState, warm: boolean): void {
  refreshPumps(net);
  state.iterations = 0;
  state.shortened = 0;
  const { head, shut } = state;
  const size = net.junctionCount;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let n = size; n < net.nodeCount; n++) {
    const h = net.head[n];
    head[n] = h;
    if (h < low) low = h;
    if (h > high) high = h;
  }
  // Heads are differences of numbers this large: at 10 m rounding leaves 2e-15 m, whatever the losses are.
  state.headScale = Math.max(high - low, 1e-6, 1e-5 * Math.max(Math.abs(high), Math.abs(low)));
  if (!warm) {
    for (let j = 0; j < size; j++) head[j] = high;
    state.forest = forestAround(net);
    beginCold(net, state);
    return;
  }
  // A valve opened in place is no longer shut.
  for (let l = 0; l < net.linkCount; l++)
    if (shut[l] !== 0 && net.oneWay[l] === 0 && net.type[l] !== linkType.closed) shut[l] = 0;
  // Demands may have changed since: flows are balanced first, or an old answer would look like a new one.
  balance(net, state);
  look(net, state, exactRoots);
}

/** The forest by which flows are balanced, kept off closed valves: their resistance would turn its rounding into head. */
function forestAround(net: CompiledNetwork): SpanningForest {
  if (!net.type.includes(linkType.closed)) return net.forest;
  const closed = net.type.map((type) => (type === linkType.closed ? 2 : 0));
  return planForest(net.junctionCount, net.from, net.to, closed);
}

/** Below this residual the next step may be the last: from here on flows are balanced and friction is exact. */
const nearly = 1e-3;

function balance(net: CompiledNetwork, state: NetworkState): void {
  balanceFlows(state.forest, net.from, net.to, net.demand, state.flow, state.surplus);
}

/** Losses, errors and the next equations at the present flows and heads. */
function look(net: CompiledNetwork, state: NetworkState, rootStep: number): void {
  if (net.tees.count > 0) teeLosses(net.tees, state.flow, state.teeLoss, state.teeSlope);
  assemble(net, state, rootStep);
}

/** Newton steps from flows that need not balance yet (`first`) until the energy residual is within the tolerance. */
function iterate(net: CompiledNetwork, state: NetworkState, tolerance: number, limit: number, first: boolean): void {
  // Networks that take long have links many orders apart: there every step is balanced.
  const careful = state.iterations + 12;
  let unbalanced = first;
  let exact = !first;
  let best = Number.POSITIVE_INFINITY;
  let idle = 0;
  state.status = "limit";
  for (;;) {
    if (state.energyResidual < 0.5 * best) {
      best = state.energyResidual;
      idle = 0;
    } else idle++;
    // Links many orders apart leave a rounding error that no step takes away; the record names it.
    // So does water that circles in a loop nothing drives: it fades by a twentieth a step, and at the last step near is enough.
    const atRounding = (idle > 5 || state.iterations >= limit) && state.energyResidual <= 10 * tolerance;
    if (!unbalanced && (state.energyResidual <= tolerance || atRounding)) {
      if (exact) {
        state.status = "converged";
        return;
      }
      balance(net, state);
      look(net, state, exactRoots);
      exact = true;
      continue;
    }
    if (state.iterations >= limit) return;
    exact = !unbalanced && (state.iterations >= careful || state.energyResidual < nearly);
    if (net.tees.count > 0 && !unbalanced) stepWithTees(net, state, exact);
    else {
      newtonStep(net, state, unbalanced);
      advance(net, state, unbalanced, exact);
    }
    unbalanced = false;
    if (state.iterations < 256) state.history[state.iterations] = state.energyResidual;
    state.iterations++;
    if (Number.isNaN(state.energyResidual)) {
      state.status = "stalled";
      return;
    }
  }
}

/** A step of a network with tees: with the tees' losses at its end while these can be found and the errors shrink, else with the
 *  tees' losses as they are at its beginning, for only then is there a content that leads downhill. */
function stepWithTees(net: CompiledNetwork, state: NetworkState, exact: boolean): void {
  const { flow, head, trial, change, rhs, headBefore, headChange } = state;
  const before = state.energyResidual * state.lossScale;
  // Far from the answer the end of a step says little: plain steps come first, and last where nothing else has helped.
  if ((state.energyResidual < 0.2 || state.iterations >= 5) && state.iterations < 40) {
    for (let n = 0; n < net.junctionCount; n++) headBefore[n] = head[n];
    if (newtonStep(net, state, false)) {
      for (let l = 0; l < net.linkCount; l++) trial[l] = flow[l];
      for (let j = 0; j < net.junctionCount; j++) headChange[j] = rhs[j];
      for (let share = 1; share > 0.1; share *= 0.4) {
        for (let l = 0; l < net.linkCount; l++) flow[l] = trial[l] + share * change[l];
        for (let j = 0; j < net.junctionCount; j++) head[j] = headBefore[j] + share * headChange[j];
        if (exact) balance(net, state);
        look(net, state, exact ? exactRoots : closeRoots);
        if (state.energyResidual < 1e-9 || state.energyResidual * state.lossScale < (1 - 0.1 * share) * before) return;
        if (share === 1) state.shortened++;
      }
      for (let l = 0; l < net.linkCount; l++) flow[l] = trial[l];
      for (let j = 0; j < net.junctionCount; j++) head[j] = headBefore[j];
      look(net, state, exactRoots);
      newtonStep(net, state, false, true);
    }
  } else newtonStep(net, state, false, true);
  advance(net, state, false, true);
  look(net, state, exactRoots);
}

/** Takes the step, shortened while the content's slope along it says that it overshoots. Tee losses stay as they are meanwhile. */
function advance(net: CompiledNetwork, state: NetworkState, first: boolean, exact: boolean): void {
  const { flow, change, trial, head, rhs } = state;
  const links = net.linkCount;
  for (let j = 0; j < net.junctionCount; j++) head[j] += rhs[j];
  // Once plain iteration has had its chance, shorter steps calm tees that feed back on each other.
  let share = net.tees.count === 0 || state.iterations < 20 ? 1 : state.iterations < 80 ? 0.5 : 0.2;
  for (let l = 0; l < links; l++) {
    const q = flow[l];
    trial[l] = q;
    flow[l] = q + share * change[l];
  }
  if (exact || first) balance(net, state);
  if (first) {
    look(net, state, roughRoots);
    return;
  }
  assemble(net, state, exact ? exactRoots : closeRoots);
  const atStart = -state.descent;
  for (let attempt = 0; attempt < 30; attempt++) {
    // Near the answer both slopes are rounding; a full step is then right.
    if (state.energyResidual < 1e-9) return;
    const atEnd = state.contentSlope;
    if (!(atEnd > -0.5 * atStart)) return;
    // Falling at the start, rising at the end: the zero in between by regula falsi, kept off both ends.
    share *= Math.min(0.7, Math.max(0.1, atStart / (atStart - atEnd)));
    if (attempt === 0) state.shortened++;
    for (let l = 0; l < links; l++) flow[l] = trial[l] + share * change[l];
    balance(net, state);
    assemble(net, state, exactRoots);
  }
}
