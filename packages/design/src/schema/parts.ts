import { z } from "zod";
import { quantity } from "./quantity.ts";
import { planPoint } from "./vessels.ts";

/** Where water can come from or go to: the display, the overflow box, or a sump chamber by its id. */
export const placeSchema = z
  .string()
  .regex(/^(display|overflowBox|sump\.[A-Za-z0-9_-]+)$/, 'must be "display", "overflowBox" or "sump.<chamber id>"');

const note = z.string().optional();

/** A straight pipe or hose. Either a series from the catalogue or a bore of one's own. */
export const pipePartSchema = z.strictObject({
  kind: z.literal("pipe"),
  series: z.string().optional(),
  bore: quantity("length", { positive: true, max: 1 }).optional(),
  roughness: quantity("length", { min: 0, max: 0.01 }).optional(),
  length: quantity("length", { min: 0, max: 1000 }),
  /** Change of elevation along the flow; positive is upward. */
  rise: quantity("length", { min: -100, max: 100 }).optional(),
  note,
});

/** A fitting on the run, in the size of the pipe before it (or after it, at the start of a run). */
export const fittingPartSchema = z.strictObject({
  kind: z.literal("fitting"),
  fitting: z.string(),
  count: z.number().int().min(1).max(200).optional(),
  /** A loss coefficient K of one's own, in place of the catalogue's. */
  lossCoefficient: z.number().min(0).max(1e6).optional(),
  note,
});

/** A valve by its type and opening: 0 closed, 1 full bore. */
export const valvePartSchema = z.strictObject({
  kind: z.literal("valve"),
  valve: z.string(),
  opening: z.number().min(0).max(1),
  note,
});

/** A chiller, UV unit, reactor or any other device with a pressure drop, by catalogue reference. */
export const devicePartSchema = z.strictObject({ kind: z.literal("device"), ref: z.string(), note });

/** Where a run ends: in a place, at a depth below its surface (negative: above it), through a nozzle. */
export const outletPartSchema = z.strictObject({
  kind: z.literal("outlet"),
  to: placeSchema,
  depth: quantity("length", { min: -5, max: 5 }).optional(),
  /** Bore of the nozzle; without it the pipe's own bore. */
  nozzle: quantity("length", { positive: true, max: 1 }).optional(),
  /** Depth of a siphon-break hole below the surface, where there is one. */
  siphonBreak: quantity("length", { min: 0, max: 5 }).optional(),
  /** Where it is in the display as seen from above. */
  at: planPoint.optional(),
  note,
});

export type PipePart = z.infer<typeof pipePartSchema>;
export type FittingPart = z.infer<typeof fittingPartSchema>;
export type ValvePart = z.infer<typeof valvePartSchema>;
export type DevicePart = z.infer<typeof devicePartSchema>;
export type OutletPart = z.infer<typeof outletPartSchema>;
/** A tee: the run ends here and goes on in two to eight branches; the first goes straight on. */
export interface TeePart {
  kind: "tee";
  branches: Part[][];
  note?: string | undefined;
}
export type Part = PipePart | FittingPart | ValvePart | DevicePart | OutletPart | TeePart;
/** An ordered list of parts in the direction of flow. */
export type Run = Part[];

/** Any part of a run, told apart by its kind. */
export const partSchema: z.ZodType<Part> = z.lazy(() =>
  z.discriminatedUnion("kind", [
    pipePartSchema,
    fittingPartSchema,
    valvePartSchema,
    devicePartSchema,
    outletPartSchema,
    teePartSchema,
  ]),
);

const teePartSchema = z.strictObject({
  kind: z.literal("tee"),
  branches: z
    .array(z.lazy(() => z.array(partSchema).min(1)))
    .min(2)
    .max(8),
  note,
});

/** A run: parts in the direction of flow, at least one. */
export const runSchema = z.array(partSchema).min(1);
