import { z } from "zod";
import { drainSchema, loopSchema, tankPumpSchema } from "./loops.ts";
import { quantity } from "./quantity.ts";
import { displaySchema, overflowSchema, sumpSchema, topOffSchema } from "./vessels.ts";

const turnoverRange = z
  .tuple([quantity("turnover", { min: 0, max: 200 }), quantity("turnover", { min: 0, max: 200 })])
  .meta({ description: "lowest and highest wish, in display volumes an hour" });

/** Mains, tariff and the circuits that the system hangs on. */
export const powerSchema = z.strictObject({
  voltage: quantity("voltage", { positive: true, max: 1000 }),
  frequency: quantity("frequency", { positive: true, max: 400 }).optional(),
  tariff: quantity("tariff", { min: 0 }),
  circuits: z
    .array(
      z.strictObject({
        name: z.string(),
        rating: quantity("current", { positive: true, max: 1000 }),
        otherLoad: quantity("power", { min: 0 }).optional(),
      }),
    )
    .optional(),
});

/** What the owner wants: flows, money, sound, and over how many years costs are counted. */
export const wishesSchema = z.strictObject({
  /** Flow through the sump in display volumes an hour. */
  returnTurnover: turnoverRange.optional(),
  /** The same wish as a flow, which then counts instead. */
  returnFlow: quantity("flow", { positive: true }).optional(),
  /** All water movement, in-tank pumps and closed loops included. */
  totalTurnover: turnoverRange.optional(),
  budget: quantity("money", { min: 0 }).optional(),
  sound: quantity("soundLevel", { min: 0, max: 140 }).optional(),
  horizon: quantity("time", { positive: true }).optional(),
});

/** The design document, version 1: what the user said, in the user's units. */
export const designSchema = z.strictObject({
  tidewright: z.literal(1),
  name: z.string().min(1),
  notes: z.string().optional(),
  /** Which published method gives fitting losses; Crane where nothing is said. */
  fittingMethod: z.enum(["crane", "hooper", "darby"]).optional(),
  water: z.strictObject({
    salinity: quantity("salinity", { min: 0 }),
    temperature: quantity("temperature", { min: -2, max: 40 }),
  }),
  room: z
    .strictObject({
      temperature: quantity("temperature", { min: -30, max: 60 }).optional(),
      relativeHumidity: z.number().min(0).max(1).optional(),
      altitude: quantity("length", { min: -500, max: 6000 }).optional(),
    })
    .optional(),
  display: displaySchema,
  overflow: overflowSchema,
  drains: z.array(drainSchema).min(1).max(12),
  sump: sumpSchema,
  /** Without it somebody fills up by hand. */
  topOff: topOffSchema.optional(),
  loops: z.array(loopSchema).min(1).max(12),
  tankPumps: z.array(tankPumpSchema).optional(),
  power: powerSchema,
  wishes: wishesSchema,
});

export type Design = z.infer<typeof designSchema>;
export type Wishes = z.infer<typeof wishesSchema>;
