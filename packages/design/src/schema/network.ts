import type { Dimension } from "@tidewright/units";
import { z } from "zod";
import { type QuantityRange, quantity } from "./quantity.ts";

/** In the network section a quantity may also be a bare number, in SI. */
const inSI = (dimension: Dimension, range: QuantityRange = {}) => {
  let number = z.number();
  if (range.positive) number = number.positive();
  else if (range.min !== undefined) number = number.min(range.min);
  if (range.max !== undefined) number = number.max(range.max);
  return z.union([number, quantity(dimension, range)]);
};

const id = z.string().min(1);
const ends = { id, from: id, to: id };

/** A place in a network: one whose head is known, or a junction whose head is sought. */
export const networkNodeSchema = z.discriminatedUnion("kind", [
  z.strictObject({ id, kind: z.literal("fixedHead"), head: inSI("head"), elevation: inSI("length").optional() }),
  z.strictObject({
    id,
    kind: z.literal("junction"),
    elevation: inSI("length").optional(),
    demand: inSI("flow").optional(),
  }),
]);

const pointSchema = z.strictObject({ flow: inSI("flow", { min: 0 }), head: inSI("head", { min: 0 }) });

/** What joins two nodes; positive flow runs from "from" to "to". */
export const networkLinkSchema = z.discriminatedUnion("kind", [
  z.strictObject({
    ...ends,
    kind: z.literal("pipe"),
    length: inSI("length", { min: 0 }),
    diameter: inSI("length", { positive: true }),
    roughness: inSI("length", { min: 0 }).optional(),
    minorLoss: z.number().min(0).optional(),
    checkValve: z.boolean().optional(),
  }),
  z.strictObject({
    ...ends,
    kind: z.literal("pump"),
    speedRatio: z.number().min(0).max(2).optional(),
    curve: z.strictObject({
      points: z.array(pointSchema).min(2).max(50),
      /** "interpolated" goes through every point; "fitted" is the two- or three-term curve through few points. */
      method: z.enum(["interpolated", "fitted"]).optional(),
    }),
    /** Whether water may run backward through it; a pump keeps it back unless this says so. */
    reverseFlow: z.boolean().optional(),
  }),
  z.strictObject({
    ...ends,
    kind: z.literal("valve"),
    diameter: inSI("length", { positive: true }),
    /** K at this opening on the velocity head of the diameter; null means closed. */
    lossCoefficient: z.number().min(0).nullable().optional(),
    valve: z.string().optional(),
    opening: z.number().min(0).max(1).optional(),
    checkValve: z.boolean().optional(),
  }),
  z.strictObject({
    ...ends,
    kind: z.literal("device"),
    lossPoints: z
      .array(z.strictObject({ flow: inSI("flow", { min: 0 }), headLoss: inSI("head", { min: 0 }) }))
      .min(1)
      .max(50),
    checkValve: z.boolean().optional(),
  }),
]);

/** Nodes and links, the part of a network document that the solver takes. */
export const networkSectionSchema = z.strictObject({
  nodes: z.array(networkNodeSchema).min(1),
  links: z.array(networkLinkSchema).min(1),
});

/** The water of a network document: salinity and temperature, or its properties outright. */
export const networkWaterSchema = z.union([
  z.strictObject({
    salinity: quantity("salinity", { min: 0 }),
    temperature: quantity("temperature", { min: -2, max: 60 }),
  }),
  z.strictObject({
    density: inSI("density", { positive: true }),
    kinematicViscosity: inSI("kinematicViscosity", { positive: true }),
  }),
]);

/** The network document, version 1: a network with its water. */
export const networkDocumentSchema = z.strictObject({
  tidewright: z.literal(1),
  name: z.string().optional(),
  water: networkWaterSchema,
  network: networkSectionSchema,
});

export type NetworkSection = z.infer<typeof networkSectionSchema>;
export type NetworkDocument = z.infer<typeof networkDocumentSchema>;
