import { gripOf, planEdits } from "../planEdits.ts";
import { type DraggingGrip, type PlanEvent, type PlanStep, planIdle, planTo } from "./planState.ts";

/** A grip follows the pointer; lifted, the step is made; cancelled, it never was. */
export function inDraggingGrip(state: DraggingGrip, event: PlanEvent): PlanStep {
  const { dragKey, edits } = state;
  const dropped = () => planTo(planIdle, { kind: "drop", dragKey });
  if (event.kind === "arrow") return planTo(state);
  if (event.kind === "escape" || event.kind === "down") return dropped();
  if (event.pointer !== state.pointer) return planTo(state);
  switch (event.kind) {
    case "cancel":
      return dropped();
    case "up":
      return planTo(planIdle, { kind: "edit", edits, dragKey, done: true });
    case "move": {
      const { view, handle, from } = state;
      const grip = gripOf(handle);
      // The grip keeps its way from the finger that took it.
      const to = {
        x: grip.x + (event.point.x - from.x) / view.scale,
        y: grip.y - (event.point.y - from.y) / view.scale,
      };
      const made = planEdits(handle, to);
      return planTo({ ...state, edits: made }, { kind: "edit", edits: made, dragKey, done: false });
    }
  }
}
