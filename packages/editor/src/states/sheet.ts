import type { Design, Edit } from "@tidewright/design";
import type { Addition } from "../edits/addThings.ts";
import type { RunEnd } from "../edits/drawRun.ts";
import type { Saying } from "../edits/outcome.ts";
import type { PartAction } from "../edits/partActions.ts";
import type { PartChoice } from "../edits/partChoices.ts";
import type { Camera } from "../elevation/camera.ts";
import type { Handle, Point, Scene } from "../elevation/scene.ts";
import type { DrawnSpot } from "../elevation/spotOnRun.ts";
import type { View } from "../elevation/view.ts";

/** What a hand touches the sheet with. */
export type Device = "mouse" | "pen" | "touch";

/** What a pointer does, in points of the sheet [px]; `at` is the time [ms]. */
export interface PointerInput {
  readonly kind: "down" | "move" | "up" | "cancel";
  readonly pointer: number;
  readonly device: Device;
  readonly point: Point;
  readonly at: number;
  /** 0 main, 1 middle, 2 other. */
  readonly button?: number;
  readonly shift?: boolean;
  /** Part whose label or flag was hit, which counts before what lies below it. */
  readonly over?: string;
}

/** A key, and the part that has the focus. */
export interface KeyInput {
  readonly kind: "key" | "keyUp";
  readonly key: string;
  readonly at: number;
  readonly shift?: boolean;
  readonly alt?: boolean;
  readonly focus?: string;
}

/** Everything that can happen to the sheet. */
export type SheetEvent =
  | PointerInput
  | KeyInput
  /** `amount` above zero goes away from the sheet [px of wheel]. */
  | { readonly kind: "wheel"; readonly point: Point; readonly amount: number }
  | { readonly kind: "tool"; readonly tool: "insert" | "route" | "zoomIn" | "zoomOut" | "whole" | "help" | "stop" }
  | { readonly kind: "choose"; readonly choice: PartChoice }
  | { readonly kind: "add"; readonly what: Addition }
  | { readonly kind: "act"; readonly action: PartAction; readonly path: string }
  /** The field at a label has closed. */
  | { readonly kind: "typed" };

/** What the sheet stands for at the moment of an event. */
export interface SheetContext {
  readonly design: Design;
  readonly scene: Scene;
  /** As it is shown. */
  readonly view: View;
  /** Of the whole sheet. */
  readonly whole: View;
  readonly handles: readonly Handle[];
  readonly selection: string | undefined;
}

/** What the page has to do. */
export type SheetEffect =
  | { readonly kind: "select"; readonly path: string | undefined }
  | {
      readonly kind: "edit";
      readonly edits: readonly Edit[];
      readonly label: Saying;
      /** Edits with the same key are one step. */
      readonly dragKey?: string;
      readonly done: boolean;
      /** Part in hand once the edits are made; `null` keeps the one that is. */
      readonly hold?: string | null;
    }
  /** Takes a drag back that turned out to be none. */
  | { readonly kind: "drop"; readonly dragKey: string }
  | { readonly kind: "look"; readonly camera: Camera | undefined }
  | { readonly kind: "refuse"; readonly why: Saying }
  | { readonly kind: "rank"; readonly loop: number }
  | { readonly kind: "help" };

/** Nothing is going on; a tap just made waits for its second half, Space waits for a drag. */
export interface Idle {
  readonly kind: "Idle";
  readonly tap?: { readonly path: string; readonly at: number; readonly point: Point };
  readonly space?: true;
}
/** A pointer is down on a part or on empty paper. */
export interface PointingPart {
  readonly kind: "PointingPart";
  readonly pointer: number;
  readonly device: Device;
  readonly from: Point;
  readonly path: string | undefined;
  readonly again: boolean;
}
/** A pointer is down on a handle and has not moved yet. */
export interface PointingHandle {
  readonly kind: "PointingHandle";
  readonly pointer: number;
  readonly device: Device;
  readonly from: Point;
  readonly handle: Handle;
  readonly view: View;
  readonly dragKey: string;
  readonly again: boolean;
}
/** A handle moves with the pointer; the picture keeps its scale. */
export interface DraggingHandle extends Omit<PointingHandle, "kind" | "again"> {
  readonly kind: "DraggingHandle";
}
/** Arrow keys move a handle; the presses in a row are one step. */
export interface NudgingHandle {
  readonly kind: "NudgingHandle";
  readonly part: string;
  readonly dragKey: string;
}
/** Arrow keys move a part or turn its aim until Enter or Escape; the presses up to a key's release are one step. */
export interface SteeringPart {
  readonly kind: "SteeringPart";
  readonly part: string;
  readonly grip: "place" | "aim";
  /** The presses that are not one step yet. */
  readonly dragKey?: string;
}
/** The palette is open; `path` is the part that the choice goes beside. */
export interface ChoosingPart {
  readonly kind: "ChoosingPart";
  readonly path?: string;
  readonly behind: boolean;
}
/** A part is in the hand and looks for its place. */
export interface InsertingPart {
  readonly kind: "InsertingPart";
  readonly choice: PartChoice;
  readonly spot?: DrawnSpot;
  /** The pointer that is down. */
  readonly pointer?: number;
}
/** A line is being drawn from one end to another. */
export interface RoutingRun {
  readonly kind: "RoutingRun";
  readonly from?: RunEnd;
  /** Where the pointer is [m], or the end it is over. */
  readonly at?: Point;
  readonly to?: RunEnd;
  readonly pointer?: number;
  readonly pressed?: Point;
  /** The stroke that chose the beginning is still down. */
  readonly fresh?: true;
}
/** The sheet moves with the pointer. */
export interface PanningSheet {
  readonly kind: "PanningSheet";
  readonly pointer: number;
  readonly from: Point;
  readonly view: View;
  readonly space?: true;
}
/** Two fingers hold the sheet. */
export interface PinchingSheet {
  readonly kind: "PinchingSheet";
  readonly view: View;
  readonly fingers: readonly [Finger, Finger];
}
/** A finger on the sheet: where it came down and where it is [px]. */
export interface Finger {
  readonly pointer: number;
  readonly from: Point;
  readonly at: Point;
}
/** A field is open at a part's label. */
export interface TypingQuantity {
  readonly kind: "TypingQuantity";
  readonly path: string;
}

/** What is going on on the sheet. */
export type SheetState =
  | Idle
  | PointingPart
  | PointingHandle
  | DraggingHandle
  | NudgingHandle
  | SteeringPart
  | ChoosingPart
  | InsertingPart
  | RoutingRun
  | PanningSheet
  | PinchingSheet
  | TypingQuantity;

/** A state after an event and what the page has to do; `undefined` from a state's own file leaves the event to all states. */
export interface Step {
  readonly state: SheetState;
  readonly effects: readonly SheetEffect[];
}

/** How one state answers an event; undefined leaves it to what all states have in common. */
export type Answer<State extends SheetState> = (
  state: State,
  event: SheetEvent,
  context: SheetContext,
) => Step | undefined;

/** The state in which nothing is going on. */
export const idle: Idle = { kind: "Idle" };

/** Returns a step to a state. Source: own construction. */
export const to = (state: SheetState, ...effects: SheetEffect[]): Step => ({ state, effects });
