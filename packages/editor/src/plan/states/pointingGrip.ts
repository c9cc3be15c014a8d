import { inDraggingGrip } from "./draggingGrip.ts";
import { inPlanIdle } from "./planIdle.ts";
import { type PlanContext, type PlanEvent, type PlanStep, type PointingGrip, planIdle, planTo } from "./planState.ts";

/** A pointer is on a grip: it drags once it has moved far enough, and was a tap where it is lifted before. */
export function inPointingGrip(state: PointingGrip, event: PlanEvent, context: PlanContext): PlanStep {
  if (event.kind === "escape") return planTo(planIdle);
  if (event.kind === "arrow") return inPlanIdle(event, context);
  // A second finger makes a gesture of what the first began.
  if (event.kind === "down" || event.pointer !== state.pointer) return planTo(planIdle);
  if (event.kind !== "move") return planTo(planIdle);
  const way = Math.hypot(event.point.x - state.from.x, event.point.y - state.from.y);
  if (way < state.slack) return planTo(state);
  return inDraggingGrip({ ...state, kind: "DraggingGrip", edits: [] }, event);
}
