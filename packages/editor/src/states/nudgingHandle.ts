import { type Design, valueAt } from "@tidewright/design";
import type { Quantity } from "@tidewright/units";
import { editsFor, nudgeOf } from "../elevation/handleEdits.ts";
import type { DragTarget, LineHandle } from "../elevation/scene.ts";
import { type Answer, idle, type KeyInput, type NudgingHandle, type SheetContext, type Step, to } from "./sheet.ts";

/** Arrow keys move a handle: the presses up to the key's release are one step of the history. */
export const inNudgingHandle: Answer<NudgingHandle> = (state, event, context) => {
  const end = {
    kind: "edit",
    edits: [],
    label: { key: "drawing.step.move", values: { what: "" } },
    dragKey: state.dragKey,
    done: true,
    hold: null,
  } as const;
  if (event.kind === "key" && (event.focus ?? context.selection) === state.part) {
    if (event.key === "Escape") return to(idle, { kind: "drop", dragKey: state.dragKey });
    const again = nudgeStep(event, context, state.dragKey);
    if (again !== undefined) return again;
  }
  if (event.kind === "move") return to(state);
  // Whatever comes next closes the step and is answered as if nothing had been going on.
  return event.kind === "keyUp" ? to(idle, end) : undefined;
};

/** Returns the step of an arrow key on a part with a handle, or undefined where the key or the part is no such thing.
 *  event   context   dragKey of the nudge in progress   -> Step
 *  Source: own construction. */
export function nudgeStep(event: KeyInput, context: SheetContext, dragKey?: string): Step | undefined {
  const path = event.focus ?? context.selection;
  const drawn = context.scene.parts.find((part) => part.path === path)?.handle;
  if (drawn === undefined || event.alt) return undefined;
  const handle = lineAsItIs(drawn, context.design);
  const steps = arrowSteps(event.key, handle);
  if (steps === 0) return undefined;
  const key = dragKey ?? `nudge-${handle.part}-${event.at}`;
  const by = steps * nudgeOf(handle, event.shift === true || event.key.startsWith("Page")) * signOf(handle);
  return to(
    { kind: "NudgingHandle", part: handle.part, dragKey: key },
    {
      kind: "edit",
      edits: editsFor(handle, by),
      label: { key: "drawing.step.move", values: { what: handle.label } },
      dragKey: key,
      done: false,
      hold: null,
    },
  );
}

const signOf = (handle: LineHandle): number => (handle.axis === "arc" ? 1 : handle.targets[0].sign);

/** Keys can be faster than the picture: a step goes from what the document says, not from what was drawn last. */
function lineAsItIs(handle: LineHandle, design: Design): LineHandle {
  const now = (target: DragTarget): DragTarget => {
    const there = valueAt(design, target.path) as number | Quantity | undefined;
    if (typeof there === "number") return { ...target, value: there };
    return there === undefined ? target : { ...target, ...there };
  };
  const [first, ...rest] = handle.targets;
  return { ...handle, targets: [now(first), ...rest.map(now)] };
}

/** Home and End go to the ends of a share; a length has none that anybody would want at a press. */
function arrowSteps(key: string, { axis }: LineHandle): number {
  if (axis === "arc" && (key === "Home" || key === "End")) return key === "End" ? Infinity : -Infinity;
  if (key === "ArrowUp" || key === "ArrowRight" || key === "PageUp") return 1;
  if (key === "ArrowDown" || key === "ArrowLeft" || key === "PageDown") return -1;
  return 0;
}
