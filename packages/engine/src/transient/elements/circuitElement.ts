import {
  type CompiledNetwork,
  compileNetwork,
  type NetworkState,
  newNetworkState,
  solveCompiled,
} from "../../network/index.ts";
import { pumpAtSpeed } from "../../pumps/index.ts";
import { standardGravity } from "../../water/index.ts";
import type { TransientCircuit, TransientModel } from "../model.ts";
import type { CircuitMode } from "../modes.ts";
import { type StateLayout, surfaceOf } from "../stateLayout.ts";
import type { FlowElement } from "./flowElement.ts";

/** A speed this low lifts nothing that could be seen: the pump stands. */
const standing = 1e-3;
/** A speed this near its target is taken for it, so that a pump that runs steadily costs nothing. */
const settled = 1e-6;

const warmStart = { warm: true };
const coldStart = {};
const oneStep = { warm: true, tolerance: 0, maximumIterations: 1 };

/** Share of a line's content that it takes beyond full before its openings let water out again [-]: a hair of compressibility, so that
 *  the head of a filling line rises to that of the water above it instead of jumping. */
export const fillReserve = 0.01;

/** Lines that hold less than this have hardly a wall [m3], and the head over which the flow of their column fades out [m]: it lags by as
 *  much, half a litre times a thousandth. */
const shortLine = 5e-4;
const restingGap = 1e-3;

/** A pumped circuit, solved as a network at every state. Its outlets stand at the surface above them, or at their own height in the
 *  air; an outlet that has let in air takes none back. A line that has taken in air at the top stands as a column: its outlets
 *  stand at the column's height, and what runs fills or empties it. */
export class CircuitElement implements FlowElement {
  readonly changes: readonly number[];
  readonly circuit: TransientCircuit;
  readonly mode: CircuitMode;
  /** Flow that each outlet lets out [m3/s] and that the source gives, of the last state. */
  readonly outflow: Float64Array;
  readonly #model: TransientModel;
  readonly #content: number;
  readonly #firstSpeed: number;
  #net: CompiledNetwork;
  #state: NetworkState;
  #leak = 0;
  #warm = false;
  readonly #speedSet: Float64Array;
  readonly #running: readonly number[];
  readonly #column: readonly number[];
  readonly #top: number;
  #sourceNode = 0;
  #nodes: readonly number[] = [];
  /** Links that end at each outlet: its last link, and the hole beside a check valve that leaks. */
  #links: readonly (readonly number[])[] = [];
  #pumpLinks: readonly number[] = [];
  #oneWay: Uint8Array = new Uint8Array(0);

  constructor(model: TransientModel, layout: StateLayout, mode: CircuitMode, index: number) {
    const circuit = model.circuits[index];
    this.#model = model;
    this.circuit = circuit;
    this.mode = mode;
    this.#content = layout.circuit + index;
    this.#firstSpeed = layout.speed[index];
    this.outflow = new Float64Array(circuit.outlets.length);
    this.#speedSet = new Float64Array(circuit.pumps.length).fill(-1);
    const ends = [...new Set([circuit.source, ...circuit.outlets.map((outlet) => outlet.vessel)])];
    const speeds = circuit.pumps.map((_, i) => this.#firstSpeed + i);
    this.#running = [...ends, ...speeds];
    this.#column = [...ends, ...speeds, this.#content];
    this.changes = [...ends, this.#content];
    // The column reaches as high as the highest opening above.
    this.#top = Math.max(
      circuit.intakeElevation + 1e-3,
      ...circuit.outlets.filter((outlet) => outlet.vessel === circuit.upper).map((outlet) => outlet.elevation),
    );
    this.#net = compileNetwork(circuit.network);
    this.#state = newNetworkState(this.#net);
    this.#bind();
  }

  #bind(): void {
    const { circuit } = this;
    const net = this.#net;
    this.#sourceNode = net.nodeIndex.get(circuit.sourceNode) as number;
    this.#nodes = circuit.outlets.map((outlet) => net.nodeIndex.get(outlet.node) as number);
    this.#links = this.#nodes.map((node) => [...net.to.keys()].filter((link) => net.to[link] === node));
    this.#pumpLinks = circuit.pumps.map((pump) => net.linkIndex.get(pump.link) as number);
    if (this.#leak >= 1) for (const id of circuit.checkValves) net.oneWay[net.linkIndex.get(id) as number] = 0;
    this.#oneWay = net.oneWay.slice();
    this.#speedSet.fill(-1);
    this.#warm = false;
  }

  /** Lets its check valves leak from now on: a hole beside the flap, or no flap at all. */
  leak(share: number): void {
    if (share === this.#leak) return;
    this.#leak = share;
    this.#net = compileNetwork(leakingNetwork(this.circuit, share));
    this.#state = newNetworkState(this.#net);
    this.#bind();
  }

  dependsOn(): readonly number[] {
    return this.mode.aired ? this.#column : this.#running;
  }

  add(y: Float64Array, out: Float64Array): void {
    this.solve(y);
    this.#book(out);
  }

  /** One Newton step from a solution near by: the answer to first order, which is all that a slope needs. */
  addNear(y: Float64Array, out: Float64Array): void {
    this.#set(y);
    solveCompiled(this.#net, this.#state, oneStep);
    this.#read();
    this.#book(out);
  }

  #book(out: Float64Array): void {
    const { circuit, mode, outflow } = this;
    for (let i = 0; i < outflow.length; i++) {
      const { vessel } = circuit.outlets[i];
      const flow = outflow[i];
      out[circuit.source] -= flow;
      out[mode.aired && vessel === circuit.upper ? this.#content : vessel] += flow;
    }
  }

  /** Flow up to the upper vessel, or into the line's column [m3/s]; negative when it runs back. All its flow where nothing is upper. */
  upward(): number {
    const { circuit, outflow } = this;
    let sum = 0;
    for (let i = 0; i < outflow.length; i++) {
      if (circuit.upper === undefined || circuit.outlets[i].vessel === circuit.upper) sum += outflow[i];
    }
    return sum;
  }

  /** Solves the circuit at a state; `outflow` holds the answer. */
  solve(y: Float64Array): void {
    this.#set(y);
    solveCompiled(this.#net, this.#state, this.#warm ? warmStart : coldStart);
    if (this.#state.status !== "converged" && this.#warm) solveCompiled(this.#net, this.#state, coldStart);
    this.#warm = this.#state.status === "converged";
    this.#read();
  }

  /** Heads, openings and speeds of a state, written into the network. */
  #set(y: Float64Array): void {
    const { circuit, mode } = this;
    const net = this.#net;
    net.head[this.#sourceNode] = Math.max(surfaceOf(this.#model, y, circuit.source), circuit.intakeElevation);
    const column = this.#columnHead(y);
    for (let i = 0; i < this.#nodes.length; i++) {
      const outlet = circuit.outlets[i];
      const level = surfaceOf(this.#model, y, outlet.vessel);
      const inColumn = mode.aired && outlet.vessel === circuit.upper;
      net.head[this.#nodes[i]] = inColumn ? column : Math.max(level, outlet.elevation);
      // Air runs in where water would have to come from nothing.
      const dryEnd = !inColumn && (mode.uncovered[i] || level < outlet.elevation);
      for (const link of this.#links[i]) net.oneWay[link] = dryEnd ? 1 : this.#oneWay[link];
    }
    for (let i = 0; i < circuit.pumps.length; i++) this.#setSpeed(i, mode.dry ? 0 : y[this.#firstSpeed + i]);
  }

  /** Head of the standing column: its height up to the highest opening, and beyond that what it takes to push the last hundredth into
   *  the water above. */
  #columnHead(y: Float64Array): number {
    const { circuit } = this;
    const share = y[this.#content] / circuit.content;
    const bottom = circuit.intakeElevation;
    if (share <= 1 || circuit.upper === undefined) return bottom + (this.#top - bottom) * share;
    const above = Math.max(0, surfaceOf(this.#model, y, circuit.upper) - this.#top);
    return this.#top + (above * (share - 1)) / fillReserve;
  }

  #read(): void {
    for (let i = 0; i < this.#links.length; i++) {
      let flow = 0;
      for (const link of this.#links[i]) flow += this.#state.flow[link];
      this.outflow[i] = flow;
    }
    if (this.mode.bare) this.#keepSourceDry();
    if (this.circuit.content < shortLine && this.mode.aired && this.#speedSet.every((speed) => speed === 0))
      this.#calmColumn();
  }

  /** The column of a short line that no pump moves fades out as it comes to stand at the water below: its law, all square and with hardly
   *  a wall to rub on, is upright at rest and would turn its flow for ever. */
  #calmColumn(): void {
    const { circuit, outflow } = this;
    const { head } = this.#net;
    for (let i = 0; i < outflow.length; i++) {
      if (circuit.outlets[i].vessel !== circuit.upper) continue;
      const gap = Math.abs(head[this.#nodes[i]] - head[this.#sourceNode]);
      outflow[i] *= gap / (restingGap + gap);
    }
  }

  /** An intake in the air gives nothing: what outlets let out is no more than what others take in. */
  #keepSourceDry(): void {
    const { outflow } = this;
    let out = 0;
    let back = 0;
    for (let i = 0; i < outflow.length; i++) {
      if (outflow[i] > 0) out += outflow[i];
      else back -= outflow[i];
    }
    if (!(out > back)) return;
    for (let i = 0; i < outflow.length; i++) if (outflow[i] > 0) outflow[i] *= back / out;
  }

  #setSpeed(i: number, speed: number): void {
    const { target } = this.mode;
    const near = Math.abs(speed - target[i]) < settled ? target[i] : speed;
    const used = near < standing || Number.isNaN(near) ? 0 : near;
    if (used === this.#speedSet[i]) return;
    this.#speedSet[i] = used;
    const link = this.#pumpLinks[i];
    const before = this.#net.pumps[link];
    if (before) this.#net.pumps[link] = { ...before, pump: pumpAtSpeed(this.circuit.pumps[i].curves, used) };
  }
}

/** The circuit with a hole beside each check valve, or with its flaps gone.
 *  Source: orifice law, coefficient 0.61 on the leaking share of the section. */
function leakingNetwork(circuit: TransientCircuit, share: number): TransientCircuit["network"] {
  const { network, checkValves } = circuit;
  if (!(share > 0) || share >= 1) return network;
  const holes = network.links.flatMap((link) => {
    if (!checkValves.includes(link.id)) return [];
    const diameter = link.kind === "pipe" || link.kind === "valve" ? link.diameter : 0.03;
    const section = (Math.PI / 4) * diameter ** 2;
    const coefficient = 1 / (2 * standardGravity * (0.61 * share * section) ** 2);
    return [{ id: `${link.id} leak`, kind: "device" as const, from: link.from, to: link.to, coefficient }];
  });
  return { ...network, links: [...network.links, ...holes] };
}
