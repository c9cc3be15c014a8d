import type { Dimension, Quantity } from "@tidewright/units";
import { memo, useId } from "react";
import { alsoInUnits, readQuantity, stepped, typedText } from "../format/quantityText.ts";
import { useFormat } from "../format/useFormat.ts";
import { describedBy, FieldFrame } from "./FieldFrame.tsx";
import { setField } from "./setField.ts";
import { useTyped } from "./useTyped.ts";

interface Props {
  readonly path: string;
  readonly value: Quantity | undefined;
  readonly dimension: Dimension;
  readonly label: string;
  readonly hint?: string | undefined;
  readonly optional?: boolean | undefined;
  /** Shows the control alone, for a table; the label is still read out. */
  readonly bare?: boolean;
}

/** One quantity with its unit as it was typed; takes any text that names a unit of the dimension. */
export const QuantityField = memo(function QuantityField({
  path,
  value,
  dimension,
  label,
  hint,
  optional,
  bare,
}: Props) {
  const id = useId();
  const format = useFormat();
  const options = { label: label.toLowerCase() };
  const typed = useTyped(
    value === undefined ? "" : typedText(value, dimension),
    (text) => {
      if (text.trim() === "" && optional) return setField(path, undefined, options);
      const reading = readQuantity(text, dimension, value?.unit ?? format.unitOf(dimension));
      return reading.ok ? setField(path, reading.quantity, options) : reading.problem;
    },
    (by) => {
      if (value === undefined) return undefined;
      return setField(path, stepped(value, by), { ...options, dragKey: `step ${path}` });
    },
  );
  const control = (
    <input
      id={id}
      className="figure-input"
      type="text"
      inputMode="text"
      autoComplete="off"
      spellCheck={false}
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
  if (!bare)
    return (
      <FieldFrame
        id={id}
        label={label}
        hint={hint}
        problem={typed.problem}
        also={alsoInUnits(value, dimension, format)}
      >
        {control}
      </FieldFrame>
    );
  return (
    <span className="bare-field">
      {control}
      {typed.problem === undefined ? null : (
        <span className="field-problem" id={`${id}-problem`} role="alert">
          {typed.problem}
        </span>
      )}
    </span>
  );
});
