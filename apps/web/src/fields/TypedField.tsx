import { englishWords, type Words } from "@tidewright/words";
import { type ReactNode, useId } from "react";
import { useWords } from "../words/useWords.ts";
import { FieldFrame } from "./FieldFrame.tsx";
import { describedBy } from "./FieldNote.tsx";
import { setField } from "./setField.ts";
import { type Typed, useTyped } from "./useTyped.ts";

/** What every field with one number has in common. */
export interface FieldProps<Value> {
  readonly path: string;
  readonly value: Value | undefined;
  readonly label: string;
  readonly hint?: string | undefined;
  readonly optional?: boolean | undefined;
  /** Shows the control alone, for a table; the label is still read out. */
  readonly bare?: boolean | undefined;
}

/** A text as a value of the document, or why it cannot be one. */
export type Reading<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly problem: string };

interface Props<Value> extends FieldProps<Value> {
  /** The value as it stands in the input. */
  readonly shown: string;
  readonly read: (text: string) => Reading<Value>;
  /** The value after one step up or down, where it can be stepped; steps in a row are one step of the history. */
  readonly next?: ((by: number) => Value | undefined) | undefined;
  readonly inputMode?: "text" | "numeric" | "decimal";
  readonly className?: string;
  readonly also?: string | undefined;
  /** What stands around the input, such as a slider or buttons; not in a table unless `framedBare`. */
  readonly around?: (input: ReactNode, step: (by: number) => void) => ReactNode;
  readonly framedBare?: boolean;
}

/** One number of the document as a text input: typed freely, taken on Enter or on leaving, stepped by arrow keys, emptied
 *  where it may be left out. */
export function TypedField<Value>(props: Props<Value>) {
  const { path, label, hint, optional, bare, shown, read, next, around } = props;
  const id = useId();
  const { say, inSentence } = useWords();
  const options = { label: inSentence(label) };
  const take = (text: string) => {
    if (text.trim() === "" && optional) return setField(path, undefined, options);
    const reading = read(text);
    return reading.ok ? setField(path, reading.value, options) : reading.problem;
  };
  const step = (by: number) => {
    const value = next?.(by);
    return value === undefined ? undefined : setField(path, value, { ...options, dragKey: `step ${path}` });
  };
  const typed = useTyped(shown, take, next && step);
  const input = (
    <input
      id={id}
      className={`figure-input${props.className ? ` ${props.className}` : ""}`}
      type="text"
      inputMode={props.inputMode ?? "text"}
      autoComplete="off"
      spellCheck={false}
      data-path={path}
      value={typed.text}
      data-draft={typed.draft}
      placeholder={optional ? say("fields.notGiven") : undefined}
      aria-label={bare ? label : undefined}
      aria-invalid={typed.problem !== undefined}
      aria-describedby={describedBy(id, bare ? undefined : hint, typed.problem)}
      {...handlersOf(typed)}
    />
  );
  const control = around && (!bare || props.framedBare) ? around(input, step) : input;
  if (!bare)
    return (
      <FieldFrame id={id} label={label} hint={hint} problem={typed.problem} also={props.also}>
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
}

/** The handlers of an input whose text is a person's until it is taken. */
export function handlersOf({ onChange, onBlur, onKeyDown }: Typed) {
  return {
    onChange: (event: { readonly target: { readonly value: string } }) => onChange(event.target.value),
    onBlur,
    onKeyDown,
  };
}

/** Returns a typed number with a decimal point or comma, or what is wrong with it.
 *  text as typed   fix what to give instead   say the reader's words   -> Reading */
export function readNumber(text: string, fix: string, say: Words["say"] = englishWords.say): Reading<number> {
  // One thousand five hundred, or one and a half: the reader of a number must not choose.
  const twofold = /^\s*([-+]?[1-9]\d{0,2}),(\d{3})\s*$/.exec(text);
  if (twofold)
    return { ok: false, problem: say("fields.twofold", { text: text.trim(), whole: `${twofold[1]}${twofold[2]}` }) };
  const value = Number(text.replace(",", ".").trim());
  return text.trim() === "" || !Number.isFinite(value)
    ? { ok: false, problem: say("fields.noNumber", { text, fix }) }
    : { ok: true, value };
}
