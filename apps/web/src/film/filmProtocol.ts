import type { SafetyLever, SafetySweep, Scenario, WhatIf } from "@tidewright/advice";
import type { Design } from "@tidewright/design";

/** What the page asks of a worker. `id` comes back with every answer. */
export type FilmRequest =
  | { readonly kind: "whatIf"; readonly id: number; readonly design: Design; readonly scenario: Scenario }
  | { readonly kind: "sweep"; readonly id: number; readonly design: Design }
  | { readonly kind: "levers"; readonly id: number; readonly design: Design; readonly sweep: SafetySweep };

/** What a worker answers. */
export type FilmAnswer =
  | { readonly kind: "whatIf"; readonly id: number; readonly result: WhatIf }
  | { readonly kind: "progress"; readonly id: number; readonly done: number; readonly of: number }
  | { readonly kind: "sweep"; readonly id: number; readonly result: SafetySweep }
  | { readonly kind: "levers"; readonly id: number; readonly result: readonly SafetyLever[] }
  | { readonly kind: "fault"; readonly id: number; readonly asked: FilmRequest["kind"]; readonly message: string };
