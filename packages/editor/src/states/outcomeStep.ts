import type { Outcome } from "../edits/outcome.ts";
import { type SheetEffect, type SheetState, type Step, to } from "./sheet.ts";

/** Returns the step that carries an operation out and goes on in a state, or tells why it cannot be done and stays.
 *  outcome   after state once it is done   stay state where it is refused   -> Step
 *  Source: own construction. */
export function outcomeStep(outcome: Outcome, after: SheetState, stay: SheetState = after): Step {
  return outcome.ok ? to(after, outcomeEffect(outcome)) : to(stay, { kind: "refuse", why: outcome.why });
}

const outcomeEffect = (outcome: Extract<Outcome, { ok: true }>): SheetEffect => ({
  kind: "edit",
  edits: outcome.edits,
  label: outcome.label,
  done: true,
  ...(outcome.select === undefined ? {} : { hold: outcome.select }),
});
