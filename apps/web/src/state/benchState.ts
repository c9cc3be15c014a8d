import type { Assessment, Lever, Ranking } from "@tidewright/advice";
import type { Design, History, Problem } from "@tidewright/design";
import type { ProvenanceId } from "../provenance/provenance.ts";

/** A document together with what the engine said about that very document. */
export interface Assessed {
  readonly design: Design;
  readonly assessment: Assessment;
  /** Time spent in `assess` [ms]. */
  readonly took: number;
}

/** What was wrong with a file that could not be opened. */
export interface RefusedFile {
  readonly name: string;
  readonly problems: readonly Problem[];
}

/** Which window lies over the bench. */
export type OpenDialog = "open" | "units" | "problems" | undefined;

/** The sections under the drawing. */
export type DrawerTab = "pumps" | "levers" | "parts" | "sheet" | "safety";

/** Everything the bench shows, but for the choice of units and theme, which outlive the page. */
export interface BenchState {
  readonly history: History<Design>;
  /** Undefined before the first answer of the engine; later it lags the document by no more than the worker needs. */
  readonly assessed: Assessed | undefined;
  /** The document of which is known what happens over time; until it is the present one, not all is found. */
  readonly overTimeOf: Design | undefined;
  /** The newest answer with curves; it lags `assessed` while a hand moves. */
  readonly curves: Assessment | undefined;
  readonly ranking: { readonly design: Design; readonly ranking: Ranking } | undefined;
  readonly levers: { readonly design: Design; readonly levers: readonly Lever[] } | undefined;
  /** Which loop the ranking is about. */
  readonly rankedLoop: number;
  readonly fault: string | undefined;
  /** JSON Pointer of the part in hand. */
  readonly selection: string | undefined;
  readonly dialog: OpenDialog;
  readonly refused: RefusedFile | undefined;
  /** An edit that was not made, and why; the document stands as it was. */
  readonly refusedEdit: Problem | undefined;
  /** Why nothing may be changed here: an account that may only look. */
  readonly lookOnly: string | undefined;
  readonly tab: DrawerTab;
  readonly drawerOpen: boolean;
  /** The number whose origin is being shown, and the element it was asked at. */
  readonly source: { readonly id: ProvenanceId; readonly index: number; readonly at: DOMRect } | undefined;
  /** A short word on what was just done, read out to those who do not see it. */
  readonly said: string;
  /** Document as it was last saved or opened. */
  readonly savedDesign: Design;
}
