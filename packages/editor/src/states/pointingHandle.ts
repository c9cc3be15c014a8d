import { dragEdits } from "./draggingHandle.ts";
import { pinchStep } from "./pinchingSheet.ts";
import { slackOf } from "./pointingPart.ts";
import { type Answer, idle, type PointingHandle, to } from "./sheet.ts";
import { typeStep } from "./typingQuantity.ts";

/** A pointer is down on a handle: from a way on that is no tap any more it drags. */
export const inPointingHandle: Answer<PointingHandle> = (state, event, context) => {
  if (event.kind === "down") return pinchStep(state, event, context) ?? to(idle);
  if (event.kind === "cancel") return event.pointer === state.pointer ? to(idle) : undefined;
  if (event.kind === "move") {
    if (event.pointer !== state.pointer) return to(state);
    if (Math.hypot(event.point.x - state.from.x, event.point.y - state.from.y) < slackOf(state.device))
      return to(state);
    const { again: _again, ...held } = state;
    const dragging = { ...held, kind: "DraggingHandle" } as const;
    return to(dragging, dragEdits(dragging, event.point, false));
  }
  if (event.kind !== "up" || event.pointer !== state.pointer) return undefined;
  if (state.again) {
    const typed = typeStep(context, state.handle.part);
    if (typed.state.kind === "TypingQuantity") return typed;
  }
  return to({ ...idle, tap: { path: state.handle.part, at: event.at, point: event.point } });
};
