import type { Dimension, Quantity } from "@tidewright/units";
import { memo, useId } from "react";
import { readQuantity, typedText } from "../format/quantityText.ts";
import { useFormat } from "../format/useFormat.ts";
import { useWords } from "../words/useWords.ts";
import { FieldFrame } from "./FieldFrame.tsx";
import { setField } from "./setField.ts";
import { type FieldProps, handlersOf } from "./TypedField.tsx";
import { useTyped } from "./useTyped.ts";

interface Props extends FieldProps<readonly [Quantity, Quantity]> {
  readonly dimension: Dimension;
}

/** Lowest and highest of a wish, in two inputs; emptying one takes the wish away where it may be left out. */
export const RangeField = memo(function RangeField({ path, value, dimension, label, hint, optional }: Props) {
  const id = useId();
  const format = useFormat();
  const words = useWords();
  const { say } = words;
  const options = { label: words.inSentence(label) };
  const take = (end: 0 | 1) => (text: string) => {
    if (text.trim() === "" && optional) return setField(path, undefined, options);
    const reading = readQuantity(text, dimension, value?.[end].unit ?? format.unitOf(dimension), words);
    if (!reading.ok) return reading.problem;
    const other = value?.[end === 0 ? 1 : 0] ?? reading.quantity;
    return setField(path, end === 0 ? [reading.quantity, other] : [other, reading.quantity], options);
  };
  const low = useTyped(value === undefined ? "" : typedText(value[0], dimension, format.decimalSign), take(0));
  const high = useTyped(value === undefined ? "" : typedText(value[1], dimension, format.decimalSign), take(1));
  const problem = low.problem ?? high.problem;
  const input = (typed: typeof low, end: "lowest" | "highest", own: string) => (
    <input
      id={own}
      className="figure-input"
      type="text"
      autoComplete="off"
      spellCheck={false}
      data-path={`${path}/${end === "lowest" ? 0 : 1}`}
      value={typed.text}
      data-draft={typed.draft}
      placeholder={optional ? say("fields.notGiven") : undefined}
      aria-label={say("fields.end", { label, end: say(`fields.${end}`) })}
      aria-invalid={typed.problem !== undefined}
      {...handlersOf(typed)}
    />
  );
  return (
    <FieldFrame id={id} label={label} hint={hint} problem={problem}>
      <span className="two-inputs">
        {input(low, "lowest", id)}
        <span aria-hidden="true">{say("fields.to")}</span>
        {input(high, "highest", `${id}-high`)}
      </span>
    </FieldFrame>
  );
});
