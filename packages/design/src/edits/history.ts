import type { Problem } from "../problem.ts";
import { applyEdit } from "./applyEdit.ts";
import type { Edit } from "./edit.ts";
import { redoMine, undoMine } from "./ownSteps.ts";
import type { History, Step } from "./step.ts";

/** A history after an edit; where the edit does not fit, the history as it was and the problem. */
export interface Recorded<Doc> {
  readonly history: History<Doc>;
  readonly problem?: Problem;
}

/** Returns a history that begins with a document.
 *  design any document   -> History
 *  Findings: none. Throws: never.
 *  Valid: plain objects and lists.
 *  Source: own construction.
 *  Example: startHistory({ a: 1 }).past.length  ->  0 */
export function startHistory<Doc>(design: Doc): History<Doc> {
  return { past: [], present: design, future: [] };
}

/** Returns a history with one more step, made of one or several edits that count as one; what was undone is forgotten.
 *  history   edits in order; all fit or none is made   label what is done, for a menu   key steps of one drag share it
 *  -> Recorded
 *  Findings: none; the first edit that does not fit is the problem. Throws: never.
 *  Valid: as many steps as memory holds: each keeps its edits only, and documents share what is equal.
 *  Source: own construction.
 *  Example: record(startHistory({ a: 1 }), [{ op: "set", path: "/a", value: 2 }], "set a").history.present.a  ->  2 */
export function record<Doc>(
  history: History<Doc>,
  edits: Edit | readonly Edit[],
  label: string,
  key?: string,
): Recorded<Doc> {
  const all = Array.isArray(edits) ? (edits as readonly Edit[]) : [edits as Edit];
  if (all.length === 0) return { history };
  const inverses: Edit[] = [];
  let design = history.present;
  for (const edit of all) {
    const edited = applyEdit(design, edit);
    if (edited.problem !== undefined) return { history, problem: edited.problem };
    design = edited.design;
    inverses.unshift(edited.inverse);
  }
  const step: Step = { label, ...(key === undefined ? {} : { key }), edits: all, inverses };
  const last = history.past.at(-1);
  const drags = key !== undefined && last?.key === key && history.future.length === 0;
  const past = drags ? [...history.past.slice(0, -1), joined(last, step)] : [...history.past, step];
  return { history: { past, present: design, future: [] } };
}

/** Returns a history one step of one's own earlier; at its beginning, and where others have changed the same since, the
 *  history itself. What others did stands: `undoMine` says more.
 *  history   -> History
 *  Findings: none. Throws: never.
 *  Valid: histories made by `startHistory`, `record`, `takeIn`, `undo`, `redo`, `endDrag`.
 *  Source: own construction.
 *  Example: undo(record(startHistory({ a: 1 }), [{ op: "set", path: "/a", value: 2 }], "set a").history).present.a  ->  1 */
export function undo<Doc>(history: History<Doc>): History<Doc> {
  return undoMine(history).history;
}

/** Returns a history with the step last undone made again; where there is none, and where others have changed the same
 *  since, the history itself.
 *  history   -> History
 *  Findings: none. Throws: never.
 *  Valid: as `undo`.
 *  Source: own construction.
 *  Example: redo(startHistory({ a: 1 })).present.a  ->  1 */
export function redo<Doc>(history: History<Doc>): History<Doc> {
  return redoMine(history).history;
}

/** Returns a history whose last step takes no more edits in: the pointer was lifted.
 *  history   -> History
 *  Findings: none. Throws: never.
 *  Valid: as `undo`.
 *  Source: own construction.
 *  Example: endDrag(startHistory({ a: 1 })).past.length  ->  0 */
export function endDrag<Doc>(history: History<Doc>): History<Doc> {
  const last = history.past.at(-1);
  if (last?.key === undefined) return history;
  const { key: _key, ...step } = last;
  return { ...history, past: [...history.past.slice(0, -1), step] };
}

// A drag that sets one value a hundred times is one set: the last value forward, the first inverse back.
function joined(before: Step, step: Step): Step {
  const only = step.edits[0]!;
  const first = before.edits[0]!;
  const oneSet =
    before.edits.length === 1 &&
    step.edits.length === 1 &&
    only.op === "set" &&
    first.op === "set" &&
    only.path === first.path;
  if (oneSet) return { ...step, inverses: before.inverses };
  return { ...step, edits: [...before.edits, ...step.edits], inverses: [...step.inverses, ...before.inverses] };
}
