import { panBy } from "../elevation/camera.ts";
import { type Answer, idle, type PanningSheet, to } from "./sheet.ts";

/** The sheet moves with the pointer until it lifts. */
export const inPanningSheet: Answer<PanningSheet> = (state, event, { whole }) => {
  const rest = state.space ? { ...idle, space: true as const } : idle;
  if (event.kind === "move") {
    if (event.pointer !== state.pointer) return to(state);
    const by = { x: event.point.x - state.from.x, y: event.point.y - state.from.y };
    return to(state, { kind: "look", camera: panBy(whole, state.view, by) });
  }
  if (event.kind === "keyUp" && event.key === " ") {
    const { space: _space, ...still } = state;
    return to(still);
  }
  if (event.kind === "up" || event.kind === "cancel") return to(event.pointer === state.pointer ? rest : state);
  if (event.kind === "key") return to(event.key === "Escape" ? idle : state);
  return event.kind === "down" || event.kind === "wheel" || event.kind === "keyUp" ? to(state) : undefined;
};
