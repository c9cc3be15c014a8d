import { drawRun } from "../edits/drawRun.ts";
import { runEndAt, runEndOf, runTargetAt } from "../edits/runEnds.ts";
import { outcomeStep } from "./outcomeStep.ts";
import { pinchStep } from "./pinchingSheet.ts";
import { type Answer, idle, type RoutingRun, type SheetContext, type Step, to } from "./sheet.ts";

/** How far a pointer may miss an end [px]. */
const reach = 22;
/** From this way on a pull counts as drawn in one stroke; less is a tap, and the end is tapped next [px]. */
const stroke = 16;

/** A line is being drawn: its beginning is chosen, then its end, in one stroke or by two taps, or by Enter on two parts. */
export const inRoutingRun: Answer<RoutingRun> = (state, event, context) => {
  switch (event.kind) {
    case "down": {
      if (state.pointer !== undefined) return pinchStep(state, event, context) ?? to(state);
      if ((event.button ?? 0) !== 0) return undefined;
      const held = { pointer: event.pointer, pressed: event.point };
      if (state.from !== undefined) return to({ ...aimed(state, event.point, context), ...held });
      const from = runEndAt(context, event.point, reach);
      if (from === undefined) return to(state, { kind: "refuse", why: { key: "drawing.why.noBeginning" } });
      return to({ kind: "RoutingRun", from, ...held, fresh: true });
    }
    case "move":
      if (state.pointer !== undefined && state.pointer !== event.pointer) return to(state);
      return to(state.from === undefined ? state : aimed(state, event.point, context));
    case "up": {
      if (state.pointer !== event.pointer) return to(state);
      const { pointer: _pointer, pressed, fresh, ...free } = state;
      const drawn = pressed !== undefined && Math.hypot(event.point.x - pressed.x, event.point.y - pressed.y) > stroke;
      // A tap on the beginning waits for a tap on the end.
      if (fresh && !drawn) return to(free);
      return finished({ ...aimed(free, event.point, context) }, context);
    }
    case "cancel": {
      const { pointer: _pointer, pressed: _pressed, fresh: _fresh, ...free } = state;
      return to(state.pointer === event.pointer ? free : state);
    }
    case "key": {
      if (event.key !== "Enter") return undefined;
      const end = runEndOf(context, event.focus ?? context.selection ?? "", state.from !== undefined);
      if (end === undefined)
        return to(state, {
          kind: "refuse",
          why: { key: state.from === undefined ? "drawing.why.noBeginning" : "drawing.why.endsInPlace" },
        });
      if (state.from === undefined) return to({ kind: "RoutingRun", from: end });
      return finished({ ...state, to: end }, context);
    }
    default:
      return undefined;
  }
};

function finished(state: RoutingRun, context: SheetContext): Step {
  const { from, to: end } = state;
  if (from === undefined) return to(state);
  const again: RoutingRun = { kind: "RoutingRun", from };
  if (end === undefined) return to(again, { kind: "refuse", why: { key: "drawing.why.endsInPlace" } });
  return outcomeStep(drawRun(context.design, from, end), idle, again);
}

function aimed(
  state: RoutingRun,
  point: { readonly x: number; readonly y: number },
  context: SheetContext,
): RoutingRun {
  const { to: _to, ...rest } = state;
  const end = runTargetAt(context, point);
  return { ...rest, at: context.view.toScene(point), ...(end === undefined ? {} : { to: end }) };
}
