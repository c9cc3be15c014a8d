import { insertPart, runStartOf } from "../edits/insertPart.ts";
import { spotBeside, spotOnRun } from "../elevation/spotOnRun.ts";
import { outcomeStep } from "./outcomeStep.ts";
import { pinchStep } from "./pinchingSheet.ts";
import { type Answer, type InsertingPart, idle, type SheetContext, type Step, to } from "./sheet.ts";

/** How far from a line a part still finds it [px]. */
const reach = 44;

/** A part is in the hand: it shows where it would land, a tap or Enter puts it there, and Shift keeps the next one in hand. */
export const inInsertingPart: Answer<InsertingPart> = (state, event, context) => {
  switch (event.kind) {
    case "choose":
      return to({ kind: "InsertingPart", choice: event.choice });
    case "move": {
      if (state.pointer !== undefined && state.pointer !== event.pointer) return to(state);
      return to(lookingAt(state, spotOnRun(context.scene, context.view, event.point, reach)));
    }
    case "down": {
      if (state.pointer !== undefined) return pinchStep(state, event, context) ?? to(state);
      if ((event.button ?? 0) !== 0) return undefined;
      const spot = spotOnRun(context.scene, context.view, event.point, reach);
      return to({ kind: "InsertingPart", choice: state.choice, pointer: event.pointer, ...(spot ? { spot } : {}) });
    }
    case "up": {
      if (state.pointer !== event.pointer) return to(state);
      const spot = spotOnRun(context.scene, context.view, event.point, reach);
      const { pointer: _pointer, ...free } = state;
      if (spot === undefined) return to(free, { kind: "refuse", why: { key: "drawing.why.noRunHere" } });
      const stay = { kind: "InsertingPart", choice: state.choice } as const;
      return outcomeStep(insertPart(context.design, spot, state.choice), event.shift ? stay : idle, stay);
    }
    case "cancel": {
      if (state.pointer !== event.pointer) return to(state);
      return to({ kind: "InsertingPart", choice: state.choice });
    }
    case "key":
      return keyed(state, event, context);
    default:
      return undefined;
  }
};

function keyed(
  state: InsertingPart,
  event: { readonly key: string; readonly shift?: boolean; readonly focus?: string },
  context: SheetContext,
): Step | undefined {
  if (event.key !== "Enter") return undefined;
  const path = runStartOf(context.design, event.focus ?? context.selection ?? "");
  if (path === undefined) return to(state, { kind: "refuse", why: { key: "drawing.why.noRunHere" } });
  const behind = !event.shift && path === (event.focus ?? context.selection);
  const spot = spotBeside(context.scene, path, behind) ?? { path, share: behind ? 1 : 0 };
  return outcomeStep(insertPart(context.design, spot, state.choice), idle, state);
}

/** The same state where the spot is, so that a pointer at rest draws nothing anew. */
function lookingAt(state: InsertingPart, spot: InsertingPart["spot"]): InsertingPart {
  if (spot?.path === state.spot?.path && spot?.share === state.spot?.share) return state;
  const { spot: _spot, ...rest } = state;
  return spot === undefined ? rest : { ...rest, spot };
}
