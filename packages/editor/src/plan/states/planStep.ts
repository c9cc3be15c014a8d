import { inDraggingGrip } from "./draggingGrip.ts";
import { inPlanIdle } from "./planIdle.ts";
import type { PlanContext, PlanEvent, PlanState, PlanStep } from "./planState.ts";
import { inPointingGrip } from "./pointingGrip.ts";

/** Returns the state of the plan after an event and what the page has to do about it.
 *  state   event in points of the sheet   context what the plan stands for   -> PlanStep
 *  Throws: never. Valid: any event in any state; Escape and a cancelled pointer leave the document as it was.
 *  Source: own construction, a state chart with one file for each state. */
export function planStep(state: PlanState, event: PlanEvent, context: PlanContext): PlanStep {
  switch (state.kind) {
    case "Idle":
      return inPlanIdle(event, context);
    case "PointingGrip":
      return inPointingGrip(state, event, context);
    case "DraggingGrip":
      return inDraggingGrip(state, event);
  }
}
