import { type Design, type History, redo, undo } from "@tidewright/design";

interface Taken {
  readonly history: History<Design>;
  readonly conflict?: readonly { readonly path: string }[];
}

/** Placeholder until joining is at hand. */
export const undoMine = (history: History<Design>): Taken => ({ history: undo(history) });
export const redoMine = (history: History<Design>): Taken => ({ history: redo(history) });
