import { useState } from "react";
import { useWords } from "../words/useWords.ts";
import { KeptText } from "./KeptField.tsx";

interface Props {
  readonly label: string;
  readonly initial: string;
  readonly done: string;
  /** Returns why it was not done. */
  readonly onDone: (name: string) => Promise<string | undefined>;
}

/** One name and one button. */
export function NameForm({ label, initial, done, onDone }: Props) {
  const { say } = useWords();
  const [name, setName] = useState(initial);
  const [problem, setProblem] = useState<string>();
  const [busy, setBusy] = useState(false);
  const submit = async () => {
    if (name.trim() === "") {
      setProblem(say("desk.nameMissing"));
      return;
    }
    setBusy(true);
    const why = await onDone(name.trim());
    setBusy(false);
    setProblem(why);
    if (why === undefined) setName(initial);
  };
  return (
    <form
      className="name-form"
      onSubmit={(event) => {
        event.preventDefault();
        void submit();
      }}
    >
      <KeptText
        begin
        label={label}
        value={name}
        problem={problem}
        onChange={(text) => {
          setName(text);
          setProblem(undefined);
        }}
      />
      <button type="submit" className="action" disabled={busy}>
        {done}
      </button>
    </form>
  );
}
