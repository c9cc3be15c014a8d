import { memo, useId, useState } from "react";
import type { Choice } from "../document/fields.ts";
import { useWords } from "../words/useWords.ts";
import { FieldFrame } from "./FieldFrame.tsx";
import { setField } from "./setField.ts";

interface Props {
  readonly path: string;
  readonly value: string | undefined;
  readonly label: string;
  readonly choices: readonly Choice[];
  readonly hint?: string | undefined;
  readonly optional?: boolean | undefined;
  readonly bare?: boolean;
}

/** One word out of a list, with the browser's own list of choices: it works with every finger and every reader. */
export const ChoiceField = memo(function ChoiceField({ path, value, label, choices, hint, optional, bare }: Props) {
  const id = useId();
  const { say, inSentence } = useWords();
  const [problem, setProblem] = useState<string>();
  const groups = [...new Set(choices.map(({ group }) => group))];
  const known = value === undefined || choices.some((choice) => choice.value === value);
  const options = (group: string | undefined) =>
    choices
      .filter((choice) => choice.group === group)
      .map((choice) => (
        <option key={choice.value} value={choice.value}>
          {choice.label}
        </option>
      ));
  const select = (
    <select
      id={id}
      className="select"
      data-path={path}
      value={value ?? ""}
      aria-label={bare ? label : undefined}
      aria-invalid={problem !== undefined}
      onChange={(event) =>
        setProblem(
          setField(
            path,
            event.target.value === "" ? undefined : event.target.value,
            { label: inSentence(label) },
            choices.find((choice) => choice.value === event.target.value)?.also,
          ),
        )
      }
    >
      {optional || value === undefined ? <option value="">{say("fields.notGiven")}</option> : null}
      {known ? null : <option value={value}>{value}</option>}
      {groups.map((group) =>
        group === undefined ? (
          options(group)
        ) : (
          <optgroup key={group} label={group}>
            {options(group)}
          </optgroup>
        ),
      )}
    </select>
  );
  if (bare) return select;
  return (
    <FieldFrame id={id} label={label} hint={hint} problem={problem}>
      {select}
    </FieldFrame>
  );
});
