import type { Design } from "@tidewright/design";
import type { Dimension } from "@tidewright/units";
import type { Finding } from "../finding.ts";

/** Why a default is what it is; the sentences are written at the edge. */
export type StartReason =
  | "proportions"
  | "seaWater"
  | "temperature"
  | "rock"
  | "animals"
  | "stand"
  | "threeDrains"
  | "holesUnknown"
  | "weirLength"
  | "crest"
  | "teeth"
  | "siphonTubes"
  | "siphonBore"
  | "siphonMouth"
  | "siphonCrest"
  | "boxLength"
  | "boxWidth"
  | "siphonSize"
  | "siphonShare"
  | "siphonInlet"
  | "openChannelSize"
  | "openChannelInlet"
  | "ventedSize"
  | "ventedInlet"
  | "emergencySize"
  | "emergencyInlet"
  | "holePipe"
  | "chamberLength"
  | "sumpWidth"
  | "sumpHeight"
  | "sumpFloor"
  | "chambers"
  | "operatingLevel"
  | "topOffReservoir"
  | "topOffBySump"
  | "topOffFlow"
  | "intake"
  | "returnPipe"
  | "returnWay"
  | "elbows"
  | "nozzleDepth"
  | "siphonBreak"
  | "pump"
  | "pumpSpeed"
  | "tankPumps"
  | "mains"
  | "shopMains"
  | "tariff"
  | "shopTariff"
  | "circuit"
  | "otherLoad"
  | "returnTurnover"
  | "totalTurnover"
  | "horizon";

/** What could not be had as wished, or needs care. */
export type StartNoteCode =
  | "hangOn"
  | "holesUnknown"
  | "fewHoles"
  | "oneDrain"
  | "animalsConflict"
  | "returnLowered"
  | "returnNarrowed"
  | "drainLoud"
  | "emergencySmall"
  | "sumpSmall"
  | "sumpBeside"
  | "sumpTooHigh"
  | "noTopOff"
  | "budgetShort"
  | "budgetLeavesNoStream"
  | "budgetOtherCurrency"
  | "soundOver"
  | "noPump"
  | "pumpPair"
  | "pumpOutside"
  | "noStreamPump"
  | "circuitSmall"
  | "wet"
  | "danger";

/** A number with its dimension, SI, or a word as it is. */
export type StartFigure = string | number | { readonly si: number; readonly dimension: Dimension };

/** One thing that nobody said: where it stands in the design, what it is and why. */
export interface StartDefault {
  /** JSON Pointer in the design. */
  readonly path: string;
  /** JSON Pointer of the answer that would replace it; absent where only the bench can. */
  readonly question?: string;
  /** What stands there. */
  readonly value: unknown;
  readonly why: { readonly key: StartReason; readonly values: Readonly<Record<string, StartFigure>> };
  /** A publication, this program's own reckoning, or "common practice, no source". */
  readonly source: string;
}

/** One wish that could not be met, or one thing to take care of. */
export interface StartNote {
  readonly code: StartNoteCode;
  /** "unmet" a wish or a safety that is not had; "care" worth knowing. */
  readonly weight: "unmet" | "care";
  /** JSON Pointer in the design. */
  readonly at: string;
  readonly values: Readonly<Record<string, StartFigure>>;
  readonly finding?: Finding;
}

/** A first design with everything that was assumed and everything that could not be had. */
export interface FirstDesign {
  readonly design: Design;
  readonly defaults: readonly StartDefault[];
  readonly notes: readonly StartNote[];
}
