import { type CSSProperties, useEffect, useRef } from "react";
import { useFormat } from "../format/useFormat.ts";
import { show, useBench } from "../state/bench.ts";
import { useWords } from "../words/useWords.ts";
import { provenance } from "./provenance.ts";

const width = 380;
const gap = 8;

/** The sheet beside a number: formula, inputs, honest range, source. Numbers in it move with the drawing. */
export function SourcePopover() {
  const source = useBench((state) => state.source);
  const assessed = useBench((state) => state.assessed);
  const format = useFormat();
  const words = useWords();
  const { say } = words;
  const dialog = useRef<HTMLDialogElement>(null);
  const told = source && assessed ? provenance(source.id, assessed.assessment, format, source.index, words) : undefined;
  const open = told !== undefined;

  useEffect(() => {
    if (open) dialog.current?.showModal();
    else dialog.current?.close();
  }, [open]);

  const at = source?.at;
  const left = at === undefined ? 0 : Math.max(gap, Math.min(at.left, window.innerWidth - width - gap));
  const below = at !== undefined && at.bottom < window.innerHeight * 0.55;
  // As variables, so that the style sheet can lay it elsewhere on a small screen.
  const place = {
    "--left": `${left}px`,
    "--top": at !== undefined && below ? `${at.bottom + gap}px` : "auto",
    "--bottom": at === undefined || below ? "auto" : `${window.innerHeight - at.top + gap}px`,
  } as CSSProperties;
  const close = () => show({ source: undefined });

  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: Escape closes a dialog by itself
    <dialog
      ref={dialog}
      className="source-sheet"
      style={place}
      aria-label={told?.title ?? say("provenance.origin")}
      onClose={close}
      onClick={(event) => event.target === event.currentTarget && close()}
    >
      {told === undefined ? null : (
        <div className="source-body">
          <header className="sheet-head">
            <h2>{told.title}</h2>
            <button type="button" className="icon-button" aria-label={say("provenance.close")} onClick={close}>
              ×
            </button>
          </header>
          <p className="source-value">{told.value}</p>
          <p className="source-formula">{told.formula}</p>
          <dl className="pairs">
            {told.inputs.map(([label, value]) => (
              <div key={label}>
                <dt>{label}</dt>
                <dd>{value}</dd>
              </div>
            ))}
          </dl>
          {told.range === undefined ? null : (
            <p className="source-range">{say("provenance.honestRange", { range: told.range })}</p>
          )}
          <p className="source-from">{say("provenance.source", { source: told.source })}</p>
        </div>
      )}
    </dialog>
  );
}
