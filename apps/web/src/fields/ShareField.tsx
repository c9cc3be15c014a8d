import { memo, useId } from "react";
import { endDragNow } from "../state/bench.ts";
import { describedBy, FieldFrame } from "./FieldFrame.tsx";
import { setField } from "./setField.ts";
import { useTyped } from "./useTyped.ts";

interface Props {
  readonly path: string;
  readonly value: number | undefined;
  readonly label: string;
  readonly hint?: string | undefined;
  readonly optional?: boolean | undefined;
  readonly bare?: boolean;
}

/** Shares run from 0 to 1 in the document and are read and written in per cent here. */
const perCent = (share: number) => `${Number((share * 100).toFixed(2))} %`;

/** A share as a slider and a number; the whole pull of the slider is one step of the history. */
export const ShareField = memo(function ShareField({ path, value, label, hint, optional, bare }: Props) {
  const id = useId();
  const options = { label: label.toLowerCase() };
  const typed = useTyped(
    value === undefined ? "" : perCent(value),
    (text) => {
      if (text.trim() === "" && optional) return setField(path, undefined, options);
      const number = Number(text.replace("%", "").replace(",", ".").trim());
      if (text.trim() === "" || !Number.isFinite(number)) return `"${text}" is no number; give per cent from 0 to 100`;
      return setField(path, number / 100, options);
    },
    (by) => {
      const next = Math.min(1, Math.max(0, Math.round((value ?? 1) * 100 + by) / 100));
      return setField(path, next, { ...options, dragKey: `step ${path}` });
    },
  );
  const text = (
    <input
      id={id}
      className="figure-input share-input"
      type="text"
      inputMode="decimal"
      autoComplete="off"
      data-path={path}
      value={typed.text}
      data-draft={typed.draft}
      placeholder={optional ? "not given" : undefined}
      aria-label={bare ? label : undefined}
      aria-invalid={typed.problem !== undefined}
      aria-describedby={describedBy(id, bare ? undefined : hint, typed.problem)}
      onChange={(event) => typed.onChange(event.target.value)}
      onBlur={typed.onBlur}
      onKeyDown={typed.onKeyDown}
    />
  );
  const drag = { ...options, dragKey: `slide ${path}` };
  const slider = (
    <input
      className="slider"
      type="range"
      min={0}
      max={100}
      step={1}
      value={Math.round((value ?? 1) * 100)}
      aria-label={`${label}, slider`}
      onChange={(event) => setField(path, Number(event.target.value) / 100, drag)}
      onPointerUp={() => endDragNow()}
      onBlur={() => endDragNow()}
    />
  );
  if (bare) return <span className="bare-field">{text}</span>;
  return (
    <FieldFrame id={id} label={label} hint={hint} problem={typed.problem}>
      <span className="share-controls">
        {slider}
        {text}
      </span>
    </FieldFrame>
  );
});
