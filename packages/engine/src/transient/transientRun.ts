import type { TransientEvent } from "./transitions.ts";

/** Extremes of a vessel's level over a run [m], and when they were reached [s]. */
export interface LevelRange {
  readonly lowest: number;
  readonly lowestAt: number;
  readonly highest: number;
  readonly highestAt: number;
}

/** What was recorded along a run: one row a moment, close enough that straight lines between them are true to `recordPrecision`. */
export interface TransientRecord {
  /** Moments [s], rising; a moment at which something changed at once stands twice. */
  readonly times: readonly number[];
  /** For each vessel its level [m] at every moment. */
  readonly levels: readonly (readonly number[])[];
  /** Flow over each weir, into and out of each drain, and out of each outlet of each circuit [m3/s]. */
  readonly weirFlows: readonly (readonly number[])[];
  readonly drainIntakes: readonly (readonly number[])[];
  readonly drainFlows: readonly (readonly number[])[];
  readonly outletFlows: readonly (readonly (readonly number[])[])[];
  /** Share of each drain and of each circuit's line that holds water [-]. */
  readonly drainFill: readonly (readonly number[])[];
  readonly circuitFill: readonly (readonly number[])[];
}

/** Where water went that left the vessels [m3]. */
export interface Bookings {
  /** Over each vessel's rim onto the floor. */
  readonly spilled: readonly number[];
  readonly evaporated: number;
}

/** How a run ended: at its time; out of steps; or stuck where no step was small enough. */
export type TransientStatus = "finished" | "stepBudget" | "stuck";

/** A simulated run. */
export interface TransientRun {
  readonly status: TransientStatus;
  /** Time reached [s]. */
  readonly reached: number;
  readonly events: readonly TransientEvent[];
  readonly ranges: readonly LevelRange[];
  readonly booked: Bookings;
  /** Greatest change of the sum of all volumes over that sum [-]. */
  readonly volumeError: number;
  readonly finalLevels: readonly number[];
  /** Greatest flow that each drain took in [m3/s], as seen at the ends of steps. */
  readonly drainPeak: readonly number[];
  readonly steps: number;
  readonly evaluations: number;
  readonly record?: TransientRecord;
}
