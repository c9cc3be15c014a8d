import type { Words } from "@tidewright/words";
import { useWords } from "../words/useWords.ts";
import { PasswordField } from "./PasswordField.tsx";
import { shortestPassword } from "./signInWords.ts";

interface Props {
  readonly label: string;
  readonly value: string;
  readonly problem: string | undefined;
  readonly onChange: (text: string) => void;
}

/** A password to be chosen, with the least that it must have. */
export function NewPasswordField({ label, value, problem, onChange }: Props) {
  const { say } = useWords();
  return (
    <PasswordField
      label={label}
      hint={say("doors.passwordHint", { least: shortestPassword })}
      value={value}
      autoComplete="new-password"
      problem={problem}
      onChange={onChange}
    />
  );
}

/** Returns what is wrong with a password that somebody chose, undefined where it may be. */
export function newPasswordProblem(password: string, { say }: Words): string | undefined {
  return password.length < shortestPassword ? say("doors.passwordShort", { least: shortestPassword }) : undefined;
}
