import { memo } from "react";
import { useFormat } from "../format/useFormat.ts";
import { endDragNow } from "../state/bench.ts";
import { useWords } from "../words/useWords.ts";
import { readShare } from "./readShare.ts";
import { setField } from "./setField.ts";
import { type FieldProps, TypedField } from "./TypedField.tsx";

/** Shares run from 0 to 1 in the document and are read and written in per cent here. */
const perCent = (share: number) => `${Number((share * 100).toFixed(2))} %`;

/** A share as a slider and a number; the whole pull of the slider is one step of the history. */
export const ShareField = memo(function ShareField(field: FieldProps<number>) {
  const { path, value, label } = field;
  const { say, inSentence } = useWords();
  const { decimalSign } = useFormat();
  const drag = { label: inSentence(label), dragKey: `slide ${path}` };
  return (
    <TypedField
      {...field}
      className="share-input"
      inputMode="decimal"
      shown={value === undefined ? "" : perCent(value).replace(".", decimalSign)}
      read={(text) => readShare(text, say)}
      next={(by) => Math.min(1, Math.max(0, Math.round((value ?? 1) * 100 + by) / 100))}
      around={(input) => (
        <span className="share-controls">
          <input
            className="slider"
            type="range"
            min={0}
            max={100}
            step={1}
            value={Math.round((value ?? 1) * 100)}
            aria-label={say("fields.slider", { label })}
            onChange={(event) => setField(path, Number(event.target.value) / 100, drag)}
            onPointerUp={endDragNow}
            onBlur={endDragNow}
          />
          {input}
        </span>
      )}
    />
  );
});
