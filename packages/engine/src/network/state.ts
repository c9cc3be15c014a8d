import type { CompiledNetwork } from "./compile.ts";
import { type Mixing, newMixing } from "./mixing.ts";
import type { ConvergenceRecord } from "./record.ts";
import type { SpanningForest } from "./spanningForest.ts";

/** Flows, heads and work space of one network; kept between solutions so that nothing is allocated in a drag. */
export interface NetworkState {
  /** Flow of each link [m3/s], positive from -> to. */
  readonly flow: Float64Array;
  /** Head of each node [m], in solver order; known heads are copied in. */
  readonly head: Float64Array;
  /** Head loss [m] and its slope [s/m2] of each link, with those of its tees. */
  readonly loss: Float64Array;
  readonly slope: Float64Array;
  /** 1 where a link is shut: a check valve or pump against the flow; 2 where it is a closed valve. */
  readonly shut: Uint8Array;
  /** 1/sqrt(f) of each pipe. */
  readonly x: Float64Array;
  /** One over the slope [m2/s], none in a shut link; energy left over dH - h [m]; half of d2h/dQ2 [s2/m5]. */
  readonly conductance: Float64Array;
  readonly left: Float64Array;
  readonly curvature: Float64Array;
  /** Change of each flow in the step [m3/s], how far its loss runs from its tangent over it [m], and the flow before [m3/s]. */
  readonly change: Float64Array;
  readonly bent: Float64Array;
  readonly trial: Float64Array;
  /** Tee losses of each link [m] and their own slopes [s/m2]; the same after the step. Empty where there are no tees. */
  readonly teeLoss: Float64Array;
  readonly teeSlope: Float64Array;
  readonly nextTeeLoss: Float64Array;
  readonly nextTeeSlope: Float64Array;
  /** The nodal equations: conductances and their elimination; right-hand side, then head changes [m], zero at known heads. */
  readonly values: Float64Array;
  readonly inverse: Float64Array;
  readonly rhs: Float64Array;
  readonly more: Float64Array;
  /** Junction heads before a step and its change of them [m], where a step may have to be taken back. */
  readonly headBefore: Float64Array;
  readonly headChange: Float64Array;
  readonly surplus: Float64Array;
  readonly mixing: Mixing | undefined;
  readonly history: Float64Array;
  forest: SpanningForest;
  /** How fast the content falls at the start of the step, and how fast it rises at its end [m4/s]. */
  descent: number;
  contentSlope: number;
  iterations: number;
  shortened: number;
  energyResidual: number;
  worstLink: number;
  headScale: number;
  /** Largest of headScale and every loss [m]. */
  lossScale: number;
  status: ConvergenceRecord["status"];
}

const none = new Float64Array(0);

/** Returns work space for a compiled network, with the flows a cold start begins from.
 *  net CompiledNetwork   -> NetworkState
 *  Findings: none. Throws: never.
 *  Valid: for this network only.
 *  Source: own construction.
 *  Example: newNetworkState(compileNetwork({ liquid: { density: 1000, kinematicViscosity: 1e-6 }, nodes: [{ id: "a", kind: "fixedHead", head: 1 }, { id: "b", kind: "junction", elevation: 0 }], links: [{ id: "p", kind: "valve", from: "a", to: "b", diameter: 0.02, lossCoefficient: 1 }] })).flow.length  ->  1 */
export function newNetworkState(net: CompiledNetwork): NetworkState {
  const perLink = () => new Float64Array(net.linkCount);
  const tees = net.tees.count > 0;
  const perTeeLink = () => (tees ? perLink() : none);
  const perNode = () => new Float64Array(net.nodeCount);
  return {
    flow: perLink(),
    head: perNode(),
    loss: perLink(),
    slope: perLink(),
    shut: new Uint8Array(net.linkCount),
    x: perLink(),
    conductance: perLink(),
    left: perLink(),
    curvature: perLink(),
    change: perLink(),
    bent: perLink(),
    trial: perLink(),
    teeLoss: perTeeLink(),
    teeSlope: perTeeLink(),
    nextTeeLoss: perTeeLink(),
    nextTeeSlope: perTeeLink(),
    values: new Float64Array(net.plan.length),
    inverse: new Float64Array(net.junctionCount),
    rhs: perNode(),
    more: perNode(),
    headBefore: perNode(),
    headChange: perNode(),
    surplus: perNode(),
    mixing: tees ? newMixing(net.linkCount) : undefined,
    history: new Float64Array(256),
    forest: net.forest,
    descent: 0,
    contentSlope: 0,
    iterations: 0,
    shortened: 0,
    energyResidual: Number.POSITIVE_INFINITY,
    worstLink: -1,
    headScale: 1,
    lossScale: 1,
    status: "limit",
  };
}
