import type { FindingCode } from "./finding.ts";

/** Why a candidate is out, or what speaks for or against it; sentences in `wording.ts`. */
export type ReasonCode =
  | "meets-aim"
  | "within-wish"
  | "below-wish"
  | "above-wish"
  | "lacking-movement"
  | "no-wish"
  | "too-weak-to-lift"
  | "wrong-place"
  | "wrong-voltage"
  | "over-budget"
  | "over-sound"
  | "near-shutoff"
  | "near-runout"
  | "beyond-curve"
  | "needs-controller"
  | "efficient-point"
  | "spare-flow"
  | "cheapest"
  | "lowest-cost-over-horizon"
  | "quietest"
  | "least-power"
  | "two-pumps-redundant"
  | "drain-cannot-carry"
  | "circuit-overload"
  | "in-tank-pump";

export interface Reason {
  readonly code: ReasonCode;
  readonly value?: number;
  readonly limit?: number;
  readonly dimension?: string;
  readonly finding?: FindingCode;
}

/** One catalogue pump, or a pair of them, at its best speed in this loop. */
export interface Candidate {
  readonly pumpIds: readonly string[];
  readonly label: string;
  readonly arrangement: "single" | "parallel";
  readonly speed: number;
  readonly flow: number;
  readonly head: number;
  /** Loop's flow that reaches the display [m3/s]. */
  readonly flowToDisplay: number;
  readonly watts: number;
  readonly efficiency: number;
  readonly soundLevel: number;
  /** Pumps and needed extras. */
  readonly price: number;
  readonly extras: readonly { readonly label: string; readonly price: number }[];
  readonly annualCost: number;
  /** price + horizon x annualCost; absent where the two are in different currencies. */
  readonly horizonCost?: number;
  /** (flow at full speed - aim) / aim: what is left for a furred pipe. */
  readonly flowMargin: number;
  readonly placeOnCurve: number;
  /** Smaller is better; see `rank` for its terms. */
  readonly score: number;
  readonly paretoFront: boolean;
  readonly reasons: readonly Reason[];
}

export interface Rejection {
  readonly pumpIds: readonly string[];
  readonly label: string;
  readonly causes: readonly Reason[];
}

export interface Ranking {
  readonly loop: number;
  /** Flow through the pumps that brings the wished flow to the display [m3/s]. */
  readonly aim: number;
  /** Flow wished at the display from this loop [m3/s]; where nobody wishes any, from 0 to the most that a candidate gives. */
  readonly wish: { readonly low: number; readonly high: number };
  /** Best first. */
  readonly candidates: readonly Candidate[];
  readonly rejections: readonly Rejection[];
  readonly considered: number;
  /** Currencies (ISO 4217) of what is bought and of what it costs to run. */
  readonly currencies: { readonly prices: string; readonly running: string };
}

export interface RankOptions {
  /** Which loop of the design; 0 is the first. */
  readonly loop?: number;
  /** Whether two equal pumps in parallel are considered; true where nothing is said. */
  readonly pairs?: boolean;
}
