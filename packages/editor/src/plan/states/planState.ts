import type { Edit } from "@tidewright/design";
import type { Point } from "../../elevation/scene.ts";
import type { View } from "../../elevation/view.ts";
import type { PlanHandle, PlanScene } from "../planScene.ts";

/** Nothing is going on. */
export interface Idle {
  readonly kind: "Idle";
}

/** A pointer is on a grip and has not moved yet. */
export interface PointingGrip {
  readonly kind: "PointingGrip";
  readonly pointer: number;
  readonly handle: PlanHandle;
  readonly from: Point;
  /** Way that still counts as a tap [px]: a fingertip rolls. */
  readonly slack: number;
  readonly view: View;
  readonly dragKey: string;
}

/** A grip follows the pointer. */
export interface DraggingGrip extends Omit<PointingGrip, "kind"> {
  readonly kind: "DraggingGrip";
  readonly edits: readonly Edit[];
}

export type PlanState = Idle | PointingGrip | DraggingGrip;

/** What can happen to the plan, in points of the sheet [px]. */
export type PlanEvent =
  | {
      readonly kind: "down" | "move" | "up" | "cancel";
      readonly pointer: number;
      readonly point: Point;
      readonly touch: boolean;
      readonly at: number;
    }
  | { readonly kind: "escape" }
  | {
      readonly kind: "arrow";
      /** Unit step: x along, y back. */
      readonly way: Point;
      readonly large: boolean;
      readonly focus: string;
      /** True to turn an aim or move the opposite corner instead of the place. */
      readonly second: boolean;
      readonly at: number;
    };

/** What the page has to do. */
export type PlanEffect =
  | { readonly kind: "select"; readonly path: string | undefined }
  | { readonly kind: "edit"; readonly edits: readonly Edit[]; readonly dragKey: string; readonly done: boolean }
  | { readonly kind: "drop"; readonly dragKey: string };

/** What the plan stands for at an event. */
export interface PlanContext {
  readonly scene: PlanScene;
  readonly view: View;
  readonly handles: readonly PlanHandle[];
}

/** The state after an event, and what the page has to do. */
export interface PlanStep {
  readonly state: PlanState;
  readonly effects: readonly PlanEffect[];
}

/** Nothing is going on. */
export const planIdle: Idle = { kind: "Idle" };

/** A state with its effects. */
export const planTo = (state: PlanState, ...effects: readonly PlanEffect[]): PlanStep => ({ state, effects });
