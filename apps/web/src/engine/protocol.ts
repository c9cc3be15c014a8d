import type { Assessment, Lever, Ranking, RankOptions } from "@tidewright/advice";
import type { Design } from "@tidewright/design";

/** What the page asks of a worker. `id` comes back with the answer. */
export type EngineRequest =
  | { readonly kind: "assess"; readonly id: number; readonly design: Design }
  | { readonly kind: "rank"; readonly id: number; readonly design: Design; readonly options: RankOptions }
  | { readonly kind: "levers"; readonly id: number; readonly design: Design };

/** What a worker answers. `took` is the time spent on the answer itself [ms]. */
export type EngineAnswer =
  | { readonly kind: "assess"; readonly id: number; readonly took: number; readonly result: Assessment }
  | { readonly kind: "rank"; readonly id: number; readonly took: number; readonly result: Ranking }
  | { readonly kind: "levers"; readonly id: number; readonly took: number; readonly result: readonly Lever[] }
  | { readonly kind: "fault"; readonly id: number; readonly asked: EngineRequest["kind"]; readonly message: string };
