import { animalGroups, quantity } from "@tidewright/design";
import { z } from "zod";

const side = { min: 0.1, max: 12 } as const;

/** What may be done to the glass: drilled, drilled already, or neither. */
export const glassAnswers = ["drill", "drilled", "keep"] as const;
/** How many drains are wanted: one vented pipe, one with a dry spare, or siphon, open channel and dry spare. */
export const drainAnswers = ["one", "two", "three"] as const;

/** How evaporated water is made good: by an automatic top-off, or by hand because there is none yet. */
const topOffAnswers = ["automatic", "none"] as const;

/** Everything that can be said at the start; all of it may be left out but the size of the tank, as three sides or as a volume. */
export const startAnswersSchema = z.strictObject({
  name: z.string().max(200).optional(),
  /** Units in which the design's own lengths are written; those of the tank's length where nothing is said. */
  units: z.enum(["metric", "us"]).optional(),
  /** Inner sizes, or the volume alone: sides are then usual proportions. */
  tank: z.strictObject({
    length: quantity("length", side).optional(),
    width: quantity("length", side).optional(),
    height: quantity("length", { min: 0.15, max: 4 }).optional(),
    volume: quantity("volume", { min: 0.01, max: 50 }).optional(),
  }),
  animals: z.array(z.enum(animalGroups)).min(1).max(6).optional(),
  /** Share of the water taken by rock and sand, 0 to 0.6. */
  rockShare: z.number().min(0).max(0.6).optional(),
  overflow: z
    .strictObject({
      glass: z.enum(glassAnswers).optional(),
      /** Holes that are there already. */
      holes: z
        .strictObject({
          count: z.number().int().min(1).max(6),
          diameter: quantity("length", { min: 0.02, max: 0.2 }),
        })
        .optional(),
      drains: z.enum(drainAnswers).optional(),
    })
    .optional(),
  /** Tank floor above the floor on which the sump stands; more than a storey for a sump in the cellar. */
  standHeight: quantity("length", { min: 0, max: 10 }).optional(),
  /** Sump that is there or wanted; without it one is suggested. */
  sump: z
    .strictObject({
      length: quantity("length", side),
      width: quantity("length", side),
      height: quantity("length", { min: 0.15, max: 2 }),
    })
    .optional(),
  /** Evaporated water: an automatic top-off where nothing is said. */
  topOff: z
    .strictObject({
      kind: z.enum(topOffAnswers).optional(),
      /** Fresh water in the full reservoir; without it one is suggested. */
      reservoir: quantity("volume", { min: 0.0005, max: 10 }).optional(),
    })
    .optional(),
  /** Room for the sump, what stands around it taken off. */
  sumpRoom: z
    .strictObject({
      length: quantity("length", side).optional(),
      width: quantity("length", side).optional(),
      height: quantity("length", { min: 0.15, max: 5 }).optional(),
    })
    .optional(),
  /** Way of the return line besides its rise. */
  returnWay: z
    .strictObject({
      horizontal: quantity("length", { min: 0, max: 60 }).optional(),
      elbows: z.number().int().min(0).max(40).optional(),
    })
    .optional(),
  power: z
    .strictObject({
      voltage: quantity("voltage", { min: 90, max: 260 }).optional(),
      frequency: quantity("frequency", { min: 45, max: 65 }).optional(),
      tariff: quantity("tariff", { min: 0 }).optional(),
      circuit: quantity("current", { min: 1, max: 100 }).optional(),
    })
    .optional(),
  wishes: z
    .strictObject({
      /** Through the sump, in display volumes an hour. */
      returnTurnover: z
        .tuple([quantity("turnover", { positive: true, max: 60 }), quantity("turnover", { positive: true, max: 60 })])
        .optional(),
      budget: quantity("money", { positive: true }).optional(),
      sound: quantity("soundLevel", { min: 15, max: 100 }).optional(),
      horizon: quantity("time", { positive: true, max: 3.2e9 }).optional(),
    })
    .optional(),
});

/** What is said at the start; quantities in the units they were said in. */
export type StartAnswers = z.infer<typeof startAnswersSchema>;
