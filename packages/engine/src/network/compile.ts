import { colebrook } from "../losses/index.ts";
import { standardGravity } from "../water/index.ts";
import { type Elimination, planElimination } from "./elimination.ts";
import { type FirstStep, newFirstStep } from "./firstStep.ts";
import type { DeviceLink, NetworkLink, NetworkModel, PipeLink, PumpLink, ValveLink } from "./model.ts";
import { networkProblems } from "./networkProblems.ts";
import { type CompiledPump, compilePump } from "./pumpLinks.ts";
import { planForest, type SpanningForest } from "./spanningForest.ts";
import { type CompiledTees, compileTees } from "./tees.ts";

/** What a link is to the inner loop. */
export const linkType = { pipe: 0, local: 1, pump: 2, device: 3, closed: 4 } as const;

/** A network as flat arrays, one entry a link: topology and coefficients, worked out once. Topology stays as it is; between
 *  solutions these may be changed in place: `head` of known heads, `demand`, `oneWay` of a link, `pumps` of a pump link (another
 *  object, as at a new speed; `oneWay` stays as it is), and whatever `setLink` writes. */
export interface CompiledNetwork {
  readonly model: NetworkModel;
  readonly linkCount: number;
  readonly junctionCount: number;
  readonly nodeCount: number;
  /** Model index of each node in solver order (junctions first), and the way back. */
  readonly nodeOrder: Int32Array;
  readonly nodeIndex: ReadonlyMap<string, number>;
  readonly linkIndex: ReadonlyMap<string, number>;
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly type: Uint8Array;
  /** 1 where water may only run from -> to: check valves, and pumps that keep water back. */
  readonly oneWay: Uint8Array;
  /** Demand of each junction [m3/s]; heads of all nodes [m], known ones at the end. */
  readonly demand: Float64Array;
  readonly head: Float64Array;
  /** h = quadratic Q|Q| + linear Q for fittings and devices. */
  readonly quadratic: Float64Array;
  readonly linear: Float64Array;
  /** Pipes: friction h = friction f Q|Q|; Re = reynolds |Q|; b = e / 3.7 D of Colebrook's formula. */
  readonly friction: Float64Array;
  readonly reynolds: Float64Array;
  readonly roughnessTerm: Float64Array;
  /** Cubic of f over t = (Re - 2000)/2000 between laminar and turbulent, four numbers a pipe. */
  readonly transition: Float64Array;
  readonly area: Float64Array;
  readonly pumps: (PumpLink | undefined)[];
  /** The pumps' terms at their speeds, brought up to date when a solution begins. */
  readonly pumpTerms: (CompiledPump | undefined)[];
  readonly devices: (DeviceLink | undefined)[];
  readonly tees: CompiledTees;
  readonly plan: Elimination;
  readonly forest: SpanningForest;
  /** A flow to begin with [m3/s]: 1 m/s in pipes, half of the last flow for pumps. */
  readonly firstFlow: Float64Array;
  /** The first step's equations, eliminated at those flows; they depend on no level and no demand. */
  readonly firstStep: FirstStep;
}

/** Returns a network as flat arrays with its elimination order, ready for `solveCompiled`.
 *  model NetworkModel   -> CompiledNetwork
 *  Findings: none. Throws: RangeError naming every problem that `networkProblems` finds.
 *  Valid: any sound model.
 *  Source: own construction; stages as in EPANET (model, coefficients, linear solve, iterate).
 *  Example: compileNetwork({ liquid: { density: 1000, kinematicViscosity: 1e-6 }, nodes: [{ id: "a", kind: "fixedHead", head: 1 }, { id: "b", kind: "junction", elevation: 0 }], links: [{ id: "p", kind: "valve", from: "a", to: "b", diameter: 0.02, lossCoefficient: 1 }] }).junctionCount  ->  1 */
export function compileNetwork(model: NetworkModel): CompiledNetwork {
  const problems = networkProblems(model);
  if (problems.length > 0) throw new RangeError(problems.map((problem) => problem.message).join("; "));

  const { nodes, links } = model;
  // Known heads come last; junctions take the numbers of their removal, so that the solver reads its arrays from front to back.
  const size = nodes.reduce((count, node) => (node.kind === "junction" ? count + 1 : count), 0);
  const nodeIndex = new Map<string, number>();
  const nodeOrder = new Int32Array(nodes.length);
  const junctions = new Int32Array(size);
  const head = new Float64Array(nodes.length);
  let junction = 0;
  let known = size;
  for (let i = 0; i < nodes.length; i++) {
    const node = nodes[i];
    if (node.kind === "junction") {
      junctions[junction] = i;
      nodeIndex.set(node.id, junction++);
    } else {
      nodeOrder[known] = i;
      head[known] = node.head;
      nodeIndex.set(node.id, known++);
    }
  }
  const n = links.length;
  const from = new Int32Array(n);
  const to = new Int32Array(n);
  const linkIndex = new Map<string, number>();
  for (let i = 0; i < n; i++) {
    const link = links[i];
    linkIndex.set(link.id, i);
    from[i] = nodeIndex.get(link.from) as number;
    to[i] = nodeIndex.get(link.to) as number;
  }
  const plan = planElimination(size, from, to);
  const demand = new Float64Array(size);
  const rank = new Int32Array(size);
  for (let s = 0; s < size; s++) {
    const i = junctions[plan.order[s]];
    const node = nodes[i];
    rank[plan.order[s]] = s;
    nodeOrder[s] = i;
    nodeIndex.set(node.id, s);
    demand[s] = node.kind === "junction" ? (node.demand ?? 0) : 0;
  }
  for (let i = 0; i < n; i++) {
    if (from[i] < size) from[i] = rank[from[i]];
    if (to[i] < size) to[i] = rank[to[i]];
  }

  const compiled: CompiledNetwork = {
    model,
    linkCount: n,
    junctionCount: size,
    nodeCount: nodes.length,
    nodeOrder,
    nodeIndex,
    linkIndex,
    from,
    to,
    type: new Uint8Array(n),
    oneWay: new Uint8Array(n),
    demand,
    head,
    quadratic: new Float64Array(n),
    linear: new Float64Array(n),
    friction: new Float64Array(n),
    reynolds: new Float64Array(n),
    roughnessTerm: new Float64Array(n),
    transition: new Float64Array(4 * n),
    area: new Float64Array(n).fill(Number.NaN),
    pumps: links.map((link) => (link.kind === "pump" ? link : undefined)),
    pumpTerms: links.map(() => undefined),
    devices: links.map((link) => (link.kind === "device" ? link : undefined)),
    tees: compileTees(model, linkIndex, to, nodeIndex),
    plan,
    forest: planForest(size, from, to),
    firstFlow: new Float64Array(n),
    firstStep: newFirstStep(n, plan),
  };
  links.forEach((link, i) => setLink(compiled, i, link));
  return compiled;
}

function isOneWay(link: NetworkLink): boolean {
  if (link.checkValve === true) return true;
  return link.kind === "pump" && link.reverseFlow !== true && link.reverseCoefficient === undefined;
}

/** Writes the coefficients of one link in place: a new speed, opening or bore; its ends stay as they are.
 *  compiled CompiledNetwork   index of the link in the model   link NetworkLink, SI   -> nothing
 *  Findings: none. Throws: never.
 *  Valid: for a link with the same ends.
 *  Source: coefficients as in `evaluateLosses`.
 *  Example: setLink(compileNetwork({ liquid: { density: 1000, kinematicViscosity: 1e-6 }, nodes: [{ id: "a", kind: "fixedHead", head: 1 }, { id: "b", kind: "junction", elevation: 0 }], links: [{ id: "p", kind: "valve", from: "a", to: "b", diameter: 0.02, lossCoefficient: 1 }] }), 0, { id: "p", kind: "valve", from: "a", to: "b", diameter: 0.02, lossCoefficient: 5 })  ->  undefined */
export function setLink(compiled: CompiledNetwork, index: number, link: NetworkLink): void {
  compiled.firstStep.ready = false;
  compiled.oneWay[index] = isOneWay(link) ? 1 : 0;
  compiled.pumps[index] = undefined;
  compiled.pumpTerms[index] = undefined;
  compiled.devices[index] = undefined;
  switch (link.kind) {
    case "pipe":
      setPipe(compiled, index, link);
      break;
    case "valve":
      setValve(compiled, index, link);
      break;
    case "pump":
      compiled.type[index] = linkType.pump;
      setPump(compiled, index, link);
      break;
    case "device":
      compiled.type[index] = linkType.device;
      compiled.devices[index] = link;
      compiled.quadratic[index] = link.coefficient;
      compiled.firstFlow[index] = link.curve ? link.curve.x[link.curve.x.length - 1] / 2 : 1e-4;
      if (!link.curve) compiled.type[index] = linkType.local;
      break;
  }
}

/** Brings the terms of pumps that were replaced in `net.pumps` up to date. */
export function refreshPumps(net: CompiledNetwork): void {
  const { pumps, pumpTerms } = net;
  for (let i = 0; i < pumps.length; i++) {
    const link = pumps[i];
    if (link !== undefined && pumpTerms[i]?.link !== link) setPump(net, i, link);
  }
}

function setPump(compiled: CompiledNetwork, i: number, link: PumpLink): void {
  const terms = compilePump(link);
  compiled.firstStep.ready = false;
  compiled.pumps[i] = link;
  compiled.pumpTerms[i] = terms;
  // A stopped pump begins at a hundredth of its range: at rest a square law has no slope.
  const { curve, speedRatio } = link.pump.upper;
  compiled.firstFlow[i] = (curve.lastFlow / speedRatio) * (terms.stopped ? 0.01 : link.pump.speedRatio / 2);
}

function setPipe(compiled: CompiledNetwork, i: number, pipe: PipeLink): void {
  const { kinematicViscosity: nu } = compiled.model.liquid;
  const area = (Math.PI / 4) * pipe.diameter * pipe.diameter;
  const velocityHead = 1 / (2 * standardGravity * area * area);
  compiled.type[i] = pipe.length > 0 ? linkType.pipe : linkType.local;
  compiled.area[i] = area;
  compiled.friction[i] = (pipe.length / pipe.diameter) * velocityHead;
  compiled.reynolds[i] = pipe.diameter / (area * nu);
  compiled.roughnessTerm[i] = pipe.roughness / (3.7 * pipe.diameter);
  compiled.quadratic[i] = pipe.minorLoss * velocityHead;
  // K1/Re V^2/2g is linear in Q.
  compiled.linear[i] = ((pipe.laminarLoss ?? 0) / compiled.reynolds[i]) * velocityHead;
  compiled.firstFlow[i] = area;
  setTransition(compiled.transition, 4 * i, pipe.roughness / pipe.diameter, compiled.roughnessTerm[i]);
}

/** Hermite cubic of f from Re 2000 (64/Re) to Re 4000 (Colebrook), values and slopes matched at both ends. */
function setTransition(out: Float64Array, at: number, relativeRoughness: number, b: number): void {
  const f0 = 64 / 2000;
  const m0 = -f0; // df/dt at t = 0, t = (Re - 2000)/2000
  const f1 = colebrook(4000, relativeRoughness);
  const x = 1 / Math.sqrt(f1);
  const a = 2.51 / 4000;
  const w = ((2 / Math.LN10) * a) / (b + a * x);
  const m1 = ((-2 * f1 * w) / (1 + w)) * (2000 / 4000); // df/dRe = -2 f w / (Re (1 + w))
  out[at] = f0;
  out[at + 1] = m0;
  out[at + 2] = 3 * (f1 - f0) - 2 * m0 - m1;
  out[at + 3] = 2 * (f0 - f1) + m0 + m1;
}

function setValve(compiled: CompiledNetwork, i: number, valve: ValveLink): void {
  const area = (Math.PI / 4) * valve.diameter * valve.diameter;
  const velocityHead = 1 / (2 * standardGravity * area * area);
  const closed = valve.lossCoefficient === Number.POSITIVE_INFINITY;
  compiled.type[i] = closed ? linkType.closed : linkType.local;
  compiled.area[i] = area;
  compiled.quadratic[i] = closed ? 0 : valve.lossCoefficient * velocityHead;
  const reynolds = valve.diameter / (area * compiled.model.liquid.kinematicViscosity);
  compiled.reynolds[i] = reynolds;
  compiled.linear[i] = ((valve.laminarLoss ?? 0) / reynolds) * velocityHead;
  compiled.firstFlow[i] = closed ? 0 : area;
}
