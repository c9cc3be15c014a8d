import type { TransientEventCode } from "@tidewright/engine";
import type { Scenario } from "./scenario.ts";

/** How a scenario ends: "wet" water on the floor; "dry" a pump draws air; "tight" nothing happens, by less than the margin kept for
 *  waves and the hand that set the level; "safe"; "unsolved" the simulation did not reach its end. Worst first. */
export const verdicts = ["wet", "unsolved", "dry", "tight", "safe"] as const;
export type Verdict = (typeof verdicts)[number];

/** A vessel through a scenario. Elevations [m] above the room's floor. */
export interface VesselTrack {
  /** "display", "overflowBox", "sump.<chamber>" or "topOff". */
  readonly place: string;
  readonly path: string;
  readonly floor: number;
  /** Edge that it spills over; Infinity in SI is written null in JSON, so an absent rim means it has none. */
  readonly rim?: number;
  readonly area: number;
  readonly start: number;
  readonly end: number;
  readonly highest: number;
  readonly highestAt: number;
  readonly lowest: number;
  readonly lowestAt: number;
  /** rim - highest [m]; negative is over the rim. */
  readonly margin?: number;
  /** Water that went over its rim onto the floor [m3]. */
  readonly spilled: number;
}

/** Something that happened in a scenario. */
export interface WhatIfEvent {
  /** Time [s]. */
  readonly t: number;
  readonly code: TransientEventCode;
  /** JSON Pointer of the part in question; "" for an action on all. */
  readonly path: string;
  /** Name of the part, as the design has it. */
  readonly name: string;
  /** Index in `scenario.events`, where code is "action". */
  readonly action?: number;
}

/** A scenario drawn out over time: every list has one entry a moment. */
export interface Film {
  /** Moments [s], rising; a moment at which something changed at once stands twice. Straight lines in between are good to 0.2 mm. */
  readonly times: readonly number[];
  /** Level [m above room floor] of each vessel, in the order of `WhatIf.vessels`. */
  readonly levels: readonly (readonly number[])[];
  /** Flow over the display's weir into the box [m3/s]. */
  readonly weirFlow: readonly number[];
  /** Flow into each drain of the design and share of it that holds water. */
  readonly drainFlow: readonly (readonly number[])[];
  readonly drainFill: readonly (readonly number[])[];
  /** For each loop of the design, flow out of each of its outlets (negative runs back); a loop that moves no water between vessels
   *  is left out (empty list). */
  readonly outletFlow: readonly (readonly (readonly number[])[])[];
  /** Share of each loop's line that holds water; empty for loops left out. */
  readonly lineFill: readonly (readonly number[])[];
}

/** What a scenario does to a design. */
export interface WhatIf {
  readonly scenario: Scenario;
  readonly verdict: Verdict;
  /** Time until the first spill or dry pump [s]; absent where there is none. */
  readonly timeToTrouble?: number;
  readonly status: "finished" | "stepBudget" | "stuck";
  /** Time simulated [s]. */
  readonly reached: number;
  readonly vessels: readonly VesselTrack[];
  readonly events: readonly WhatIfEvent[];
  /** Water on the floor, lost to the air, and let in by the top-off [m3]. */
  readonly spilled: number;
  readonly evaporated: number;
  readonly toppedUp: number;
  /** Greatest error of the sum of all water over that sum [-]. */
  readonly volumeError: number;
  /** Greatest flow that each drain took [m3/s]. */
  readonly drainPeak: readonly number[];
  readonly steps: number;
  readonly film?: Film;
}
