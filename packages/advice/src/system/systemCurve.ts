import { overflowWeirHead } from "@tidewright/engine";
import { endHead, levelOf, outletFlowTo } from "./levels.ts";
import type { WorkNetwork } from "./networkLoan.ts";
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
  /** Nodes of the network: the pumps' inlet (the source where they hang in it), their discharge, and those that the display's
   *  level moves, with what it adds to each. */
  readonly #inlet: number;
  readonly #suction: boolean;
  readonly #discharge: number;
  readonly #displayNodes: number[] = [];
  readonly #displayLifts: number[] = [];
  readonly #displayLinks: number[] = [];
  #warm = false;
  #share = 1;

  /** system PreparedSystem   prepared one of its loops   solved the system's running state, for the levels of all else */
  constructor(system: PreparedSystem, prepared: PreparedLoop, solved: SolvedSystem) {
    const { model, outlets, sourcePlace } = prepared.loop;
    const links = model.links.filter((link) => link.kind !== "pump");
    const ends = new Set<string>();
    for (const link of links) ends.add(link.from).add(link.to);
    const nodes = model.nodes.filter((node) => node.kind === "fixedHead" || ends.has(node.id));
    this.#work = system.networks.take({ ...model, nodes, links });
    const { net } = this.#work;
    this.#system = system;
    this.#solved = solved;
    const source = net.nodeIndex.get("source") as number;
    const suction = net.nodeIndex.get("suction");
    this.#suction = suction !== undefined;
    this.#inlet = suction ?? source;
    this.#discharge = net.nodeIndex.get("discharge") as number;
    this.#otherWeirFlow = solved.weirFlow - outletFlowTo(prepared, "display");
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
    let toDisplay = flow * this.#share;
    for (let round = 0; round < 12; round++) {
      this.#setDisplay(crest + overflowWeirHead(geometry.weir, Math.max(0, this.#otherWeirFlow + toDisplay)));
      solveNear(this.#work, this.#warm);
      this.#warm = true;
      let next = 0;
      for (const link of this.#displayLinks) next += state.flow[link] as number;
      const moved = Math.abs(next - toDisplay);
      toDisplay = next;
      if (moved <= 1e-9 * Math.max(flow, 1e-6)) break;
    }
    if (flow > 0) this.#share = toDisplay / flow;
    const inletHead = (this.#suction ? state.head : net.head)[this.#inlet] as number;
    return { head: (state.head[this.#discharge] as number) - inletHead, flowToDisplay: toDisplay };
  }

  #setDisplay(level: number): void {
    for (let i = 0; i < this.#displayNodes.length; i++)
      this.#work.net.head[this.#displayNodes[i] as number] = level + (this.#displayLifts[i] as number);
  }
}
