import { type KeyboardEvent, useState } from "react";

/** What an input needs to let a person type freely and to take the text only when it makes sense. */
export interface Typed {
  readonly text: string;
  /** Why the text is not taken; the document keeps its value and the field its text until one of them gives way. */
  readonly problem: string | undefined;
  /** True while the text is the person's and not yet the document's; marks the input, which then keeps its own undo. */
  readonly draft: "" | undefined;
  onChange(text: string): void;
  onBlur(): void;
  onKeyDown(event: KeyboardEvent<HTMLElement>): void;
}

/** Returns the state of a text field whose value lives in the document.
 *  shown the value as text   take called with a changed text on Enter or on leaving; returns why it cannot be taken
 *  step called with +1 or -1 (tenfold with Shift) on the arrow keys, where the value can be stepped */
export function useTyped(
  shown: string,
  take: (text: string) => string | undefined,
  step?: (by: number) => string | undefined,
): Typed {
  const [draft, setDraft] = useState<{ readonly text: string; readonly over: string }>();
  const [problem, setProblem] = useState<string>();
  // An undo or a drag elsewhere changes the value below an open field: what is in the document then counts.
  const live = draft !== undefined && draft.over === shown ? draft.text : undefined;
  const complaint = live === undefined && draft !== undefined ? undefined : problem;

  const finish = () => {
    if (live === undefined || live === shown) {
      setDraft(undefined);
      setProblem(undefined);
      return;
    }
    const why = take(live);
    setProblem(why);
    if (why === undefined) setDraft(undefined);
  };

  return {
    text: live ?? shown,
    problem: complaint,
    draft: live !== undefined && live !== shown ? "" : undefined,
    onChange(text) {
      setDraft({ text, over: shown });
      setProblem(undefined);
    },
    onBlur: finish,
    onKeyDown(event) {
      if (event.key === "Enter") {
        event.preventDefault();
        finish();
      } else if (event.key === "Escape" && live !== undefined) {
        event.stopPropagation();
        setDraft(undefined);
        setProblem(undefined);
      } else if (step !== undefined && live === undefined && (event.key === "ArrowUp" || event.key === "ArrowDown")) {
        event.preventDefault();
        setProblem(step((event.key === "ArrowUp" ? 1 : -1) * (event.shiftKey ? 10 : 1)));
      }
    },
  };
}
