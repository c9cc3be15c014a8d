import { z } from "zod";
import { quantity } from "./quantity.ts";

const side = { positive: true, max: 50 } as const;

/** A place in the display as seen from above: along from the left wall, and back from the front glass. */
export const planPoint = z.tuple([
  quantity("length", { min: -10, max: 50 }),
  quantity("length", { min: -10, max: 50 }),
]);

/** Animal groups with their own needs of flow; the living targets hang on them. */
export const animalGroups = [
  "fish",
  "calmFish",
  "softCorals",
  "largePolypStony",
  "branchingStony",
  "mixedReef",
] as const;
export type AnimalGroup = (typeof animalGroups)[number];

/** The display tank: inner sizes, the height it stands at, what lives in it. */
export const displaySchema = z.strictObject({
  length: quantity("length", side),
  width: quantity("length", side),
  height: quantity("length", side),
  /** Height of the display's floor above the room's floor. */
  standHeight: quantity("length", { min: 0, max: 10 }),
  /** Share of the water volume taken by rock and sand, 0 to 0.9. */
  rockShare: z.number().min(0).max(0.9).optional(),
  zones: z
    .array(
      z.strictObject({
        name: z.string(),
        animals: z.enum(animalGroups),
        /** Share of the display, 0 to 1. */
        share: z.number().min(0).max(1).optional(),
        /** Where it lies as seen from above: two opposite corners, each along from the left wall and back from the front. */
        area: z.tuple([planPoint, planPoint]).optional(),
      }),
    )
    .optional(),
});

/** The siphon of a hang-on overflow: tubes over the glass from a box inside, whose rim is the weir, to the box outside. */
export const overflowSiphonSchema = z.strictObject({
  /** Tubes side by side, all alike. */
  tubes: z.number().int().min(1).max(12),
  /** Inner diameter of each. */
  bore: quantity("length", { positive: true, max: 0.5 }),
  /** Length of each along its middle, from mouth to mouth. */
  length: quantity("length", side),
  /** Highest point of the water's way above the display's floor. */
  crest: quantity("length", side),
  /** Lower ends of the tubes in both boxes above the display's floor: below that they draw air. */
  mouth: quantity("length", { min: -5, max: 50 }),
  /** The box inside, which the weir runs into; its floor above the display's. */
  innerBox: z.strictObject({
    length: quantity("length", side),
    width: quantity("length", side),
    floor: quantity("length", { min: 0, max: 50 }),
  }),
});

/** The weir and the box behind it that the drains leave from. */
export const overflowSchema = z.strictObject({
  kind: z.enum(["internalBox", "externalBox", "throughWall", "hangOn"]),
  /** Of a hang-on overflow, and of no other. */
  siphon: overflowSiphonSchema.optional(),
  weir: z.strictObject({
    length: quantity("length", side),
    /** Height of the crest above the display's floor. */
    crest: quantity("length", side),
    /** Open share of a toothed crest; 1 for a plain one. */
    toothOpenShare: z.number().gt(0).max(1).optional(),
    toothHeight: quantity("length", { min: 0, max: 1 }).optional(),
  }),
  box: z.strictObject({
    length: quantity("length", side),
    width: quantity("length", side),
    /** Floor and rim of the box above the display's floor. */
    floor: quantity("length", { min: -5, max: 50 }),
    rim: quantity("length", side),
    /** The wall it hangs on, and how far its near end is from the left wall, or on a side wall from the front; the back
     *  wall's left end where nothing is said. */
    at: z
      .strictObject({ wall: z.enum(["back", "left", "right"]), along: quantity("length", { min: 0, max: 50 }) })
      .optional(),
  }),
});

/** The sump: chambers in the direction of flow and the level kept in the last one. */
export const sumpSchema = z.strictObject({
  /** Height of the sump's floor above the room's floor. */
  floor: quantity("length", { min: -10, max: 10 }),
  /** Height of the glass above the sump's floor. */
  height: quantity("length", side),
  /** In the direction of flow; the last one is the return chamber. */
  chambers: z
    .array(
      z.strictObject({
        id: z.string().regex(/^[A-Za-z0-9_-]+$/, "letters, digits, - and _ only"),
        name: z.string().optional(),
        length: quantity("length", side),
        width: quantity("length", side),
        /** Height of the baffle after this chamber, which the water flows over. */
        baffle: quantity("length", side).optional(),
      }),
    )
    .min(1)
    .max(12),
  /** Depth of water in the return chamber when running, kept by the top-off. */
  operatingLevel: quantity("length", { positive: true, max: 10 }),
});

/** The automatic top-off: fresh water from a reservoir that makes good what evaporates and keeps the operating level. */
export const topOffSchema = z.strictObject({
  /** Fresh water in the reservoir when full. */
  reservoir: quantity("volume", { positive: true, max: 100 }),
  /** What its pump or valve lets in while it runs. */
  flow: quantity("flow", { positive: true, max: 0.01 }),
  /** How far the level falls before it starts; 5 mm where nothing is said. */
  band: quantity("length", { positive: true, max: 0.2 }).optional(),
});

export type Display = z.infer<typeof displaySchema>;
export type Overflow = z.infer<typeof overflowSchema>;
export type OverflowSiphon = z.infer<typeof overflowSiphonSchema>;
export type Sump = z.infer<typeof sumpSchema>;
export type TopOff = z.infer<typeof topOffSchema>;
