import { overflowWeirHead } from "@tidewright/engine";
import { endHead, levelOf, otherFlowToDisplay } from "./levels.ts";
import type { WorkNetwork } from "./networkLoan.ts";
import { onlyLinks } from "./onlyLinks.ts";
import type { PreparedLoop, PreparedSystem } from "./prepare.ts";
import { solveNear } from "./solveNear.ts";
import type { SolvedSystem } from "./solveSystem.ts";

/** What a loop asks of its pumps at a flow. */
export interface SystemPoint {
  /** Head between the pumps' inlet and their discharge [m]. */
  readonly head: number;
  /** What of the flow reaches the display [m3/s]. */
  readonly flowToDisplay: number;
}

/** A loop seen from its pumps: the same network with the pumps taken out and their flow put in. */
export class SystemCurve {
  readonly #work: WorkNetwork;
  readonly #system: PreparedSystem;
  readonly #solved: SolvedSystem;
  readonly #otherWeirFlow: number;
  readonly #drawsOnDisplay: boolean;
  /** Nodes of the network: the pumps' inlet (the source where they hang in it), their discharge, and those that the display's
   *  level moves, with what it adds to each. */
  readonly #inlet: number;
  readonly #suction: boolean;
  readonly #discharge: number;
  readonly #displayNodes: number[] = [];
  readonly #displayLifts: number[] = [];
  readonly #displayLinks: number[] = [];
  #warm = false;
  /** The two points before, the later one second: pump flows, then flows to the display; 0 where there is none. */
  readonly #last: [number, number, number, number] = [0, 0, 0, 0];

  /** system PreparedSystem   prepared one of its loops   solved the system's running state, for the levels of all else */
  constructor(system: PreparedSystem, prepared: PreparedLoop, solved: SolvedSystem) {
    const { model, outlets, sourcePlace } = prepared.loop;
    const links = model.links.filter((link) => link.kind !== "pump");
    this.#work = system.networks.take(onlyLinks(model, links));
    const { net } = this.#work;
    this.#system = system;
    this.#solved = solved;
    const source = net.nodeIndex.get("source") as number;
    const suction = net.nodeIndex.get("suction");
    this.#suction = suction !== undefined;
    this.#inlet = suction ?? source;
    this.#discharge = net.nodeIndex.get("discharge") as number;
    this.#otherWeirFlow = otherFlowToDisplay(system.loops, prepared);
    this.#drawsOnDisplay = sourcePlace === "display";
    net.head[source] = levelOf(solved.levels, sourcePlace);
    if (sourcePlace === "display") this.#lift(source, 0);
    for (const outlet of outlets) {
      const node = net.nodeIndex.get(outlet.node) as number;
      net.head[node] = endHead(levelOf(solved.levels, outlet.place), outlet.depth);
      if (outlet.place !== "display") continue;
      this.#lift(node, endHead(0, outlet.depth));
      this.#displayLinks.push(net.linkIndex.get(outlet.link) as number);
    }
  }

  #lift(node: number, above: number): void {
    this.#displayNodes.push(node);
    this.#displayLifts.push(above);
  }

  /** Exact head and split at a pump flow [m3/s]; the display's level follows the flow that reaches it. */
  at(flow: number): SystemPoint {
    const { net, state } = this.#work;
    net.demand[this.#discharge] = -flow;
    if (this.#suction) net.demand[this.#inlet] = flow;
    const { geometry } = this.#system;
    const crest = Math.max(geometry.weirCrest, this.#solved.drains.box.level);
    // What a closed loop brings it has taken from there.
    const others = this.#drawsOnDisplay ? this.#otherWeirFlow - flow : this.#otherWeirFlow;
    let taken = this.#expected(flow);
    let given = taken;
    let takenBefore = Number.NaN;
    let apartBefore = Number.NaN;
    for (let round = 0; round < 12; round++) {
      this.#setDisplay(crest + overflowWeirHead(geometry.weir, Math.max(0, others + taken)));
      // The first round only tells the display's level.
      solveNear(this.#work, this.#warm, round === 0 ? 1e-6 : 1e-10);
      this.#warm = true;
      given = 0;
      for (const link of this.#displayLinks) given += state.flow[link] as number;
      const apart = given - taken;
      // A level that is wrong by so little moves the split by a hundredth of it, and the head by 1e-10 m.
      if (round > 0 && Math.abs(apart) <= 1e-8 * Math.max(flow, 1e-6)) break;
      const slope = (apart - apartBefore) / (taken - takenBefore);
      takenBefore = taken;
      apartBefore = apart;
      // What is given hardly changes with what is taken: the slope of their difference is near -1.
      taken = slope < -0.5 && slope > -2 ? taken - apart / slope : given;
    }
    this.#remember(flow, given);
    const inletHead = (this.#suction ? state.head : net.head)[this.#inlet] as number;
    return { head: (state.head[this.#discharge] as number) - inletHead, flowToDisplay: given };
  }

  /** What will reach the display, by the straight line through the last two points. */
  #expected(flow: number): number {
    const [flow0, flow1, display0, display1] = this.#last;
    if (!(flow1 > 0)) return flow;
    if (!(flow0 > 0) || flow0 === flow1) return (flow * display1) / flow1;
    return display1 + ((display1 - display0) * (flow - flow1)) / (flow1 - flow0);
  }

  #remember(flow: number, toDisplay: number): void {
    const last = this.#last;
    if (!Number.isFinite(toDisplay) || flow === last[1]) return;
    last[0] = last[1];
    last[2] = last[3];
    last[1] = flow;
    last[3] = toDisplay;
  }

  #setDisplay(level: number): void {
    for (let i = 0; i < this.#displayNodes.length; i++)
      this.#work.net.head[this.#displayNodes[i] as number] = level + (this.#displayLifts[i] as number);
  }
}
