/** One thing that happens. Loops, pumps, drains and outlets by their index in the design. */
export type ScenarioAction =
  | { readonly kind: "powerOff" }
  | { readonly kind: "powerOn" }
  | { readonly kind: "pumpSpeed"; readonly loop: number; readonly pump: number; readonly speed: number }
  | { readonly kind: "pumpStops"; readonly loop: number; readonly pump: number }
  | { readonly kind: "pumpStarts"; readonly loop: number; readonly pump: number }
  | {
      readonly kind: "drainBlocks";
      readonly drain: number;
      /** Share of its section that closes, 0 to 1; 0 clears it. */
      readonly share: number;
      /** Time over which it comes about [s]; at once where absent. */
      readonly over?: number;
    }
  | { readonly kind: "checkValvesLeak"; readonly loop: number; readonly share: number }
  | { readonly kind: "siphonBreaksClog"; readonly loop: number }
  | { readonly kind: "overflowSiphonDrawsAir" }
  | { readonly kind: "topOffStops" }
  | { readonly kind: "topOffRuns" }
  | { readonly kind: "topOffSticksOpen" };

/** An action and its moment [s]. */
export interface ScenarioEvent {
  readonly at: number;
  readonly action: ScenarioAction;
}

/** What sort of trouble a scenario is, for wording and order; the sweep runs one or more of each that a design can meet. */
export type ScenarioKind =
  | "powerCut"
  | "restart"
  | "drainBlocked"
  | "drainHalfBlocked"
  | "twoDrainsBlocked"
  | "pumpFails"
  | "checkValveStuck"
  | "siphonBreakClogged"
  | "overflowSiphonLost"
  | "topOffFails"
  | "topOffStuckOpen"
  | "strainerFurs"
  | "own";

/** A course of events to play on a design. */
export interface Scenario {
  /** Stable name, such as "drainBlocked:0". */
  readonly id: string;
  readonly kind: ScenarioKind;
  /** Names of the parts in question (drains, loops), in order; for "own" the title its author gave. */
  readonly subjects: readonly string[];
  /** Time to follow [s]. */
  readonly duration: number;
  /** Water lost to the air counts: worth it from hours on. */
  readonly evaporation: boolean;
  readonly events: readonly ScenarioEvent[];
}
