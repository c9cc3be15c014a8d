import type { TransientModel } from "./model.ts";

/** What is either so or not so: everything about a system that changes at a moment and not by flowing. */
export interface Modes {
  /** Drain runs full. */
  readonly primed: boolean[];
  /** Tubes of a hang-on overflow are full of water; once lost, only a hand or a pump of its own fills them again. */
  readonly tubesFull: boolean[];
  readonly blockRate: Float64Array;
  readonly blockTarget: Float64Array;
  readonly circuits: CircuitMode[];
  topOff: "auto" | "off" | "open";
  topOffRuns: boolean;
  topOffEmpty: boolean;
}

/** What is so in a circuit. */
export interface CircuitMode {
  /** Speed that each pump is told to run at [-]. */
  readonly target: number[];
  /** For each outlet: air has got in. */
  readonly uncovered: boolean[];
  /** For each outlet: its siphon-break hole is clear. */
  readonly breakWorks: boolean[];
  /** Nothing runs up to the display. */
  idle: boolean;
  /** The line has taken in air and stands or falls as a column. */
  aired: boolean;
  /** The intake lies in the air, or has not come to lie deep enough since. */
  bare: boolean;
  /** Its pumps are off because they have drawn air. */
  dry: boolean;
  /** It came to lie there while no pump ran: told as drawing air when one is switched on. */
  dryUntold: boolean;
  /** Times it has drawn air. */
  timesDry: number;
  /** A pump that hunts is left off. */
  givenUp: boolean;
  /** Share of its check valves' section that lets water back. */
  leak: number;
}

/** A pump that has drawn air this often stays off: its owner, or its own protection, has stopped it. */
export const dryStarts = 3;
/** While a top-off brings it water it is given this many times: what it lifts may be what wets the floor, and nobody may be there. */
export const fedStarts = 100;

/** Returns what is so at the start. Source: the model. */
export function startingModes(model: TransientModel): Modes {
  return {
    primed: model.drains.map((drain) => drain.primed),
    tubesFull: (model.siphons ?? []).map(
      ({ from, to, mouth }) =>
        Math.min(model.vessels[from]?.startLevel ?? 0, model.vessels[to]?.startLevel ?? 0) > mouth,
    ),
    blockRate: new Float64Array(model.drains.length),
    blockTarget: new Float64Array(model.drains.length),
    circuits: model.circuits.map((circuit) => ({
      target: circuit.pumps.map((pump) => pump.speed),
      uncovered: circuit.outlets.map(
        (outlet) => (model.vessels[outlet.vessel]?.startLevel ?? 0) < outlet.breakElevation + 1e-6,
      ),
      breakWorks: circuit.outlets.map(() => true),
      idle: false,
      aired: false,
      bare: false,
      dry: false,
      dryUntold: false,
      timesDry: 0,
      givenUp: false,
      leak: 0,
    })),
    topOff: "auto",
    topOffRuns: false,
    topOffEmpty: false,
  };
}
