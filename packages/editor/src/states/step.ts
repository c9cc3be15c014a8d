import { addThing } from "../edits/addThings.ts";
import { panBy, zoomAt } from "../elevation/camera.ts";
import { actStep } from "./actStep.ts";
import { inChoosingPart } from "./choosingPart.ts";
import { inDraggingHandle } from "./draggingHandle.ts";
import { inIdle } from "./idle.ts";
import { inInsertingPart } from "./insertingPart.ts";
import { inNudgingHandle } from "./nudgingHandle.ts";
import { outcomeStep } from "./outcomeStep.ts";
import { inPanningSheet } from "./panningSheet.ts";
import { inPinchingSheet } from "./pinchingSheet.ts";
import { inPointingHandle } from "./pointingHandle.ts";
import { inPointingPart } from "./pointingPart.ts";
import { inRoutingRun } from "./routingRun.ts";
import { idle, type SheetContext, type SheetEvent, type SheetState, type Step, to } from "./sheet.ts";
import { inSteeringPart } from "./steeringPart.ts";
import { inTypingQuantity } from "./typingQuantity.ts";

/** One press of a zoom key or button. */
const zoomStep = 1.5;
/** One press of an arrow key with Alt moves the sheet so far [px]. */
const panStep = 80;

/** Returns the state after an event and what the page has to do about it: every gesture and every key of the drawing.
 *  state   event in points of the sheet   context what the sheet stands for   -> Step
 *  Throws: never. Valid: any event in any state; Escape leads back to Idle within two presses, and a gesture that is
 *  cancelled leaves the document as it was.
 *  Source: own construction, a state chart with one file for each state. */
export function step(state: SheetState, event: SheetEvent, context: SheetContext): Step {
  return own(state, event, context) ?? common(state, event, context);
}

function own(state: SheetState, event: SheetEvent, context: SheetContext): Step | undefined {
  switch (state.kind) {
    case "Idle":
      return inIdle(state, event, context);
    case "PointingPart":
      return inPointingPart(state, event, context);
    case "PointingHandle":
      return inPointingHandle(state, event, context);
    case "DraggingHandle":
      return inDraggingHandle(state, event, context);
    case "NudgingHandle":
      return inNudgingHandle(state, event, context);
    case "SteeringPart":
      return inSteeringPart(state, event, context);
    case "ChoosingPart":
      return inChoosingPart(state, event, context);
    case "InsertingPart":
      return inInsertingPart(state, event, context);
    case "RoutingRun":
      return inRoutingRun(state, event, context);
    case "PanningSheet":
      return inPanningSheet(state, event, context);
    case "PinchingSheet":
      return inPinchingSheet(state, event, context);
    case "TypingQuantity":
      return inTypingQuantity(state, event, context);
  }
}

/** What holds in every state: looking closer, choosing tools, and Escape. */
function common(state: SheetState, event: SheetEvent, context: SheetContext): Step {
  const { view, whole } = context;
  const look = (camera: ReturnType<typeof zoomAt>, at = state) => to(at, { kind: "look", camera });
  const middle = { x: view.width / 2, y: (view.height - view.foot) / 2 };
  const tool =
    event.kind === "key" ? keyTool(event.key, event.alt === true) : event.kind === "tool" ? event.tool : undefined;
  switch (tool) {
    case "zoomIn":
      return look(zoomAt(whole, view, zoomStep, middle));
    case "zoomOut":
      return look(zoomAt(whole, view, 1 / zoomStep, middle));
    case "whole":
      return look(undefined);
    case "help":
      return to(idle, { kind: "help" });
    case "insert":
      return to({ kind: "ChoosingPart", behind: true });
    case "route":
      return to({ kind: "RoutingRun" });
    case "stop":
      return to(idle);
  }
  switch (event.kind) {
    case "wheel":
      return look(zoomAt(whole, view, Math.exp(-event.amount * 0.0022), event.point));
    case "key": {
      const way = event.alt ? panWays[event.key] : undefined;
      if (way !== undefined) return look(panBy(whole, view, { x: way.x * panStep, y: way.y * panStep }));
      if (event.key === "Escape" && state.kind !== "Idle") return to(idle);
      return leaves(state) ? step(idle, event, context) : to(state);
    }
    case "down":
      return step(idle, event, context);
    case "choose":
      return to({ kind: "InsertingPart", choice: event.choice });
    case "add":
      return outcomeStep(addThing(context.design, event.what, context.selection ?? ""), idle);
    case "act":
      return actStep(context, event.action, event.path);
    default:
      return to(state);
  }
}

/** States that end by themselves when something else begins. */
const leaves = ({ kind }: SheetState): boolean => kind === "NudgingHandle" || kind === "SteeringPart";

function keyTool(key: string, alt: boolean) {
  if (alt) return undefined;
  if (key === "+" || key === "=") return "zoomIn";
  if (key === "-" || key === "−") return "zoomOut";
  if (key === "0") return "whole";
  if (key === "?") return "help";
  return undefined;
}

/** The sheet goes the other way than the eye. */
const panWays: Readonly<Record<string, { readonly x: number; readonly y: number }>> = {
  ArrowLeft: { x: 1, y: 0 },
  ArrowRight: { x: -1, y: 0 },
  ArrowUp: { x: 0, y: 1 },
  ArrowDown: { x: 0, y: -1 },
};
