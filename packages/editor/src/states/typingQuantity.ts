import { mainQuantity } from "../edits/mainQuantity.ts";
import { type Answer, idle, type SheetContext, type Step, type TypingQuantity, to } from "./sheet.ts";

/** A field is open at a part's label: it keeps the keys to itself until it closes or a pointer goes elsewhere. */
export const inTypingQuantity: Answer<TypingQuantity> = (state, event) => {
  if (event.kind === "typed") return to(idle);
  if (event.kind === "key") return event.key === "Escape" ? to(idle) : to(state);
  if (event.kind === "keyUp" || event.kind === "move" || event.kind === "up" || event.kind === "cancel")
    return to(state);
  // Anything else closes the field, which takes its text as it loses the focus.
  return undefined;
};

/** Returns the step that opens the field of a part's main quantity, or says that it has none.
 *  context   path of the part   -> Step
 *  Source: own construction. */
export function typeStep(context: SheetContext, path: string): Step {
  const select = { kind: "select", path } as const;
  if (mainQuantity(context.design, path) === undefined)
    return to(idle, select, { kind: "refuse", why: { key: "drawing.why.noEdit" } });
  return to({ kind: "TypingQuantity", path }, select);
}
