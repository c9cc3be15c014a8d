import type { NetworkModel } from "../network/index.ts";
import type { DrainKind, DrainLine, DrainWater, OverflowWeir, SiphonTubes } from "../overflow/index.ts";
import type { SpeedCurve } from "../pumps/index.ts";

/** A vessel with upright walls. All elevations share one datum [m]. */
export interface TransientVessel {
  readonly id: string;
  readonly floor: number;
  /** Free surface [m2], above 0. */
  readonly area: number;
  /** Edge over which it spills [m]; Infinity where it cannot. */
  readonly rim: number;
  /** Length of that edge [m]. */
  readonly rimLength: number;
  /** Vessel that takes what spills; the room's floor where absent. */
  readonly spillsInto?: number;
  readonly startLevel: number;
}

/** A crest between two vessels: display to box, or a baffle of the sump. Water runs either way. */
export interface TransientWeir {
  readonly id: string;
  readonly from: number;
  readonly to: number;
  readonly weir: OverflowWeir;
  /** Elevation of the crest [m]. */
  readonly crest: number;
}

/** The siphon of a hang-on overflow: tubes between two vessels, full for as long as both their ends lie under water. */
export interface TransientSiphon {
  readonly id: string;
  readonly from: number;
  readonly to: number;
  readonly tubes: SiphonTubes;
  /** Lower ends in both vessels [m]. */
  readonly mouth: number;
}

/** A gravity drain. `line.outletElevation` is not read: it follows from the level below and `endElevation`. */
export interface TransientDrain {
  readonly id: string;
  readonly from: number;
  readonly to: number;
  readonly kind: DrainKind;
  readonly line: DrainLine;
  /** Elevation of the pipe's end [m]; under water the surface counts. */
  readonly endElevation: number;
  /** Water that the pipe holds when full [m3]. */
  readonly content: number;
  /** A siphon that runs full at the start. */
  readonly primed: boolean;
}

/** A pump of a circuit: its link, its curves, its speed at the start and what it lets back when it stands [s2/m5]. */
export interface TransientPump {
  readonly link: string;
  readonly curves: readonly SpeedCurve[];
  readonly speed: number;
  readonly reverseCoefficient: number;
}

/** Where a circuit ends: its known-head node, vessel, the height of the opening and the height at which air gets in
 *  [m]: a siphon-break hole, or the opening itself. */
export interface TransientOutlet {
  readonly id: string;
  readonly node: string;
  readonly vessel: number;
  readonly elevation: number;
  readonly breakElevation: number;
}

/** A pumped circuit between vessels. */
export interface TransientCircuit {
  readonly id: string;
  readonly network: NetworkModel;
  readonly sourceNode: string;
  readonly source: number;
  /** Level below which the intake draws air [m]. */
  readonly intakeElevation: number;
  readonly outlets: readonly TransientOutlet[];
  /** Vessel that the line rises to and can siphon back from; undefined where no siphon can run. */
  readonly upper?: number;
  readonly pumps: readonly TransientPump[];
  /** Water held by the line between intake and upper outlets [m3]. */
  readonly content: number;
  /** Links with a check valve. */
  readonly checkValves: readonly string[];
}

/** Fresh water let in from a reservoir: between two levels of a vessel when left to itself. */
export interface TransientTopOff {
  readonly reservoir: number;
  readonly to: number;
  /** Flow while it runs [m3/s]. */
  readonly flow: number;
  readonly onLevel: number;
  readonly offLevel: number;
}

/** Every volume of a system and every way between them, at rest in its running state. SI throughout. */
export interface TransientModel {
  readonly water: DrainWater;
  readonly vessels: readonly TransientVessel[];
  readonly weirs: readonly TransientWeir[];
  /** None where absent. */
  readonly siphons?: readonly TransientSiphon[];
  readonly drains: readonly TransientDrain[];
  readonly circuits: readonly TransientCircuit[];
  readonly topOff?: TransientTopOff;
  /** Fresh water lost by vessels to the air [m3/s]. */
  readonly evaporation: readonly { readonly vessel: number; readonly flow: number }[];
  /** Time constant of pumps that start or run down [s]. */
  readonly pumpTimeConstant: number;
}

/** What can happen to a system at a moment. Indices are those of the model. */
export type TransientAction =
  | { readonly kind: "pumpSpeed"; readonly circuit: number; readonly pump: number; readonly speed: number }
  | {
      readonly kind: "drainBlocked";
      readonly drain: number;
      /** Share of its section that is closed, 0 to 1. */
      readonly share: number;
      /** Time over which it comes about [s]; at once where absent. */
      readonly over?: number;
    }
  | {
      readonly kind: "checkValves";
      readonly circuit: number;
      /** Share of the section left open backward: 0 holds, 1 stands open. */
      readonly leak: number;
    }
  | { readonly kind: "siphonBreak"; readonly circuit: number; readonly outlet: number; readonly works: boolean }
  /** Air has got into the tubes: nothing runs through them any more. */
  | { readonly kind: "siphonAir"; readonly siphon: number }
  | { readonly kind: "topOff"; readonly mode: "auto" | "off" | "open" };

/** An action and when it happens [s]. */
export interface TimedAction {
  readonly at: number;
  readonly action: TransientAction;
}
