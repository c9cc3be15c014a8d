import { memo } from "react";
import { useFormat } from "../format/useFormat.ts";
import { useWords } from "../words/useWords.ts";
import { type FieldProps, readNumber, TypedField } from "./TypedField.tsx";

interface Props extends FieldProps<number> {
  /** Whole numbers from 1 on, with buttons for one less and one more. */
  readonly counts?: boolean;
}

/** A bare number: a count of fittings or a coefficient. */
export const NumberField = memo(function NumberField({ counts, ...field }: Props) {
  const { say } = useWords();
  const { decimalSign } = useFormat();
  const present = field.value ?? (counts ? 1 : undefined);
  return (
    <TypedField
      {...field}
      className="count-input"
      inputMode={counts ? "numeric" : "decimal"}
      shown={present === undefined ? "" : String(present).replace(".", decimalSign)}
      read={(text) => readNumber(text, say("fields.digitsOnly"), say)}
      {...(counts
        ? {
            next: (by: number) => Math.max(1, (present ?? 0) + by),
            framedBare: true,
            around: (input, step) => (
              <span className="stepper">
                <button
                  type="button"
                  className="step"
                  aria-label={say("fields.oneLess", { label: field.label })}
                  disabled={(present ?? 1) <= 1}
                  onClick={() => step(-1)}
                >
                  −
                </button>
                {input}
                <button
                  type="button"
                  className="step"
                  aria-label={say("fields.oneMore", { label: field.label })}
                  onClick={() => step(1)}
                >
                  +
                </button>
              </span>
            ),
          }
        : {})}
    />
  );
});
