import { memo, useId } from "react";
import { describedBy, FieldFrame } from "./FieldFrame.tsx";
import { setField } from "./setField.ts";
import { useTyped } from "./useTyped.ts";

interface Props {
  readonly path: string;
  readonly value: number | undefined;
  readonly label: string;
  /** Whole numbers from 1 on, with buttons for one less and one more. */
  readonly counts?: boolean;
  readonly hint?: string | undefined;
  readonly optional?: boolean | undefined;
  readonly bare?: boolean;
}

/** A bare number: a count of fittings or a coefficient. */
export const NumberField = memo(function NumberField({ path, value, label, counts, hint, optional, bare }: Props) {
  const id = useId();
  const options = { label: label.toLowerCase() };
  const present = value ?? (counts ? 1 : undefined);
  const step = (by: number) =>
    setField(path, Math.max(1, (present ?? 0) + by), { ...options, dragKey: `step ${path}` });
  const typed = useTyped(
    present === undefined ? "" : String(present),
    (text) => {
      if (text.trim() === "" && optional) return setField(path, undefined, options);
      const number = Number(text.replace(",", ".").trim());
      if (text.trim() === "" || !Number.isFinite(number)) return `"${text}" is no number; give digits only`;
      return setField(path, number, options);
    },
    counts ? step : undefined,
  );
  const input = (
    <input
      id={id}
      className="figure-input count-input"
      type="text"
      inputMode={counts ? "numeric" : "decimal"}
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
  const control = counts ? (
    <span className="stepper">
      <button
        type="button"
        className="step"
        aria-label={`${label}: one less`}
        disabled={(present ?? 1) <= 1}
        onClick={() => step(-1)}
      >
        −
      </button>
      {input}
      <button type="button" className="step" aria-label={`${label}: one more`} onClick={() => step(1)}>
        +
      </button>
    </span>
  ) : (
    input
  );
  if (bare) return <span className="bare-field">{control}</span>;
  return (
    <FieldFrame id={id} label={label} hint={hint} problem={typed.problem}>
      {control}
    </FieldFrame>
  );
});
