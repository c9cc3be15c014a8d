import { pinned } from "../elevation/camera.ts";
import { distance } from "../elevation/polyline.ts";
import type { Point } from "../elevation/scene.ts";
import { type Answer, idle, type PinchingSheet, type PointerInput, type SheetContext, type Step, to } from "./sheet.ts";

/** Two fingers hold the sheet: it follows their middle, and their distance is its scale. */
export const inPinchingSheet: Answer<PinchingSheet> = (state, event, { whole }) => {
  if (event.kind === "move") {
    const fingers = state.fingers.map((finger) =>
      finger.pointer === event.pointer ? { ...finger, at: event.point } : finger,
    ) as unknown as PinchingSheet["fingers"];
    const [a, b] = fingers;
    const before = Math.max(1, distance(a.from, b.from));
    const scale = (state.view.scale * distance(a.at, b.at)) / before;
    const place = state.view.toScene(middle(a.from, b.from));
    return to({ ...state, fingers }, { kind: "look", camera: pinned(whole, scale, place, middle(a.at, b.at)) });
  }
  if (event.kind === "up" || event.kind === "cancel")
    return to(state.fingers.some(({ pointer }) => pointer === event.pointer) ? idle : state);
  if (event.kind === "key") return to(event.key === "Escape" ? idle : state);
  return event.kind === "down" || event.kind === "wheel" || event.kind === "keyUp" ? to(state) : undefined;
};

/** Returns the step by which a second finger makes a pinch of what the first began; undefined where no finger is down.
 *  state with the first finger   event the second one's   context   -> Step
 *  Source: own construction. */
export function pinchStep(
  state: { readonly pointer?: number; readonly from?: Point | unknown; readonly pressed?: Point },
  event: PointerInput,
  context: SheetContext,
): Step | undefined {
  if (event.device !== "touch" || state.pointer === undefined || state.pointer === event.pointer) return undefined;
  const first = isPoint(state.from) ? state.from : (state.pressed ?? event.point);
  return to({
    kind: "PinchingSheet",
    view: context.view,
    fingers: [
      { pointer: state.pointer, from: first, at: first },
      { pointer: event.pointer, from: event.point, at: event.point },
    ],
  });
}

const isPoint = (value: unknown): value is Point =>
  typeof value === "object" && value !== null && "x" in value && "y" in value;

const middle = (a: Point, b: Point): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
