import { memo, useId } from "react";
import { useWords } from "../words/useWords.ts";
import { setField } from "./setField.ts";

interface Props {
  readonly path: string;
  readonly value: boolean | undefined;
  readonly label: string;
  /** What yes puts into the document. */
  readonly start?: unknown;
}

/** A yes or no; no takes the field out of the document. */
export const CheckField = memo(function CheckField({ path, value, label, start = true }: Props) {
  const id = useId();
  const { inSentence } = useWords();
  return (
    <div className="field field-check">
      <input
        id={id}
        type="checkbox"
        data-path={path}
        checked={value ?? false}
        onChange={(event) => setField(path, event.target.checked ? start : undefined, { label: inSentence(label) })}
      />
      <label htmlFor={id}>{label}</label>
    </div>
  );
});
