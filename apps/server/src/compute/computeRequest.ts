import type { ShopGround } from "@tidewright/advice";
import type { Catalogue, PriceFactors } from "@tidewright/catalogue";
import type { Problem } from "@tidewright/design";

/** The answers of hydraulics: they take a document, keep nothing and need no store. */
export const computations = ["assess", "rank", "levers", "safety", "whatif", "whatif/own", "network"] as const;
/** One of `computations`, or the first design of a customer's intake, which no address answers. */
export type Computation = (typeof computations)[number] | "firstDesign";

/** One thing to compute: a document (or the answers of an intake) as text, and the query as sent. */
export interface ComputeRequest {
  readonly computation: Computation;
  readonly text: string;
  readonly query: Readonly<Record<string, string>>;
  /** The shop's own pumps, before those of the catalogue that comes with the program. */
  readonly pumps: Catalogue["pumps"];
  /** The shop's prices as factors of those that come with the program; none where it says nothing. */
  readonly prices?: PriceFactors;
  /** What the shop has said once for all its jobs, for a first design. */
  readonly shop?: ShopGround;
}

/** The answer as JSON text, every problem of what was asked, or a fault of ours. */
export type ComputeAnswer =
  | { readonly ok: true; readonly json: string }
  | { readonly ok: false; readonly problems: readonly Problem[] }
  | { readonly ok: false; readonly fault: string };

/** Input that cannot be computed with, thrown anywhere in a computation. */
export class BadDocument extends Error {
  readonly problems: readonly Problem[];
  constructor(problems: readonly Problem[]) {
    super(`${problems.length} problems`);
    this.name = "BadDocument";
    this.problems = problems;
  }
}
