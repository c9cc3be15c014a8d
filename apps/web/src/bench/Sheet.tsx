import { type ReactNode, useEffect, useRef } from "react";
import { useWords } from "../words/useWords.ts";

interface Props {
  readonly title: string;
  readonly open: boolean;
  readonly name: string;
  onClose(): void;
  readonly children: ReactNode;
}

/** A sheet laid over the bench; the browser's own dialog keeps focus inside and closes it on Escape. */
export function Sheet({ title, open, name, onClose, children }: Props) {
  const { say } = useWords();
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (open) dialog.current?.showModal();
    else dialog.current?.close();
  }, [open]);
  return (
    <dialog ref={dialog} className={`sheet sheet-${name}`} aria-labelledby={`sheet-${name}`} onClose={onClose}>
      {open ? (
        <>
          <header className="sheet-head">
            <h2 id={`sheet-${name}`}>{title}</h2>
            <button type="button" className="icon-button" aria-label={say("bench.sheet.close")} onClick={onClose}>
              ×
            </button>
          </header>
          {children}
        </>
      ) : null}
    </dialog>
  );
}
