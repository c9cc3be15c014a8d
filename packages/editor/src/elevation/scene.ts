import type { Dimension } from "@tidewright/units";

/** Words a number in the user's units; the SI value goes in, text with its unit comes out. */
export type Format = (si: number, dimension: Dimension) => string;

/** A place in the picture [m]: x along the display, y up from the room's floor. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** An upright rectangle [m]. */
export interface Extent {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** How a line or an area is inked; the style sheet says what each looks like on paper. */
export type Ink =
  | "outline"
  | "thin"
  | "hidden"
  | "glass"
  | "ground"
  | "stand"
  | "rock"
  | "teeth"
  | "water"
  | "deepWater"
  | "surface"
  | "nappe"
  | "jet"
  | "body";

/** A closed area with its outline. */
export interface AreaShape {
  readonly kind: "area";
  readonly path: string;
  readonly ink: Ink;
  readonly points: readonly Point[];
}

/** An open line. */
export interface LineShape {
  readonly kind: "line";
  readonly path: string;
  readonly ink: Ink;
  readonly points: readonly Point[];
}

/** How much of a pipe the water fills: all of it, a film on its wall, or none. */
export type PipeWater = "full" | "film" | "dry";

/** A length of pipe along its axis, drawn as wide as it is. */
export interface PipeShape {
  readonly kind: "pipe";
  readonly path: string;
  readonly points: readonly Point[];
  /** Inner diameter [m]. */
  readonly bore: number;
  readonly water: PipeWater;
  /** True where its ends reach round the corner into the next pipe, as those of a header do. */
  readonly square?: boolean;
}

/** Drafting symbols after ISO 14617 and ISO 10628-2: valve, pump, check valve and the small marks between pipes. */
export type SymbolName =
  | "valve"
  | "ballValve"
  | "butterflyValve"
  | "checkValve"
  | "pump"
  | "tankPump"
  | "elbow"
  | "union"
  | "reducer"
  | "bulkhead"
  | "strainer"
  | "fitting"
  | "nozzle"
  | "siphonBreak"
  | "powerStrip"
  | "tee"
  | "waterLevel"
  | "flowArrow";

/** A symbol on the line: `angle` is the direction of flow, counter-clockwise from +x [rad]; `size` its width [m]. */
export interface SymbolShape {
  readonly kind: "symbol";
  readonly path: string;
  readonly symbol: SymbolName;
  readonly at: Point;
  readonly angle: number;
  /** Direction of flow after a bend, where it differs [rad]. */
  readonly out?: number;
  readonly size: number;
  /** Share of full opening or of full speed, 0 to 1. */
  readonly share?: number;
  /** How many fittings the symbol stands for. */
  readonly count?: number;
}

/** A device as a box with its name in it. */
export interface BoxShape {
  readonly kind: "box";
  readonly path: string;
  readonly extent: Extent;
  readonly text: string;
}

export type Shape = AreaShape | LineShape | PipeShape | SymbolShape | BoxShape;

/** One number that belongs to a part: its SI value, its dimension, and the word before or after it. */
export interface Figure {
  readonly before?: string;
  readonly value: number;
  readonly dimension: Dimension | "share";
  readonly after?: string;
}

/** Returns a distance to a rim in words: below it to spare, or over it.
 *  freeboard distance from the water up to the rim [m]   -> figure
 *  Findings: none. Throws: never.
 *  Valid: any; negative is over the rim.
 *  Source: own construction. */
export function rimFigure(freeboard: number): Figure {
  return { value: Math.abs(freeboard), dimension: "length", after: freeboard < 0 ? "over the rim" : "to the rim" };
}

/** Where a dragged quantity is written: its path, the unit the user typed, and which way it grows. */
export interface DragTarget {
  readonly path: string;
  /** Unit of the quantity in the design; none for a bare share. */
  readonly unit?: string;
  /** Value in the design's own unit when the scene was laid out. */
  readonly value: number;
  /** +1 where the value grows along the handle's axis, -1 where it shrinks. */
  readonly sign: 1 | -1;
}

interface HandleBase {
  /** Path of the part that is held. */
  readonly part: string;
  readonly label: string;
  readonly at: Point;
}

/** One number to take hold of: a level, a length, a speed. */
export interface LineHandle extends HandleBase {
  /** "x" and "y" follow the pointer metre for metre; "arc" turns a share from 0 to 1. */
  readonly axis: "x" | "y" | "arc";
  readonly targets: readonly [DragTarget, ...DragTarget[]];
  /** Bounds of the first target's value [m, or a share]. */
  readonly min: number;
  readonly max: number;
}

/** A place to take hold of, along the tank and up: it follows the pointer both ways. */
export interface PlaceHandle extends HandleBase {
  readonly axis: "place";
  readonly along: BoundTarget;
  readonly up: BoundTarget;
}

/** An aim to turn up and down. */
export interface AimHandle extends HandleBase {
  readonly axis: "aim";
  /** Path of the aim, which is written whole. */
  readonly path: string;
  readonly yaw: { readonly value: number; readonly unit: string };
  /** Angle above the horizontal [rad]. */
  readonly pitch: number;
  /** Share of the aim's level part that is seen from the front: +1 where it points right, -1 left, never less than a half. */
  readonly across: number;
}

/** A target with the bounds of its value [m]. */
export interface BoundTarget extends DragTarget {
  readonly unit: string;
  readonly min: number;
  readonly max: number;
}

/** Something to take hold of. */
export type Handle = LineHandle | PlaceHandle | AimHandle;

/** A part one can reach: by pointer, by keyboard in the order of flow, by a finding. */
export interface ScenePart {
  readonly path: string;
  /** What it is, in a few words: "main drain", "elbow 90 x 3". */
  readonly name: string;
  readonly anchor: Point;
  readonly figures: readonly Figure[];
  /** Words that belong to the figures: a regime, a state. */
  readonly state?: string;
  /** Width of the box that bears its name where it is wide enough for it, so that the label need not [m]. */
  readonly lettered?: number;
  /** Bodies in which the label would seem to speak of something else. */
  readonly notIn?: readonly Extent[];
  /** How many of its numbers the label shows until it is in hand; two where nothing is said. */
  readonly shown?: number;
  /** True where the label should be slim, one number to a line. */
  readonly narrow?: boolean;
  /** 1 is shown on the smallest screen, 2 on a tablet, 3 on a desk, 4 only when selected. */
  readonly rank: 1 | 2 | 3 | 4;
  /** Which side of the anchor the label likes best, counter-clockwise from +x [rad]. */
  readonly lean: number;
  /** The number that its arrow keys change. */
  readonly handle?: LineHandle;
  /** What else can be taken hold of at it. */
  readonly grips?: readonly Handle[];
}

/** A numbered finding at the part it is about. */
export interface Flag {
  readonly path: string;
  readonly at: Point;
  readonly severity: "danger" | "warning" | "notice";
  /** Place in the list of findings, from 1. */
  readonly number: number;
}

/** A dimension line in drafting style, from `a` to `b`, set off to one side by `offset` steps. */
export interface DimensionLine {
  readonly path: string;
  readonly a: Point;
  readonly b: Point;
  readonly side: "left" | "right" | "below" | "above";
  readonly step: number;
  /** What is measured [m]. */
  readonly value: number;
}

/** The whole elevation in metres: shapes in painting order, parts in the order of flow. */
export interface Scene {
  readonly name: string;
  readonly bounds: Extent;
  readonly shapes: readonly Shape[];
  readonly parts: readonly ScenePart[];
  readonly flags: readonly Flag[];
  readonly dimensions: readonly DimensionLine[];
  /** Numbers for the title block. */
  readonly summary: readonly Figure[];
}

/** Levels from elsewhere, such as one moment of a film: elevations above the room's floor [m]. */
export interface Levels {
  readonly display?: number;
  readonly box?: number;
  /** One for each chamber, in order. */
  readonly chambers?: readonly number[];
}
