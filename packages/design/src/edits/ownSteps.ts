import type { MergeConflict } from "../merge/mergeConflict.ts";
import { mergeDocuments } from "../merge/mergeDocuments.ts";
import { applyEdit } from "./applyEdit.ts";
import type { Edit } from "./edit.ts";
import type { History, Step } from "./step.ts";
import { stepBetween } from "./takeIn.ts";

/** A history after a step of one's own was taken back or made again; where others have changed the same since, the history
 *  as it was and the places. */
export interface OwnStep<Doc> {
  readonly history: History<Doc>;
  readonly conflict?: readonly MergeConflict[];
}

/** Returns a history without the last step of one's own; what others did since stands.
 *  history   -> OwnStep; the very history given where there is no such step
 *  Findings: none; the places that others have changed since are the conflict. Throws: never.
 *  Valid: histories made by `startHistory`, `record`, `takeIn`, `undoMine`, `redoMine`, `endDrag`. `redoMine` then leads
 *  back to the very document, with what was taken in meanwhile joined to it.
 *  Source: own construction on `mergeDocuments`: base is the document after the step, mine the one before it, theirs the
 *  present one.
 *  Example: undoMine(takeIn(startHistory({ a: 1 }), { a: 2 }, "by Ada")).history.past.length  ->  1 */
export function undoMine<Doc>(history: History<Doc>): OwnStep<Doc> {
  const place = history.past.map((step) => step.others === undefined).lastIndexOf(true);
  const step = history.past[place];
  if (step === undefined) return { history };
  const after = history.past.slice(place + 1);
  const with_ = applied(history.present, backward(after));
  const turned = turn(step, with_, applied(with_, step.inverses), after, history.present);
  if ("conflict" in turned) return { history, conflict: turned.conflict };
  const past = [...history.past.slice(0, place), ...turned.after];
  const undone: Step = { ...withoutPlace(step), place, aside: after };
  return { history: { past, present: turned.present, future: [undone, ...history.future] } };
}

/** Returns a history with the step of one's own last undone made again; what others did since stands.
 *  history   -> OwnStep; the very history given where nothing is undone
 *  Findings: none; the places that others have changed since are the conflict. Throws: never.
 *  Valid: as `undoMine`.
 *  Source: as `undoMine`, the other way round.
 *  Example: redoMine(startHistory({ a: 1 })).history.future.length  ->  0 */
export function redoMine<Doc>(history: History<Doc>): OwnStep<Doc> {
  const [undone, ...future] = history.future;
  if (undone === undefined) return { history };
  const place = Math.min(undone.place ?? history.past.length, history.past.length);
  const after = history.past.slice(place);
  const without = applied(history.present, backward(after));
  const turned = turn(undone, without, applied(without, undone.edits), after, history.present);
  if ("conflict" in turned) return { history, conflict: turned.conflict };
  const step: Step = { ...withoutPlace(undone), ...(after.length > 0 ? { aside: after } : {}) };
  const past = [...history.past.slice(0, place), step, ...turned.after];
  return { history: { past, present: turned.present, future } };
}

/** Turns a step the other way beneath the steps of others that came after it.
 *
 *     now    ──after[0]──▶ · ──after[1]──▶ known ──after[2]──▶ present
 *     other  ──aside[0]──▶ · ──aside[1]──▶ side  ──···merged···▶ turned
 *
 *  Steps that have been on the other side before go back exactly as they were there; later ones are joined. */
function turn<Doc>(
  step: Step,
  now: Doc,
  other: Doc,
  after: readonly Step[],
  present: Doc,
): { present: Doc; after: readonly Step[] } | { conflict: readonly MergeConflict[] } {
  const aside = (step.aside ?? []).slice(0, after.length);
  const known = applied(now, forward(after.slice(0, aside.length)));
  const side = applied(other, forward(aside));
  const later = after.slice(aside.length);
  if (later.length === 0) return { present: side, after: aside };
  const whole = mergeDocuments(known, side, present);
  if (!whole.ok) return { conflict: whole.conflicts };
  const turned: Step[] = [];
  let [here, there] = [known, side];
  later.forEach((each, i) => {
    here = applied(here, each.edits);
    const joined = mergeDocuments(known, side, here);
    // Others may have passed through a place at odds and left it again: that stop is left out.
    const next = i === later.length - 1 ? whole.merged : joined.ok ? joined.merged : there;
    turned.push(stepBetween(there, next, { label: each.label, others: true }));
    there = next;
  });
  return { present: there, after: [...aside, ...turned] };
}

const forward = (steps: readonly Step[]): readonly Edit[] => steps.flatMap(({ edits }) => edits);
const backward = (steps: readonly Step[]): readonly Edit[] => [...steps].reverse().flatMap(({ inverses }) => inverses);
const applied = <Doc>(document: Doc, edits: readonly Edit[]): Doc =>
  edits.reduce<Doc>((at, edit) => applyEdit(at, edit).design, document);

function withoutPlace(step: Step): Step {
  const { place: _place, aside: _aside, ...rest } = step;
  return rest;
}
