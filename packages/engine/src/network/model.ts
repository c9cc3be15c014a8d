import type { PumpAtSpeed } from "../pumps/index.ts";
import type { MonotoneCubic } from "../pumps/monotoneCubic.ts";

/** The liquid of a network: density [kg/m3] and kinematic viscosity [m2/s]. */
export interface Liquid {
  readonly density: number;
  readonly kinematicViscosity: number;
}

/** A place whose head is known [m], such as a tank's surface. */
export interface FixedHeadNode {
  readonly id: string;
  readonly kind: "fixedHead";
  readonly head: number;
  readonly elevation?: number;
}

/** A point where links meet; water drawn off there is its demand [m3/s], elevation in m. */
export interface JunctionNode {
  readonly id: string;
  readonly kind: "junction";
  readonly elevation: number;
  readonly demand?: number;
}

/** Any node: a known head or a junction. */
export type NetworkNode = FixedHeadNode | JunctionNode;

interface LinkEnds {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  /** Lets water through only from -> to. */
  readonly checkValve?: boolean;
}

/** A pipe: length, diameter (inner) and roughness in m; minorLoss is the sum of K on its own velocity head,
 *  laminarLoss the sum of K1 in K = K1/Re + K. */
export interface PipeLink extends LinkEnds {
  readonly kind: "pipe";
  readonly length: number;
  readonly diameter: number;
  readonly roughness: number;
  readonly minorLoss: number;
  readonly laminarLoss?: number;
}

/** A pump at its speed. Water does not run back through it unless `reverseFlow` or `reverseCoefficient` is given.
 *  At speed 0 it lifts nothing and loses k Q^2 forward: k of its law H = H0 - k Q^2, where the curve has another form
 *  `reverseCoefficient`, or where there is none the square through the curve's ends. */
export interface PumpLink extends LinkEnds {
  readonly kind: "pump";
  readonly pump: PumpAtSpeed;
  readonly reverseFlow?: boolean;
  /** Lets water run back, against H(0) + reverseCoefficient Q^2 at its speed [s2/m5]: a stopped pump is then a resistance. */
  readonly reverseCoefficient?: number;
}

/** A local loss h = (laminarLoss/Re + lossCoefficient) V^2/2g on `diameter` [m]; Infinity is a closed valve. */
export interface ValveLink extends LinkEnds {
  readonly kind: "valve";
  readonly diameter: number;
  readonly lossCoefficient: number;
  readonly laminarLoss?: number;
}

/** A device with its own pressure drop: head loss [m] over flow [m3/s], a rising curve through zero, mirrored for
 *  backward flow; or a single square law with `coefficient` [s2/m5] where `curve` is absent. Beyond the curve's last point the
 *  coefficient adds a square law of what is beyond. */
export interface DeviceLink extends LinkEnds {
  readonly kind: "device";
  readonly coefficient: number;
  readonly curve?: MonotoneCubic;
}

/** Any link between two nodes. */
export type NetworkLink = PipeLink | PumpLink | ValveLink | DeviceLink;

/** A tee whose losses depend on how the flow splits. The two collinear legs and the branch, by link id; all three meet at `node`. */
export interface TeeJunction {
  readonly node: string;
  readonly run: readonly [string, string];
  readonly branch: string;
  /** Bores of the collinear way and of the branch [m]. */
  readonly runDiameter: number;
  readonly branchDiameter: number;
}

/** A network in SI units: what the solver takes. */
export interface NetworkModel {
  readonly liquid: Liquid;
  readonly nodes: readonly NetworkNode[];
  readonly links: readonly NetworkLink[];
  readonly tees?: readonly TeeJunction[];
}
