import type { Design, Edit, Problem } from "@tidewright/design";
import type { Saying } from "@tidewright/editor";
import type { Words } from "@tidewright/words";
import { dropDrag, edit, presentDesign, rankLoop, say, select, show } from "../state/bench.ts";
import { words } from "../words/useWords.ts";

/** What hands on the drawing can do to the document. A drawing without hands can be looked at only. */
export interface SheetHands {
  /** The document as it stands. */
  design(): Design;
  select(path: string | undefined): void;
  /** Edits that count as one step; those with the same key belong to one drag, `done` ends it. Returns why they cannot be made. */
  edit(
    edits: readonly Edit[],
    options: { readonly label: Saying; readonly dragKey?: string | undefined; readonly done: boolean },
  ): Problem | undefined;
  /** Takes a drag back that turned out to be none, such as the first finger of a pinch. */
  drop(dragKey: string): void;
  /** Asks which pump suits a loop. */
  rank(loop: number): void;
}

/** Returns a saying in the words of the page.
 *  words   saying text of the catalogue with what is put into it   -> text */
export function said(language: Words, { key, values, named }: Saying): string {
  if (named === undefined) return language.say(key, values);
  const texts = Object.fromEntries(Object.entries(named).map(([name, text]) => [name, language.say(text)]));
  return language.say(key, { ...values, ...texts });
}

const newLoop = /^\/loops\/(\d+)$/;

/** Hands on the design that lies on the bench. */
export const benchHands: SheetHands = {
  design: presentDesign,
  select,
  edit(edits, { label, dragKey, done }) {
    const text = said(words(), label);
    const problem = edit(edits, { label: text, done, ...(dragKey === undefined ? {} : { dragKey }) });
    if (problem !== undefined || dragKey !== undefined) return problem;
    say(words().say("drawing.did", { step: text }));
    // A new loop has no pump yet: the table of those that suit it opens.
    const added = edits.find((one) => one.op === "insert" && newLoop.test(one.path));
    if (added?.op === "insert") benchHands.rank(Number(newLoop.exec(added.path)![1]));
    return undefined;
  },
  drop: dropDrag,
  rank(loop) {
    rankLoop(loop);
    show({ tab: "pumps", drawerOpen: true });
  },
};
