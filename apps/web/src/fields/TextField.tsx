import { memo, useId } from "react";
import { useWords } from "../words/useWords.ts";
import { FieldFrame } from "./FieldFrame.tsx";
import { setField } from "./setField.ts";
import { useTyped } from "./useTyped.ts";

interface Props {
  readonly path: string;
  readonly value: string | undefined;
  readonly label: string;
  readonly hint?: string | undefined;
  readonly optional?: boolean | undefined;
  readonly bare?: boolean;
}

/** A name or a note. */
export const TextField = memo(function TextField({ path, value, label, hint, optional, bare }: Props) {
  const id = useId();
  const options = { label: useWords().inSentence(label) };
  const typed = useTyped(value ?? "", (text) =>
    setField(path, text.trim() === "" && optional ? undefined : text.trim(), options),
  );
  const input = (
    <input
      id={id}
      className="text-input"
      type="text"
      autoComplete="off"
      data-path={path}
      value={typed.text}
      data-draft={typed.draft}
      aria-label={bare ? label : undefined}
      // A bare one, such as a design's name in its bar, may be too short for what it holds.
      title={bare ? typed.text : undefined}
      aria-invalid={typed.problem !== undefined}
      aria-describedby={typed.problem === undefined ? undefined : `${id}-problem`}
      onChange={(event) => typed.onChange(event.target.value)}
      onBlur={typed.onBlur}
      onKeyDown={typed.onKeyDown}
    />
  );
  if (bare) return input;
  return (
    <FieldFrame id={id} label={label} hint={hint} problem={typed.problem}>
      {input}
    </FieldFrame>
  );
});
