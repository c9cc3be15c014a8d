import type { StartAnswers } from "@tidewright/advice";
import type { AnimalGroup } from "@tidewright/design";
import type { Dimension } from "@tidewright/units";

/** A question that is answered by typing: where its answer goes, and what is measured; no dimension is a count. */
export interface TypedQuestion {
  readonly path: string;
  readonly dimension?: Dimension;
}

/** Every typed question of the start. */
export const typedQuestions = {
  length: { path: "/tank/length", dimension: "length" },
  width: { path: "/tank/width", dimension: "length" },
  height: { path: "/tank/height", dimension: "length" },
  volume: { path: "/tank/volume", dimension: "volume" },
  holesCount: { path: "/overflow/holes/count" },
  holesDiameter: { path: "/overflow/holes/diameter", dimension: "length" },
  standHeight: { path: "/standHeight", dimension: "length" },
  sumpLength: { path: "/sump/length", dimension: "length" },
  sumpWidth: { path: "/sump/width", dimension: "length" },
  sumpHeight: { path: "/sump/height", dimension: "length" },
  reservoir: { path: "/topOff/reservoir", dimension: "volume" },
  horizontal: { path: "/returnWay/horizontal", dimension: "length" },
  elbows: { path: "/returnWay/elbows" },
  tariff: { path: "/power/tariff", dimension: "tariff" },
  circuit: { path: "/power/circuit", dimension: "current" },
  budget: { path: "/wishes/budget", dimension: "money" },
  sound: { path: "/wishes/sound", dimension: "soundLevel" },
  turnoverLow: { path: "/wishes/returnTurnover/0", dimension: "turnover" },
  turnoverHigh: { path: "/wishes/returnTurnover/1", dimension: "turnover" },
  horizon: { path: "/wishes/horizon", dimension: "time" },
} as const satisfies Readonly<Record<string, TypedQuestion>>;

/** The name of a typed question. */
export type TypedKey = keyof typeof typedQuestions;

/** What is said so far; text, so that nothing is lost while it does not make sense yet. */
export interface Draft {
  readonly name: string;
  readonly customer: string;
  readonly typed: Readonly<Partial<Record<TypedKey, string>>>;
  readonly animals: readonly AnimalGroup[];
  readonly glass: NonNullable<StartAnswers["overflow"]>["glass"];
  readonly drains: NonNullable<StartAnswers["overflow"]>["drains"];
  readonly sump: "suggest" | "given";
  readonly topOff: NonNullable<StartAnswers["topOff"]>["kind"];
  readonly mains: "230 V, 50 Hz" | "120 V, 60 Hz" | undefined;
}

/** Nothing said yet. */
export const emptyDraft: Draft = {
  name: "",
  customer: "",
  typed: {},
  animals: [],
  glass: undefined,
  drains: undefined,
  sump: "suggest",
  topOff: undefined,
  mains: undefined,
};

const key = "tidewright.start";

/** The draft that was left on this page, if any. */
export function keptDraft(): Draft {
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(key) ?? "null");
    return typeof kept === "object" && kept !== null ? { ...emptyDraft, ...kept } : emptyDraft;
  } catch {
    // A closed storage is no reason not to begin.
    return emptyDraft;
  }
}

/** Keeps the draft for a reload of this page. */
export function keepDraft(draft: Draft): void {
  try {
    if (draft === emptyDraft) sessionStorage.removeItem(key);
    else sessionStorage.setItem(key, JSON.stringify(draft));
  } catch {
    // As above.
  }
}
