import type { NetworkLink, NetworkModel } from "@tidewright/engine";

/** Returns a network with some of its links alone, such as without its pumps: junctions where none of them ends are left out,
 *  as nothing would hold their heads; nodes of a known head stay.
 *  model NetworkModel   links those of it that stay   -> NetworkModel
 *  Findings: none. Throws: never.
 *  Valid: any model.
 *  Source: analytic. */
export function onlyLinks(model: NetworkModel, links: readonly NetworkLink[]): NetworkModel {
  const ends = new Set(links.flatMap(({ from, to }) => [from, to]));
  return { ...model, nodes: model.nodes.filter(({ kind, id }) => kind === "fixedHead" || ends.has(id)), links };
}
