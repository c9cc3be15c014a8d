import type { Dimension } from "@tidewright/units";

/** How the edge writes an SI number in the user's units. */
export type Format = (si: number, dimension: Dimension) => string;

/** The sentence a person reads: what it is, what was found, what to do, and where it matters a caution. */
export interface Description {
  readonly title: string;
  readonly sentence: string;
  readonly fix: string;
  readonly caution?: string;
}
