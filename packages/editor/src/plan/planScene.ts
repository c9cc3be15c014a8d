import type { Extent, Figure, Point, Shape } from "../elevation/scene.ts";

/** Where a hand's move on the plan is written: the quantities that say a place, or the angle that says an aim. */
export type PlanHandle =
  | {
      readonly kind: "place";
      readonly part: string;
      /** What is moved, for a reader: "place of the pump", "corner of the zone". */
      readonly label: "place" | "corner" | "opposite corner";
      readonly at: Point;
      /** Path of the pair of lengths, along and back. */
      readonly path: string;
      /** The third length of the pair's list, kept as it is; pumps have one. */
      readonly height?: { readonly value: number; readonly unit: string };
      readonly unit: string;
      readonly within: Extent;
    }
  | {
      readonly kind: "turn";
      readonly part: string;
      /** Middle about which it turns, and the grip's way from it [m]. */
      readonly at: Point;
      readonly reach: number;
      /** Angle counter-clockwise from the tank's length [rad]. */
      readonly yaw: number;
      readonly path: string;
      /** Written whole where the document says nothing of an aim yet. */
      readonly pitch: { readonly value: number; readonly unit: string };
    }
  | {
      readonly kind: "wall";
      readonly part: string;
      readonly at: Point;
      readonly path: string;
      readonly unit: string;
      readonly display: Extent;
      /** Length of the box along its wall [m]. */
      readonly length: number;
      /** How far the middle of the box is from its near end's wall [m]. */
      readonly wall: "back" | "left" | "right";
    };

/** A part that can be reached on the plan. */
export interface PlanPart {
  readonly path: string;
  readonly kind: "display" | "zone" | "box" | "hole" | "outlet" | "tankPump";
  /** Its own name, where it bears one; else the words for its kind stand for it. */
  readonly name: string | undefined;
  readonly anchor: Point;
  readonly figures: readonly Figure[];
  /** Direction in which its label stands best, counter-clockwise from the tank's length [rad]. */
  readonly lean: number;
  /** True where the document says where it is; else the plan shows a likely place. */
  readonly placed: boolean;
}

/** The tank from above in metres: x along from the left wall, y back from the front glass. */
export interface PlanScene {
  readonly bounds: Extent;
  readonly display: Extent;
  readonly shapes: readonly Shape[];
  readonly parts: readonly PlanPart[];
  readonly handles: readonly PlanHandle[];
  /** Zones that the document gives no area: they are listed, and can be drawn in. */
  readonly zonesWithoutArea: readonly { readonly path: string; readonly name: string }[];
}
