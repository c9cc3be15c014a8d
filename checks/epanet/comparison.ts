import { solveNetwork } from "@tidewright/engine";
import type { NetworkCase } from "./networks.ts";
import { solveWithEpanet } from "./solveWithEpanet.ts";

/** The worst differences between EPANET's answer and ours for one network. */
export interface NetworkComparison {
  readonly name: string;
  readonly links: number;
  /** Relative to the largest flow. */
  readonly flowDifference: number;
  /** In metres, over nodes that water reaches. */
  readonly headDifference: number;
  readonly flowTolerance: number;
  readonly headTolerance: number;
  readonly why: string;
  readonly status: string;
}

/** Solves a network twice, by EPANET and by our solver. */
export function compareWithEpanet({
  name,
  model,
  flowTolerance = 0.01,
  headTolerance = 0.02,
  why,
}: NetworkCase): NetworkComparison {
  const theirs = solveWithEpanet(model);
  const ours = solveNetwork(model);
  const scale = Math.max(...theirs.flows.map(Math.abs), 1e-5);
  const flowDifference = Math.max(...theirs.flows.map((flow, i) => Math.abs(flow - ours.flows[i]) / scale));
  const headDifference = Math.max(...theirs.heads.map((head, i) => Math.abs(head - ours.heads[i])));
  return {
    name,
    links: model.links.length,
    flowDifference,
    headDifference,
    flowTolerance,
    headTolerance,
    why,
    status: ours.status,
  };
}
