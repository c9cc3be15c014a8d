import type { StartDefault } from "@tidewright/advice";
import { useFormat } from "../format/useFormat.ts";
import { useWords } from "../words/useWords.ts";
import { sourceText, whyText } from "./valueText.ts";

interface TypedProps {
  readonly id: string;
  readonly label: string;
  readonly text: string;
  readonly unit?: string;
  /** What counts while nothing is typed. */
  readonly placeholder?: string;
  readonly assumed?: StartDefault | undefined;
  readonly hint?: string;
  readonly problem?: string | undefined;
  readonly numeric?: boolean;
  onText(text: string): void;
}

/** A question that is answered by typing; the default stands in it in grey, with its reason below. */
export function TypedAnswer(props: TypedProps) {
  const { id, label, text, unit, placeholder, assumed, hint, problem, numeric = true } = props;
  const below = [
    problem === undefined ? [] : `${id}-problem`,
    text === "" && assumed ? `${id}-why` : [],
    hint ? `${id}-hint` : [],
  ].flat();
  // A unit that is written in the field already needs no second word.
  const bare = text === "" ? !/\p{L}|%/u.test(placeholder ?? "") : !/\p{L}|["'%]/u.test(text);
  return (
    <div className="field start-field">
      <label className="field-label" htmlFor={id}>
        {label}
      </label>
      <span className="start-input">
        <input
          id={id}
          className={numeric ? "figure-input" : "text-input"}
          value={text}
          placeholder={placeholder ?? ""}
          autoComplete="off"
          spellCheck={false}
          aria-invalid={problem !== undefined}
          aria-describedby={below.length > 0 ? below.join(" ") : undefined}
          onChange={(event) => props.onText(event.target.value)}
        />
        {unit === undefined || !bare ? null : (
          <span className="start-unit" aria-hidden="true">
            {unit}
          </span>
        )}
      </span>
      {hint === undefined ? null : (
        <p className="field-hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {problem === undefined ? null : (
        <p className="field-problem" id={`${id}-problem`}>
          {problem}
        </p>
      )}
      {text === "" && assumed ? <Why id={`${id}-why`} assumed={assumed} /> : null}
    </div>
  );
}

/** Why a default is what it is, and where that comes from. */
export function Why({ id, assumed }: { readonly id?: string; readonly assumed: StartDefault }) {
  const words = useWords();
  const format = useFormat();
  return (
    <p className="start-why" id={id}>
      {whyText(assumed, words, format)} · {sourceText(assumed.source, words)}
    </p>
  );
}

interface ChoiceProps<Value extends string> {
  readonly legend: string;
  readonly name: string;
  readonly choices: readonly { readonly value: Value; readonly label: string }[];
  /** What was chosen, or what counts while nothing is. */
  readonly value: Value;
  readonly assumed?: boolean;
  readonly why?: StartDefault | undefined;
  onChoose(value: Value): void;
}

/** One of a few; what nobody chose is marked as assumed. */
export function ChoiceAnswer<Value extends string>(props: ChoiceProps<Value>) {
  const { legend, name, choices, value, assumed = false, why } = props;
  return (
    <fieldset className="start-choice" data-assumed={assumed ? "" : undefined}>
      <legend className="field-label">{legend}</legend>
      {choices.map((choice) => (
        <label key={choice.value} className="start-option">
          <input
            type="radio"
            name={name}
            value={choice.value}
            checked={choice.value === value}
            onChange={() => props.onChoose(choice.value)}
            // A default that is confirmed is an answer.
            onClick={() => props.onChoose(choice.value)}
          />
          <span>{choice.label}</span>
        </label>
      ))}
      {assumed && why ? <Why assumed={why} /> : null}
    </fieldset>
  );
}
