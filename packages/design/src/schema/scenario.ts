import { z } from "zod";
import { quantity } from "./quantity.ts";

/** Longest time that a scenario follows [s]: sixty days.
 *  -> time [s]
 *  Findings: none. Throws: never.
 *  Valid: evaporation empties any sump without a top-off sooner.
 *  Source: own choice.
 *  Example: longestScenario / 86400  ->  60 */
export const longestScenario = 60 * 86_400;

/** Most events that one scenario holds.
 *  -> count
 *  Findings: none. Throws: never.
 *  Valid: a power cut and restart every hour for three weeks is about as many.
 *  Source: own choice.
 *  Example: mostScenarioEvents  ->  1000 */
export const mostScenarioEvents = 1000;

/** Actions that concern the whole system, so that their name says all of them.
 *  -> list of kinds
 *  Findings: none. Throws: never.
 *  Valid: those of the top-off for a design that has one, that of the overflow's siphon for an overflow that hangs on the glass.
 *  Source: own choice.
 *  Example: wholeActions.includes("powerOff")  ->  true */
export const wholeActions = [
  "powerOff",
  "powerOn",
  "topOffStops",
  "topOffRuns",
  "topOffSticksOpen",
  "overflowSiphonDrawsAir",
] as const;

const time = { min: 0, max: longestScenario } as const;
/** A drain or loop by the name it has in the design, or by its JSON Pointer, such as "/drains/0". */
const partName = z.string().min(1);
/** Which pump of the loop, 1 is the first; a loop of one pump needs no number. */
const pumpNumber = z.number().int().min(1).optional();
const share = z.number().min(0).max(1);

/** Something that happens to one part, or to the whole system where the kind alone says so.
 *  -> zod schema
 *  Findings: none. Throws: never.
 *  Valid: whether the design has the part is checked by `checkScenario`.
 *  Source: own choice.
 *  Example: scenarioActionSchema.safeParse({ kind: "drainBlocks", drain: "main", share: 2 }).success  ->  false */
export const scenarioActionSchema = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.enum(wholeActions) }),
  z.strictObject({ kind: z.literal("pumpStops"), loop: partName, pump: pumpNumber }),
  z.strictObject({ kind: z.literal("pumpStarts"), loop: partName, pump: pumpNumber }),
  z.strictObject({ kind: z.literal("pumpSpeed"), loop: partName, pump: pumpNumber, speed: share }),
  z.strictObject({
    kind: z.literal("drainBlocks"),
    drain: partName,
    /** Share of its section that closes; 0 clears it. */
    share,
    /** Time over which it comes about; at once where it is left out. */
    over: quantity("time", time).optional(),
  }),
  /** Share of the section that stays open backward: 1 is a valve stuck open, 0 one that holds again. */
  z.strictObject({ kind: z.literal("checkValvesLeak"), loop: partName, share }),
  z.strictObject({ kind: z.literal("siphonBreaksClog"), loop: partName }),
]);

/** The scenario document, version 1: a course of events to play on a design.
 *  -> zod schema
 *  Findings: none. Throws: never.
 *  Valid: the order of times and names of parts are checked by `checkScenario`.
 *  Source: own choice.
 *  Example: scenarioDocumentSchema.safeParse({ tidewright: 1 }).success  ->  false */
export const scenarioDocumentSchema = z.strictObject({
  tidewright: z.literal(1),
  scenario: z.strictObject({
    name: z.string().min(1),
    notes: z.string().optional(),
    /** How long the system is followed. */
    duration: quantity("time", { positive: true, max: longestScenario }),
    /** Whether water lost to the air counts; worth it from hours on. */
    evaporation: z.boolean().optional(),
    /** In the order of their time, counted from the start of the scenario. */
    events: z
      .array(
        z.strictObject({
          at: quantity("time", time),
          do: z.union([z.enum(wholeActions), scenarioActionSchema]),
        }),
      )
      .max(mostScenarioEvents),
  }),
});

export type ScenarioDocument = z.infer<typeof scenarioDocumentSchema>;

/** One thing that happens; loops, pumps and drains by their index in the design, from 0. Times [s], shares [-]. */
export type OwnScenarioAction =
  | { readonly kind: (typeof wholeActions)[number] }
  | { readonly kind: "pumpStops" | "pumpStarts"; readonly loop: number; readonly pump: number }
  | { readonly kind: "pumpSpeed"; readonly loop: number; readonly pump: number; readonly speed: number }
  | { readonly kind: "drainBlocks"; readonly drain: number; readonly share: number; readonly over?: number }
  | { readonly kind: "checkValvesLeak"; readonly loop: number; readonly share: number }
  | { readonly kind: "siphonBreaksClog"; readonly loop: number };

/** A scenario document resolved against a design: SI numbers and indices. Times [s]. */
export interface OwnScenario {
  readonly name: string;
  readonly duration: number;
  readonly evaporation: boolean;
  readonly events: readonly { readonly at: number; readonly action: OwnScenarioAction }[];
}
