import { type CompiledNetwork, linkType, refreshPumps } from "./compile.ts";
import { eliminate } from "./elimination.ts";
import { evaluateLosses } from "./linkLosses.ts";
import type { ConvergenceRecord } from "./record.ts";
import { balanceFlows, planForest, type SpanningForest } from "./spanningForest.ts";
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

/** Flows, heads and work space of one network; kept between solutions so that nothing is allocated in a drag. */
export interface NetworkState {
  /** Flow of each link [m3/s], positive from -> to. */
  readonly flow: Float64Array;
  /** Head of each node [m], in solver order; known heads are copied in. */
  readonly head: Float64Array;
  /** Head loss [m] and its slope [s/m2] of each link. */
  readonly loss: Float64Array;
  readonly slope: Float64Array;
  /** 1 where a link is shut: a check valve or pump against the flow; 2 where it is a closed valve. */
  readonly shut: Uint8Array;
  readonly x: Float64Array;
  readonly change: Float64Array;
  readonly trial: Float64Array;
  /** Tee losses of each link [m] as reckoned from the flows, and as the solver takes them for now. */
  readonly teeTrue: Float64Array;
  readonly teeLoss: Float64Array;
  readonly weight: Float64Array;
  readonly excess: Float64Array;
  readonly correction: Float64Array;
  readonly diagonal: Float64Array;
  readonly surplus: Float64Array;
  readonly history: Float64Array;
  forest: SpanningForest;
  /** How fast the content falls at the start of the step: sum of g dQ^2 [m4/s]. */
  descent: number;
  iterations: number;
  shortened: number;
  energyResidual: number;
  worstLink: number;
  headScale: number;
  /** Largest of headScale and every loss [m]. */
  lossScale: number;
  status: ConvergenceRecord["status"];
}

/** Returns work space for a compiled network, with the flows a cold start begins from.
 *  net CompiledNetwork   -> NetworkState
 *  Findings: none. Throws: never.
 *  Valid: for this network only.
 *  Source: own construction.
 *  Example: newNetworkState(compileNetwork({ liquid: { density: 1000, kinematicViscosity: 1e-6 }, nodes: [{ id: "a", kind: "fixedHead", head: 1 }, { id: "b", kind: "junction", elevation: 0 }], links: [{ id: "p", kind: "valve", from: "a", to: "b", diameter: 0.02, lossCoefficient: 1 }] })).flow.length  ->  1 */
export function newNetworkState(net: CompiledNetwork): NetworkState {
  const links = net.linkCount;
  const junctions = net.junctionCount;
  const vector = (n: number) => new Float64Array(n);
  return {
    flow: vector(links),
    head: vector(net.nodeCount),
    loss: vector(links),
    slope: vector(links),
    shut: new Uint8Array(links),
    x: vector(links).fill(7),
    change: vector(links),
    trial: vector(links),
    teeTrue: vector(links),
    teeLoss: vector(links),
    weight: vector(net.plan.slots),
    excess: vector(junctions),
    correction: vector(junctions),
    diagonal: vector(junctions),
    surplus: vector(junctions),
    history: vector(256),
    forest: net.forest,
    descent: 0,
    iterations: 0,
    shortened: 0,
    energyResidual: Number.POSITIVE_INFINITY,
    worstLink: -1,
    headScale: 1,
    lossScale: 1,
    status: "limit",
  };
}

/** Smallest slope used as a resistance [s/m2]: at rest a square law has none. It only shortens a step, never moves the answer. */
const leastSlope = 1e-9;
/** Weight of the energy error of a link that leaks, until it is shut. */
const leakWeight = 1e-4;
/** Conductance left to a shut link [m2/s], so that water behind it still has a head. */
const shutConductance = 1e-13;

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
    const shut = (!single || !opened) && shutBackwardLinks(net, state, single);
    if (!opened && !shut) {
      // Behind shut links balancing leaves its rounding in one of them.
      for (let l = 0; l < net.linkCount; l++) if (state.shut[l] !== 0) state.flow[l] = 0;
      return state;
    }
    state.forest = planForest(net.junctionCount, net.from, net.to, state.shut);
    if (!settleShutFlows(net, state)) {
      state.status = "unreachable";
      return state;
    }
    measure(net, state);
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
  const { head } = state;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let n = net.junctionCount; n < net.nodeCount; n++) {
    const h = net.head[n];
    head[n] = h;
    if (h < low) low = h;
    if (h > high) high = h;
  }
  if (!warm) {
    state.flow.set(net.firstFlow);
    state.x.fill(7);
    state.shut.fill(0);
    state.teeLoss.fill(0);
    head.fill(high, 0, net.junctionCount);
    state.forest = forestAround(net);
  }
  // Demands may have changed since: a warm start balances its flows first, or an old answer would look like a new one.
  else {
    // A valve opened in place is no longer shut.
    for (let l = 0; l < net.linkCount; l++)
      if (state.shut[l] !== 0 && net.oneWay[l] === 0 && net.type[l] !== linkType.closed) state.shut[l] = 0;
    balanceFlows(state.forest, net.from, net.to, net.demand, state.flow, state.surplus);
  }
  // Heads are differences of numbers this large: at 10 m rounding leaves 2e-15 m, whatever the losses are.
  state.headScale = Math.max(high - low, 1e-6, 1e-5 * Math.max(Math.abs(high), Math.abs(low)));
  measure(net, state);
}

/** The forest by which flows are balanced, kept off closed valves: their resistance would turn its rounding into head. */
function forestAround(net: CompiledNetwork): SpanningForest {
  if (!net.type.includes(linkType.closed)) return net.forest;
  const closed = net.type.map((type) => (type === linkType.closed ? 2 : 0));
  return planForest(net.junctionCount, net.from, net.to, closed);
}

/** Losses at the present flows, and the largest energy error at the present heads. Tee losses depend on three flows at once and
 *  would spoil the convex search, so `frozen` keeps them as they are while a step is being sized. */
function measure(net: CompiledNetwork, state: NetworkState, frozen = false): void {
  evaluateLosses(net, state.shut, state.flow, state.x, state.loss, state.slope);
  if (net.tees.length === 0) measureErrors(net, state, undefined);
  else if (frozen) {
    measureErrors(net, state, state.teeLoss);
    for (let l = 0; l < net.linkCount; l++) state.loss[l] += state.teeLoss[l];
  } else takeTees(net, state);
}

/** Brings the tees' losses up to date with the flows; `state.loss` holds the links' own losses before and all losses after. */
function takeTees(net: CompiledNetwork, state: NetworkState): void {
  const { loss, teeLoss, teeTrue } = state;
  teeLosses(net.tees, state.flow, teeTrue, state.slope);
  measureErrors(net, state, teeTrue);
  // Once plain iteration has had its chance, tee losses follow more slowly: that calms tees that feed back on each other.
  const follow = state.energyResidual < 1e-9 || state.iterations < 20 ? 1 : state.iterations < 80 ? 0.5 : 0.2;
  for (let l = 0; l < net.linkCount; l++) {
    teeLoss[l] += follow * (teeTrue[l] - teeLoss[l]);
    loss[l] += teeLoss[l];
  }
}

function measureErrors(net: CompiledNetwork, state: NetworkState, extra: Float64Array | undefined): void {
  const { from, to } = net;
  const { flow, head, loss, shut } = state;
  let worst = 0;
  let worstLink = -1;
  let scale = state.headScale;
  for (let l = 0; l < net.linkCount; l++) {
    if (shut[l] !== 0) continue;
    const h = extra === undefined ? loss[l] : loss[l] + extra[l];
    const error = head[from[l]] - head[to[l]] - h;
    let size = error < 0 ? -error : error;
    // A leak only finds out which links to shut: the rounding of a flow, times its resistance, says nothing.
    if (net.type[l] === linkType.closed || (net.oneWay[l] !== 0 && flow[l] < 0)) size *= leakWeight;
    if (!(size <= worst)) {
      worst = size;
      worstLink = l;
    }
    if (h > scale) scale = h;
    else if (-h > scale) scale = -h;
  }
  state.lossScale = scale;
  state.energyResidual = worst / scale;
  state.worstLink = worstLink;
}

function iterate(
  net: CompiledNetwork,
  state: NetworkState,
  tolerance: number,
  limit: number,
  unbalanced: boolean,
): void {
  let balanced = !unbalanced;
  let best = Number.POSITIVE_INFINITY;
  let idle = 0;
  state.status = "limit";
  while (state.iterations < limit) {
    if (state.energyResidual < 0.5 * best) {
      best = state.energyResidual;
      idle = 0;
    } else idle++;
    // A warm start from an unchanged network is already there. Links many orders apart leave a rounding error that no step
    // takes away; the record names it.
    const atRounding = idle > 5 && state.energyResidual <= 10 * tolerance;
    if (balanced && (state.energyResidual <= tolerance || atRounding)) {
      state.status = "converged";
      return;
    }
    newtonStep(net, state);
    advance(net, state, balanced);
    balanced = true;
    if (state.iterations < 256) state.history[state.iterations] = state.energyResidual;
    state.iterations++;
    if (Number.isNaN(state.energyResidual)) {
      state.status = "stalled";
      return;
    }
  }
  if (state.energyResidual <= tolerance) state.status = "converged";
}

/** Heads and flow changes of one full Newton step, in correction form: with r = dH - h(Q), solve A dh = B r/g, dQ = (r + dh)/g.
 *  Because r vanishes, so does every rounding error of the linear solve. */
function newtonStep(net: CompiledNetwork, state: NetworkState): void {
  const { from, to, plan, junctionCount: size } = net;
  const { flow, head, loss, slope, shut, change, weight, excess, correction } = state;
  const { linkSlot } = plan;
  weight.fill(0);
  excess.fill(0);
  for (let j = 0; j < size; j++) correction[j] = -net.demand[j];
  for (let l = 0; l < net.linkCount; l++) {
    const a = from[l];
    const b = to[l];
    let p: number;
    let q: number;
    if (shut[l] !== 0) {
      p = shutConductance;
      q = 0;
    } else {
      const g = slope[l];
      p = 1 / (g > leastSlope ? g : leastSlope);
      q = p * (head[a] - head[b] - loss[l]);
      change[l] = q;
      q += flow[l];
    }
    if (a < size) {
      correction[a] -= q;
      if (b < size) weight[linkSlot[l]] += p;
      else excess[a] += p;
    } else if (b < size) excess[b] += p;
    if (b < size) correction[b] += q;
  }
  eliminate(plan, weight, excess, correction, state.diagonal);
  let descent = 0;
  for (let l = 0; l < net.linkCount; l++) {
    if (shut[l] !== 0) {
      change[l] = 0;
      continue;
    }
    const a = from[l];
    const b = to[l];
    const g = slope[l] > leastSlope ? slope[l] : leastSlope;
    const dh = (a < size ? correction[a] : 0) - (b < size ? correction[b] : 0);
    const dq = change[l] + dh / g;
    change[l] = dq;
    descent += g * dq * dq;
  }
  state.descent = descent;
  for (let j = 0; j < size; j++) head[j] += correction[j];
}

/** Takes the step, shortened while the content's slope along it says that it overshoots. */
function advance(net: CompiledNetwork, state: NetworkState, balanced: boolean): void {
  const { flow, change, trial } = state;
  const links = net.linkCount;
  if (!balanced) {
    for (let l = 0; l < links; l++) flow[l] += change[l];
    balanceFlows(state.forest, net.from, net.to, net.demand, flow, state.surplus);
    measure(net, state);
    return;
  }
  for (let l = 0; l < links; l++) trial[l] = flow[l];
  const tees = net.tees.length > 0;
  const atStart = -state.descent;
  let share = 1;
  for (let attempt = 0; attempt < 30; attempt++) {
    for (let l = 0; l < links; l++) flow[l] = trial[l] + share * change[l];
    balanceFlows(state.forest, net.from, net.to, net.demand, flow, state.surplus);
    measure(net, state, tees);
    // Near the answer both slopes are rounding; a full step is then right.
    if (state.energyResidual < 1e-9) break;
    const atEnd = contentSlope(net, state);
    if (!(atEnd > -0.5 * atStart)) break;
    // Falling at the start, rising at the end: the zero in between by regula falsi, kept off both ends.
    share *= Math.min(0.7, Math.max(0.1, atStart / (atStart - atEnd)));
    if (attempt === 0) state.shortened++;
  }
  if (!tees) return;
  for (let l = 0; l < links; l++) state.loss[l] -= state.teeLoss[l];
  takeTees(net, state);
}

/** d(content)/d(share) along the step: sum of (h - dH) dQ, negative while it still descends. */
function contentSlope(net: CompiledNetwork, state: NetworkState): number {
  const { from, to } = net;
  const { head, loss, change, shut } = state;
  let sum = 0;
  for (let l = 0; l < net.linkCount; l++) if (shut[l] === 0) sum += (loss[l] - head[from[l]] + head[to[l]]) * change[l];
  return sum;
}

/** Shuts every one-way link with backward flow, and closed valves. True when any was shut. */
function shutBackwardLinks(net: CompiledNetwork, state: NetworkState, single: boolean): boolean {
  let any = false;
  for (let l = 0; l < net.linkCount; l++) {
    if (state.shut[l] !== 0) continue;
    const backward = net.oneWay[l] !== 0 && state.flow[l] < 0;
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
function settleShutFlows(net: CompiledNetwork, state: NetworkState): boolean {
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
function reopenWillingLinks(net: CompiledNetwork, state: NetworkState, single: boolean, threshold: number): boolean {
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
