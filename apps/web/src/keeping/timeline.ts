import type { History, Step } from "@tidewright/design";

/** All steps of a history in the order in which they were made, done and undone ones. */
export type Timeline = readonly Step[];

/** Returns the steps of a history in one line: what was done, then what was undone and could be done again. */
export function timelineOf(history: History<unknown>): Timeline {
  return [...history.past, ...history.future];
}

/** Returns what to write where `before` is written already: everything from place `from` on, replaced by `steps`.
 *  A step is never changed in place, so the same object is the same step. */
export function timelineChange(before: Timeline, after: Timeline): { readonly from: number; readonly steps: Timeline } {
  let from = 0;
  while (from < before.length && from < after.length && before[from] === after[from]) from += 1;
  return { from, steps: after.slice(from) };
}
