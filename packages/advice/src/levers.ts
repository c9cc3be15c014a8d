import type { Design } from "@tidewright/design";
import type { LeverKey, MessageValues } from "@tidewright/words";

/** A text by its name in the message catalogue, with what is filled in: data that any language can be made of. */
export interface Told {
  readonly key: LeverKey;
  readonly values: MessageValues;
}

export type LeverKind =
  | "pipe-size-up"
  | "sweep-elbows"
  | "open-valve"
  | "larger-nozzle"
  | "remove-nozzle"
  | "raise-speed"
  | "lower-speed"
  | "better-pump"
  | "drain-size-up"
  | "add-emergency-drain"
  | "set-siphon-valve"
  | "longer-weir"
  | "lower-operating-level"
  | "raise-siphon-break"
  | "suction-size-up"
  | "bulkhead-size-up"
  | "add-union"
  | "add-controller"
  | "move-pump";

/** One change on its own, and what the whole system does about it when solved again. */
export interface Lever {
  readonly kind: LeverKind;
  /** JSON Pointer of what changes. */
  readonly at: string;
  readonly label: string;
  /** What the label says, for other languages; absent where it is a pump's name. */
  readonly told?: Told;
  /** The changed document, ready to take over. */
  readonly design: Design;
  readonly before: LeverEffect;
  readonly after: LeverEffect;
  /** Parts to buy [catalogue currency], labour not counted. */
  readonly price: number;
  /** Findings that vanish and appear, by code and place. */
  readonly cures: readonly { readonly code: string; readonly at: string; readonly severity: string }[];
  readonly causes: readonly { readonly code: string; readonly at: string; readonly severity: string }[];
  /** Benefit: see `levers` for its terms; bigger helps more. */
  readonly benefit: number;
  readonly benefitPerCost: number;
}

export interface LeverEffect {
  readonly returnFlow: number;
  readonly totalHead: number;
  readonly watts: number;
  readonly annualCost: number;
  readonly soundLevel: number;
  /** Sump margin on a power cut [m3]. */
  readonly sumpMargin: number;
  /** Worst drain: flow over its quiet capacity. */
  readonly drainLoad: number;
  readonly dangers: number;
  readonly warnings: number;
}
