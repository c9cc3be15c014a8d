import type { NetworkModel } from "./model.ts";

/** Something that keeps a network from having an answer. `ids` names every element concerned. */
export interface NetworkProblem {
  readonly kind:
    | "duplicate-node"
    | "duplicate-link"
    | "unknown-node"
    | "self-link"
    | "no-fixed-head"
    | "not-finite"
    | "not-positive"
    | "unknown-tee-link";
  readonly ids: readonly string[];
  readonly message: string;
}

/** Returns everything that keeps a network from being solved, complete and in order; empty for a sound one.
 *  model NetworkModel   -> NetworkProblem[]
 *  Findings: none. Throws: never.
 *  Valid: any model.
 *  Source: a flow network has one solution when every part holds a known head; L. A. Rossman et al., EPANET 2.2 Users
 *  Manual (EPA/600/R-20/133), error 233 and its neighbours.
 *  Example: networkProblems({ liquid: { density: 1000, kinematicViscosity: 1e-6 }, nodes: [], links: [{ id: "p", kind: "valve", from: "a", to: "b", diameter: 0.02, lossCoefficient: 1 }] }).length  ->  2 */
export function networkProblems(model: NetworkModel): NetworkProblem[] {
  const problems: NetworkProblem[] = [];
  const add = (kind: NetworkProblem["kind"], ids: readonly string[], message: string) =>
    problems.push({ kind, ids, message });
  const nodes = new Map<string, number>();
  model.nodes.forEach((node, i) => {
    if (nodes.has(node.id)) add("duplicate-node", [node.id], `node "${node.id}" is given more than once`);
    nodes.set(node.id, i);
    const numbers = node.kind === "fixedHead" ? [node.head] : [node.elevation, node.demand ?? 0];
    if (!numbers.every(Number.isFinite))
      add("not-finite", [node.id], `node "${node.id}" holds a value that is not a number`);
  });
  const links = new Set<string>();
  for (const link of model.links) {
    if (links.has(link.id)) add("duplicate-link", [link.id], `link "${link.id}" is given more than once`);
    links.add(link.id);
    for (const end of [link.from, link.to])
      if (!nodes.has(end))
        add("unknown-node", [link.id, end], `link "${link.id}" ends at "${end}", which is not a node`);
    if (link.from === link.to)
      add("self-link", [link.id], `link "${link.id}" begins and ends at the same node "${link.from}"`);
    if ((link.kind === "pipe" || link.kind === "valve") && !(link.diameter > 0))
      add("not-positive", [link.id], `link "${link.id}" has diameter ${link.diameter}; it must be greater than zero`);
    if (link.kind === "pipe" && !(link.length >= 0 && link.roughness >= 0 && link.minorLoss >= 0))
      add("not-finite", [link.id], `pipe "${link.id}" needs a length, roughness and minor loss of zero or more`);
    if (link.kind === "valve" && !(link.lossCoefficient >= 0))
      add("not-finite", [link.id], `valve "${link.id}" needs a loss coefficient of zero or more`);
    if (link.kind === "pump" && !(link.reverseCoefficient === undefined || isResistance(link.reverseCoefficient)))
      add(
        "not-finite",
        [link.id],
        `pump "${link.id}" has reverseCoefficient ${link.reverseCoefficient}; it must be a number of zero or more`,
      );
    if (link.kind === "device" && !link.curve && !(link.coefficient >= 0))
      add("not-finite", [link.id], `device "${link.id}" needs a loss coefficient of zero or more`);
  }
  for (const tee of model.tees ?? [])
    for (const id of [...tee.run, tee.branch])
      if (!links.has(id))
        add("unknown-tee-link", [tee.node, id], `the tee at "${tee.node}" names link "${id}", which does not exist`);
  for (const group of partsWithoutHead(model, nodes))
    add("no-fixed-head", group, `no fixed head anywhere in the part with ${group.map((id) => `"${id}"`).join(", ")}`);
  return problems;
}

function isResistance(coefficient: number): boolean {
  return Number.isFinite(coefficient) && coefficient >= 0;
}

/** Connected parts that hold no fixed head, each as its node ids. */
function partsWithoutHead(model: NetworkModel, nodes: ReadonlyMap<string, number>): string[][] {
  const parent = model.nodes.map((_, i) => i);
  const root = (i: number): number => {
    let at = i;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]];
      at = parent[at];
    }
    return at;
  };
  for (const link of model.links) {
    const from = nodes.get(link.from);
    const to = nodes.get(link.to);
    if (from !== undefined && to !== undefined) parent[root(from)] = root(to);
  }
  const fixed = new Set<number>();
  model.nodes.forEach((node, i) => {
    if (node.kind === "fixedHead") fixed.add(root(i));
  });
  const groups = new Map<number, string[]>();
  model.nodes.forEach((node, i) => {
    const at = root(i);
    if (!fixed.has(at)) groups.set(at, [...(groups.get(at) ?? []), node.id]);
  });
  return [...groups.values()];
}
