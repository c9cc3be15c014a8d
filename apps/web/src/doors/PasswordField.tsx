import { useId, useState } from "react";
import { describedBy, FieldNote } from "../fields/FieldNote.tsx";
import { useWords } from "../words/useWords.ts";

interface Props {
  readonly label: string;
  readonly value: string;
  readonly autoComplete: "current-password" | "new-password";
  readonly onChange: (text: string) => void;
  readonly hint?: string | undefined;
  readonly problem?: string | undefined;
}

/** A password, hidden until its writer wants to see it. */
export function PasswordField({ label, value, autoComplete, onChange, hint, problem }: Props) {
  const { say } = useWords();
  const id = useId();
  const [seen, setSeen] = useState(false);
  return (
    <div className="field">
      <label className="field-label" htmlFor={id}>
        {label}
      </label>
      <div className="field-control">
        <input
          id={id}
          className="text-input"
          type={seen ? "text" : "password"}
          autoComplete={autoComplete}
          autoCapitalize="none"
          spellCheck={false}
          maxLength={200}
          required
          value={value}
          aria-invalid={problem !== undefined}
          aria-describedby={describedBy(id, hint, problem)}
          onChange={(event) => onChange(event.target.value)}
        />
        <button type="button" className="tool" aria-pressed={seen} onClick={() => setSeen(!seen)}>
          {say(seen ? "doors.hide" : "doors.show")}
        </button>
      </div>
      <FieldNote id={id} hint={hint} problem={problem} />
    </div>
  );
}
