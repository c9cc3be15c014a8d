import { editsBetween } from "../merge/editsBetween.ts";
import { applyEdit } from "./applyEdit.ts";
import type { Edit } from "./edit.ts";
import type { History, Step } from "./step.ts";

/** Returns a history with one more step that somebody else made; what was undone can still be made again.
 *  history   document as it now is, the other's change joined in   label what they did, for a menu   -> History; the very
 *  history given where nothing differs
 *  Findings: none. Throws: never.
 *  Valid: any document of plain objects and lists.
 *  Source: own construction.
 *  Example: takeIn(startHistory({ a: 1 }), { a: 2 }, "by Ada").past[0].others  ->  true
 *  Example: undo(takeIn(startHistory({ a: 1 }), { a: 2 }, "by Ada")).present.a  ->  2 */
export function takeIn<Doc>(history: History<Doc>, document: Doc, label: string): History<Doc> {
  const step = stepBetween(history.present, document, { label, others: true });
  if (step.edits.length === 0) return history;
  return { past: [...history.past, step], present: document, future: history.future };
}

/** Returns the step that leads from one document to another.
 *  before, after documents   told label, and whether somebody else made it   -> Step
 *  Source: own construction. */
export function stepBetween<Doc>(before: Doc, after: Doc, told: Pick<Step, "label" | "others">): Step {
  const edits = editsBetween(before, after);
  const inverses: Edit[] = [];
  let document = before;
  for (const edit of edits) {
    const edited = applyEdit(document, edit);
    document = edited.design;
    inverses.unshift(edited.inverse);
  }
  return { ...told, edits, inverses };
}
