import type { MessageKey } from "@tidewright/words";
import { type ReactNode, useEffect, useRef } from "react";
import { useWords } from "../words/useWords.ts";

const keys: readonly (readonly [string, MessageKey])[] = [
  ["Tab", "drawing.help.tab"],
  ["↑ ↓ ← →", "drawing.help.arrows"],
  ["M", "drawing.help.steer"],
  ["A", "drawing.help.aim"],
  ["Enter, F2", "drawing.help.edit"],
  ["I", "drawing.help.insert"],
  ["Enter, Shift Enter", "drawing.help.insertPut"],
  ["B", "drawing.help.branch"],
  ["P", "drawing.help.route"],
  ["D", "drawing.help.duplicate"],
  ["Delete", "drawing.help.remove"],
  ["+  −  0", "drawing.help.zoom"],
  ["Alt ↑ ↓ ← →", "drawing.help.pan"],
  ["Esc", "drawing.help.escape"],
];

/** The keys of the drawing on a sheet of their own. */
export function KeysSheet({ open, onClose }: { readonly open: boolean; onClose(): void }): ReactNode {
  const { say } = useWords();
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (open) dialog.current?.showModal();
    else dialog.current?.close();
  }, [open]);
  return (
    <dialog ref={dialog} className="sheet sheet-keys" aria-labelledby="sheet-keys" onClose={onClose}>
      {open ? (
        <>
          <header className="sheet-head">
            <h2 id="sheet-keys">{say("drawing.help.title")}</h2>
            <button type="button" className="icon-button" aria-label={say("drawing.help.close")} onClick={onClose}>
              ×
            </button>
          </header>
          <dl className="tw-keys">
            {keys.map(([key, text]) => (
              <div key={key}>
                <dt>
                  <kbd>{key}</kbd>
                </dt>
                <dd>{say(text)}</dd>
              </div>
            ))}
          </dl>
          <p>{say("drawing.help.mouse")}</p>
          <p>{say("drawing.help.touch")}</p>
          <p>{say("drawing.help.table")}</p>
        </>
      ) : null}
    </dialog>
  );
}
