import { handleAt, partAt } from "../elevation/hitTest.ts";
import { actStep } from "./actStep.ts";
import { nudgeStep } from "./nudgingHandle.ts";
import { type Answer, type Idle, idle, type PointerInput, type SheetContext, type Step, to } from "./sheet.ts";
import { gripKeys, steerStep } from "./steeringPart.ts";
import { typeStep } from "./typingQuantity.ts";

/** How far a pointer may miss what it means [px]. */
const reachOf = ({ device }: PointerInput): number => (device === "mouse" ? 14 : 22);
/** Two taps within this time and way are one double tap [ms, px]. */
const doubleTime = 380;
const doubleWay = 24;

/** Nothing is going on: a pointer takes a handle, a part or the sheet; keys act on the part in focus. */
export const inIdle: Answer<Idle> = (state, event, context) => {
  if (event.kind === "down") return pointed(state, event, context);
  if (event.kind === "keyUp" && event.key === " " && state.space) return to(idle);
  if (event.kind !== "key" || event.alt) return undefined;
  const part = event.focus ?? context.selection;
  if (event.key === " ") {
    const held = { ...idle, space: true } as const;
    return event.focus === undefined ? to(held) : to(held, { kind: "select", path: event.focus });
  }
  if (event.key === "Escape")
    return context.selection === undefined ? undefined : to(idle, { kind: "select", path: undefined });
  if (part === undefined) {
    if (event.key === "i" || event.key === "Insert") return to({ kind: "ChoosingPart", behind: true });
    if (event.key === "p") return to({ kind: "RoutingRun" });
    return undefined;
  }
  switch (event.key) {
    case "Enter":
    case "F2":
      return typeStep(context, part);
    case "Delete":
    case "Backspace":
      return actStep(context, "remove", part);
    case "i":
    case "Insert":
      return actStep(context, "insertAfter", part);
    case "I":
      return actStep(context, "insertBefore", part);
    case "b":
      return actStep(context, "branch", part);
    case "d":
      return actStep(context, "duplicate", part);
    case "p":
      return actStep(context, "route", part);
    default: {
      const grip = gripKeys[event.key];
      return grip === undefined ? nudgeStep(event, context) : steerStep(context, part, grip);
    }
  }
};

function pointed(state: Idle, event: PointerInput, context: SheetContext): Step {
  const { pointer, point, device, at } = event;
  const { view } = context;
  if (event.button === 1 || (state.space && (event.button ?? 0) === 0))
    return to({ kind: "PanningSheet", pointer, from: point, view, ...(state.space ? { space: true as const } : {}) });
  if ((event.button ?? 0) !== 0) return to(idle);
  const taken = event.over === undefined ? handleAt(context.handles, view, point, reachOf(event)) : undefined;
  const path = event.over ?? taken?.part ?? partAt(context.scene, view, point, reachOf(event))?.path;
  const again =
    path !== undefined &&
    state.tap?.path === path &&
    at - state.tap.at < doubleTime &&
    Math.hypot(point.x - state.tap.point.x, point.y - state.tap.point.y) < doubleWay;
  if (taken !== undefined)
    return to(
      {
        kind: "PointingHandle",
        pointer,
        device,
        from: point,
        handle: taken,
        view,
        dragKey: `drag-${taken.part}-${at}`,
        again,
      },
      { kind: "select", path: taken.part },
    );
  const next = { kind: "PointingPart", pointer, device, from: point, path, again } as const;
  // A finger may be about to scroll the page; only its tap takes something in hand.
  return device === "touch" ? to(next) : to(next, { kind: "select", path });
}
