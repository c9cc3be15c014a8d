import { z } from "zod";
import { placeSchema, runSchema } from "./parts.ts";
import { quantity } from "./quantity.ts";
import { planPoint } from "./vessels.ts";

/** What a drain is there for: to carry the flow, to carry the rest of it, or to stay dry until the others fail. */
export const drainRoles = ["main", "secondary", "emergency"] as const;
/** How a drain works, from a pipe that takes air along to one that runs full. */
export const drainKinds = ["ventedStandpipe", "throttledSiphon", "openChannel", "dryStandpipe"] as const;
export type DrainRole = (typeof drainRoles)[number];

/** One gravity line from the overflow box down to the sump. */
export const drainSchema = z.strictObject({
  name: z.string(),
  role: z.enum(drainRoles),
  kind: z.enum(drainKinds),
  inlet: z.strictObject({
    /** Height of the inlet's rim above the display's floor. */
    elevation: quantity("length", { min: -5, max: 50 }),
    /** Diameter of the rim or strainer where it is larger than the pipe. */
    diameter: quantity("length", { positive: true, max: 1 }).optional(),
    /** Where its hole or pipe is as seen from above; in a row through the box where nothing is said. */
    at: planPoint.optional(),
  }),
  /** For a throttled siphon: the share of the whole flow that its valve is set for. Without it the valve's opening stands. */
  share: z.number().gt(0).lt(1).optional(),
  run: runSchema,
});

/** Where a pump stands: under water in the sump, dry beside it, or in the display. */
export const placements = ["inSump", "external", "inTank"] as const;
export type Placement = (typeof placements)[number];

/** One pump of a loop; several stand side by side or one behind the other. */
export const loopPumpSchema = z.strictObject({
  /** A pump of the catalogue; without it the loop waits for a choice. */
  ref: z.string().optional(),
  /** Speed as a share of full speed, 0 to 1. */
  speed: z.number().min(0).max(1).optional(),
  placed: z.enum(placements),
  /** Height of the impeller above the room's floor; for a pump in the sump, the sump's floor. */
  elevation: quantity("length", { min: -10, max: 20 }).optional(),
  /** A separately bought controller is part of the order. */
  controller: z.boolean().optional(),
  /** A swing check valve of its own at its outlet, in the size of the run: what a pump beside another needs. */
  checkValve: z.boolean().optional(),
  /** What runs back through it when it stands, as measured: this flow at this head. An estimate where nothing is said. */
  backflow: z
    .strictObject({
      flow: quantity("flow", { positive: true, max: 1 }),
      head: quantity("head", { positive: true, max: 100 }),
    })
    .optional(),
});

/** A pressurised circuit: from a place, through pumps, along a tree of runs, to its outlets. */
export const loopSchema = z.strictObject({
  name: z.string(),
  /** "return" lifts from the sump to the display, "closed" goes round in the display, "side" serves devices only. */
  purpose: z.enum(["return", "closed", "side"]).optional(),
  from: z.strictObject({ place: placeSchema, depth: quantity("length", { min: 0, max: 5 }).optional() }),
  /** Parts between the place and the pump, if any (bulkhead, pipe, valve). */
  suction: runSchema.optional(),
  pumps: z.array(loopPumpSchema).min(1).max(6),
  arrangement: z.enum(["parallel", "series"]).optional(),
  run: runSchema,
});

/** A pump that hangs in the display and moves its water without lifting it. */
export const tankPumpSchema = z.strictObject({
  name: z.string().optional(),
  ref: z.string(),
  speed: z.number().min(0).max(1).optional(),
  /** Place in the display: along, across, up from the floor. */
  at: z.tuple([quantity("length"), quantity("length"), quantity("length")]),
  aim: z.strictObject({ yaw: quantity("angle"), pitch: quantity("angle") }).optional(),
  /** How it runs; the mean share of full flow it gives. */
  programme: z
    .strictObject({
      kind: z.enum(["steady", "alternating", "pulsing", "random", "tide"]),
      meanShare: z.number().min(0).max(1).optional(),
    })
    .optional(),
});

export type Drain = z.infer<typeof drainSchema>;
export type Loop = z.infer<typeof loopSchema>;
export type LoopPump = z.infer<typeof loopPumpSchema>;
export type TankPump = z.infer<typeof tankPumpSchema>;
