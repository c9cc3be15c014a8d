import {
  type CompiledNetwork,
  compileNetwork,
  type NetworkState,
  newNetworkState,
  overflowWeirHead,
  solveCompiled,
} from "@tidewright/engine";
import { endHead, levelOf } from "./levels.ts";
import type { PreparedLoop, PreparedSystem } from "./prepare.ts";
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
  readonly #net: CompiledNetwork;
  readonly #state: NetworkState;
  readonly #prepared: PreparedLoop;
  readonly #system: PreparedSystem;
  readonly #solved: SolvedSystem;
  readonly #otherWeirFlow: number;
  readonly #inlet: number;
  #warm = false;
  #share = 1;

  /** system PreparedSystem   prepared one of its loops   solved the system's running state, for the levels of all else */
  constructor(system: PreparedSystem, prepared: PreparedLoop, solved: SolvedSystem) {
    const { model } = prepared.loop;
    const links = model.links.filter((link) => link.kind !== "pump");
    const ends = new Set(links.flatMap((link) => [link.from, link.to]));
    const nodes = model.nodes.filter((node) => node.kind === "fixedHead" || ends.has(node.id));
    this.#net = compileNetwork({ ...model, nodes, links });
    this.#state = newNetworkState(this.#net);
    this.#prepared = prepared;
    this.#system = system;
    this.#solved = solved;
    this.#inlet = this.#net.nodeIndex.get("suction") ?? -1;
    this.#otherWeirFlow = solved.weirFlow - this.#toDisplay(prepared.state, prepared.net);
    this.#setHeads(solved.levels.get("display") ?? 0);
  }

  /** Exact head and split at a pump flow [m3/s]; the display's level follows the flow that reaches it. */
  at(flow: number): SystemPoint {
    const net = this.#net;
    net.demand[net.nodeIndex.get("discharge") as number] = -flow;
    if (this.#inlet >= 0) net.demand[this.#inlet] = flow;
    const { geometry } = this.#system;
    let toDisplay = flow * this.#share;
    for (let round = 0; round < 12; round++) {
      const weirHead = overflowWeirHead(geometry.weir, Math.max(0, this.#otherWeirFlow + toDisplay));
      this.#setHeads(Math.max(geometry.weirCrest, this.#solved.drains.box.level) + weirHead);
      solveCompiled(net, this.#state, { warm: this.#warm });
      this.#warm = true;
      const next = this.#toDisplay(this.#state, net);
      const moved = Math.abs(next - toDisplay);
      toDisplay = next;
      if (moved <= 1e-9 * Math.max(flow, 1e-6)) break;
    }
    if (flow > 0) this.#share = toDisplay / flow;
    const inletHead =
      this.#inlet >= 0 ? this.#state.head[this.#inlet] : net.head[net.nodeIndex.get("source") as number];
    return {
      head: (this.#state.head[net.nodeIndex.get("discharge") as number] ?? 0) - (inletHead ?? 0),
      flowToDisplay: toDisplay,
    };
  }

  #toDisplay(state: NetworkState, net: CompiledNetwork): number {
    let flow = 0;
    for (const outlet of this.#prepared.loop.outlets)
      if (outlet.place === "display") flow += state.flow[net.linkIndex.get(outlet.link) as number] ?? 0;
    return flow;
  }

  #setHeads(displayLevel: number): void {
    const { loop } = this.#prepared;
    const level = (place: string) => (place === "display" ? displayLevel : levelOf(this.#solved.levels, place));
    this.#net.head[this.#net.nodeIndex.get("source") as number] = level(loop.sourcePlace);
    for (const outlet of loop.outlets)
      this.#net.head[this.#net.nodeIndex.get(outlet.node) as number] = endHead(level(outlet.place), outlet.depth);
  }
}
