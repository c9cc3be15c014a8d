import { pulledEdits } from "../elevation/gripEdits.ts";
import type { Point } from "../elevation/scene.ts";
import { pinchStep } from "./pinchingSheet.ts";
import { type Answer, type DraggingHandle, idle, type SheetEffect, to } from "./sheet.ts";

/** A handle moves with the pointer: every move is an edit of one step, and what ends it otherwise than by lifting takes it
 *  back. */
export const inDraggingHandle: Answer<DraggingHandle> = (state, event, context) => {
  const drop = { kind: "drop", dragKey: state.dragKey } as const;
  switch (event.kind) {
    case "move":
      return event.pointer === state.pointer ? to(state, dragEdits(state, event.point, false)) : to(state);
    case "up":
      return event.pointer === state.pointer ? to(idle, dragEdits(state, event.point, true)) : to(state);
    case "cancel":
      // The browser cancels a pointer when it scrolls or zooms with it: nothing was meant to be edited.
      return event.pointer === state.pointer ? to(idle, drop) : to(state);
    case "down": {
      const pinch = pinchStep(state, event, context);
      return pinch === undefined ? to(idle, drop) : to(pinch.state, drop, ...pinch.effects);
    }
    case "key":
      return event.key === "Escape" ? to(idle, drop) : to(state);
    case "wheel":
    case "keyUp":
      return to(state);
    default:
      return to(idle, drop);
  }
};

/** Returns the edit of a drag with the pointer at a point.
 *  state   point [px]   done true when the pointer has lifted   -> effect
 *  Source: own construction. */
export function dragEdits(state: DraggingHandle, point: Point, done: boolean): SheetEffect {
  const { handle, from, view, dragKey } = state;
  return {
    kind: "edit",
    edits: pulledEdits(handle, view, from, point),
    label: { key: "drawing.step.move", values: { what: handle.label } },
    dragKey,
    done,
    hold: null,
  };
}
