import type { Edit } from "./edit.ts";

/** One step of a history: what a person did, in a few words, and how to do it and take it back. `inverses` are in the
 *  order in which they are applied. Steps with the same `key`, one after the other, are one: a drag. */
export interface Step {
  readonly label: string;
  readonly key?: string;
  readonly edits: readonly Edit[];
  readonly inverses: readonly Edit[];
  /** Somebody else made it: undo leaves it standing. */
  readonly others?: true;
  /** Of an undone step: how many steps of the past it came after. */
  readonly place?: number;
  /** Of a step undone or redone beneath steps of others: those steps as they were when it was the other way. */
  readonly aside?: readonly Step[];
}

/** A document with all that was done to it; never changed in place. `past` oldest first, `future` next first. */
export interface History<Doc> {
  readonly past: readonly Step[];
  readonly present: Doc;
  readonly future: readonly Step[];
}
