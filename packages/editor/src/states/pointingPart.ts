import { pinchStep } from "./pinchingSheet.ts";
import { type Answer, idle, type PointingPart, to } from "./sheet.ts";
import { typeStep } from "./typingQuantity.ts";

/** Way that still counts as a tap [px]: a fingertip rolls. */
export const slackOf = (device: string): number => (device === "mouse" ? 3 : 8);

/** A pointer is down on a part: lifted where it came down it is a tap, and a second tap opens the part's field. */
export const inPointingPart: Answer<PointingPart> = (state, event, context) => {
  if (event.kind === "down") return pinchStep(state, event, context) ?? to(idle);
  if (event.kind === "cancel") return event.pointer === state.pointer ? to(idle) : undefined;
  if (event.kind === "move") {
    if (event.pointer !== state.pointer) return to(state);
    const far = Math.hypot(event.point.x - state.from.x, event.point.y - state.from.y) > slackOf(state.device) * 2;
    // A finger stays what it is, so that a second one can still make a pinch of it.
    return to(far && state.device !== "touch" ? idle : state);
  }
  if (event.kind !== "up" || event.pointer !== state.pointer) return undefined;
  const { path } = state;
  const far = Math.hypot(event.point.x - state.from.x, event.point.y - state.from.y) > slackOf(state.device) * 2;
  if (far) return to(idle);
  if (path !== undefined && state.again) {
    const typed = typeStep(context, path);
    if (typed.state.kind === "TypingQuantity") return typed;
  }
  const tap = path === undefined ? idle : { ...idle, tap: { path, at: event.at, point: event.point } };
  return state.device === "touch" ? to(tap, { kind: "select", path }) : to(tap);
};
