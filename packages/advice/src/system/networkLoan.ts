import {
  type CompiledNetwork,
  compileNetwork,
  type NetworkLink,
  type NetworkModel,
  type NetworkState,
  newNetworkState,
  setLink,
} from "@tidewright/engine";

/** A compiled network and the work space to solve it in. */
export interface WorkNetwork {
  readonly net: CompiledNetwork;
  readonly state: NetworkState;
  /** The same network with its tees left out, where it has any: what a cold solution begins with. */
  readonly start: CompiledNetwork | undefined;
}

/** How many idle networks are kept; what comes back to a full shelf is dropped. */
const shelfSize = 24;
const common: WorkNetwork[] = [];

/** Networks for the time of one assessment. Compiling costs more than solving, and one edit seldom changes how the links hang
 *  together: a network of the same nodes, links and tees is taken from the shelf and given the new coefficients. What is lent
 *  has left the shelf until it is given back, so no two ever write into one network; cold solutions start from nothing that the
 *  one before has left. */
export class NetworkLoan {
  readonly #lent: WorkNetwork[] = [];
  readonly #shelf: WorkNetwork[];

  /** shelf where idle networks are found and put back; the common one where nothing is said */
  constructor(shelf: WorkNetwork[] = common) {
    this.#shelf = shelf;
  }

  /** Returns a network for a model with every coefficient, head and demand as the model says.
   *  model NetworkModel   -> WorkNetwork, the borrower's until `giveBack`. Throws: as `compileNetwork`. */
  take(model: NetworkModel): WorkNetwork {
    const shelf = this.#shelf;
    let work: WorkNetwork | undefined;
    for (let i = shelf.length - 1; i >= 0 && !work; i--) {
      const kept = shelf[i] as WorkNetwork;
      if (!fits(kept.net.model, model)) continue;
      shelf.splice(i, 1);
      renew(kept.net, model);
      if (kept.start) renew(kept.start, { ...model, tees: [] });
      work = kept;
    }
    if (!work) {
      const net = compileNetwork(model);
      const start = model.tees && model.tees.length > 0 ? compileNetwork({ ...model, tees: [] }) : undefined;
      work = { net, state: newNetworkState(net), start };
    }
    this.#lent.push(work);
    return work;
  }

  /** Puts everything back on the shelf; the borrower keeps nothing of it. */
  giveBack(): void {
    const shelf = this.#shelf;
    for (const work of this.#lent) {
      // The longest unused makes room.
      if (shelf.length >= shelfSize) shelf.shift();
      shelf.push(work);
    }
    this.#lent.length = 0;
  }
}

/** Whether a compiled model serves another: same topology and tees, and numbers that `compileNetwork` would not refuse. */
function fits(old: NetworkModel, model: NetworkModel): boolean {
  const { nodes, links } = model;
  if (nodes.length !== old.nodes.length || links.length !== old.links.length) return false;
  for (let i = 0; i < links.length; i++) {
    const a = old.links[i] as NetworkLink;
    const b = links[i] as NetworkLink;
    if (a.kind !== b.kind || a.id !== b.id || a.from !== b.from || a.to !== b.to || !isSound(b)) return false;
  }
  for (let i = 0; i < nodes.length; i++) {
    const a = old.nodes[i] as NetworkModel["nodes"][number];
    const b = nodes[i] as NetworkModel["nodes"][number];
    if (a.kind !== b.kind || a.id !== b.id) return false;
    if (!Number.isFinite(b.kind === "fixedHead" ? b.head : b.elevation + (b.demand ?? 0))) return false;
  }
  const tees = model.tees ?? [];
  const before = old.tees ?? [];
  if (tees.length !== before.length) return false;
  for (let i = 0; i < tees.length; i++) {
    const a = before[i] as (typeof tees)[number];
    const b = tees[i] as (typeof tees)[number];
    if (a.node !== b.node || a.branch !== b.branch || a.run[0] !== b.run[0] || a.run[1] !== b.run[1]) return false;
    if (a.runDiameter !== b.runDiameter || a.branchDiameter !== b.branchDiameter) return false;
  }
  return true;
}

function isSound(link: NetworkLink): boolean {
  switch (link.kind) {
    case "pipe":
      return link.diameter > 0 && link.length >= 0 && link.roughness >= 0 && link.minorLoss >= 0;
    case "valve":
      return link.diameter > 0 && link.lossCoefficient >= 0;
    case "device":
      return link.curve !== undefined || link.coefficient >= 0;
    case "pump":
      return true;
  }
}

function renew(net: CompiledNetwork, model: NetworkModel): void {
  (net as { model: NetworkModel }).model = model;
  for (let i = 0; i < model.links.length; i++) setLink(net, i, model.links[i] as NetworkLink);
  for (let n = 0; n < net.nodeCount; n++) {
    const node = model.nodes[net.nodeOrder[n] as number] as NetworkModel["nodes"][number];
    if (node.kind === "fixedHead") net.head[n] = node.head;
    else {
      net.head[n] = 0;
      net.demand[n] = node.demand ?? 0;
    }
  }
}
