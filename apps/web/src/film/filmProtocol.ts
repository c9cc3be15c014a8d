import type { SafetySweep, Scenario, Verdict, WhatIf } from "@tidewright/advice";
import type { Design } from "@tidewright/design";

/** One change that may help against a scenario, simulated again with everything else as it was. */
export interface Help {
  readonly label: string;
  /** JSON Pointer of the part that changes. */
  readonly at: string;
  /** The whole changed document. */
  readonly design: Design;
  readonly before: Verdict;
  readonly after: Verdict;
  /** Least distance to a rim before and after [m]; negative is over. */
  readonly marginBefore?: number;
  readonly marginAfter?: number;
  /** Water on the floor [m3], and time until trouble [s]. */
  readonly spilledBefore: number;
  readonly spilledAfter: number;
  readonly troubleAfter?: number;
  /** Parts to buy, by the catalogue; labour not counted. */
  readonly price: number;
}

/** What the page asks of a worker. `id` comes back with every answer. */
export type FilmRequest =
  | { readonly kind: "whatIf"; readonly id: number; readonly design: Design; readonly scenario: Scenario }
  | { readonly kind: "sweep"; readonly id: number; readonly design: Design }
  | {
      readonly kind: "helps";
      readonly id: number;
      readonly design: Design;
      readonly scenario: Scenario;
      readonly sweep: SafetySweep;
    };

/** What a worker answers. */
export type FilmAnswer =
  | { readonly kind: "whatIf"; readonly id: number; readonly result: WhatIf }
  | { readonly kind: "progress"; readonly id: number; readonly done: number; readonly of: number }
  | { readonly kind: "sweep"; readonly id: number; readonly result: SafetySweep }
  | { readonly kind: "helps"; readonly id: number; readonly result: readonly Help[] }
  | { readonly kind: "fault"; readonly id: number; readonly asked: FilmRequest["kind"]; readonly message: string };
