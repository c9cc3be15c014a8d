import type { Part } from "@tidewright/design";
import type { MessageKey } from "@tidewright/words";
import type { SymbolName } from "../elevation/scene.ts";

/** The parts that can be put into a run. */
export const partChoiceNames = [
  "pipe",
  "elbow",
  "bend45",
  "union",
  "valve",
  "gateValve",
  "checkValve",
  "device",
  "tee",
  "siphonBreak",
] as const;
/** One of `partChoiceNames`. */
export type PartChoice = (typeof partChoiceNames)[number];

/** How a choice looks in the palette and what it is called. */
export interface ChoiceLook {
  readonly symbol: SymbolName | "box" | "pipe";
  readonly name: MessageKey;
}

/** Symbol and name of every choice. */
export const choiceLooks: Readonly<Record<PartChoice, ChoiceLook>> = {
  pipe: { symbol: "pipe", name: "drawing.part.pipe" },
  elbow: { symbol: "elbow", name: "drawing.part.elbow" },
  bend45: { symbol: "elbow", name: "drawing.part.bend45" },
  union: { symbol: "union", name: "drawing.part.union" },
  valve: { symbol: "ballValve", name: "drawing.part.valve" },
  gateValve: { symbol: "valve", name: "drawing.part.gateValve" },
  checkValve: { symbol: "checkValve", name: "drawing.part.checkValve" },
  device: { symbol: "box", name: "drawing.part.device" },
  tee: { symbol: "tee", name: "drawing.part.tee" },
  siphonBreak: { symbol: "siphonBreak", name: "drawing.part.siphonBreak" },
};

/** Returns a plain part as it comes out of the drawer, in the size of its neighbours; a tee and a siphon break are no
 *  plain parts, since they change what is around them.
 *  choice   series size of the neighbours   unit of lengths in the design   -> part; undefined for those two
 *  Example: plainPart("union", "pn16-32", "mm")  ->  {"kind": "fitting", "fitting": "union"} */
export function plainPart(choice: PartChoice, series: string, unit: string): Part | undefined {
  switch (choice) {
    case "pipe":
      return { kind: "pipe", series, length: unit === "in" || unit === "ft" ? { value: 12, unit: "in" } : mm(300) };
    case "elbow":
      return { kind: "fitting", fitting: "elbow90" };
    case "bend45":
      return { kind: "fitting", fitting: "elbow45" };
    case "union":
      return { kind: "fitting", fitting: "union" };
    case "valve":
      return { kind: "valve", valve: "ball", opening: 1 };
    case "gateValve":
      return { kind: "valve", valve: "gate", opening: 1 };
    case "checkValve":
      return { kind: "fitting", fitting: "swingCheck" };
    case "device":
      return { kind: "device", ref: "uv-36" };
    default:
      return undefined;
  }
}

const mm = (value: number) => ({ value, unit: "mm" });
