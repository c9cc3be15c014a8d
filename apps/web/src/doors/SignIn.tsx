import "./doors.css";
import { routes, type Session } from "@tidewright/protocol";
import { type ReactNode, useId, useState } from "react";
import { ask } from "../api/ask.ts";
import { useWords } from "../words/useWords.ts";
import { NewPasswordField, newPasswordProblem } from "./NewPasswordField.tsx";
import { PasswordField } from "./PasswordField.tsx";
import { signInWords } from "./signInWords.ts";

interface Props {
  readonly session: Session;
  readonly onSignedIn: (session: Session) => void;
}

/** Asks who works here, or makes the first owner. */
export function SignIn({ session, onSignedIn }: Props) {
  const { say } = useWords();
  return (
    <main className="door">
      <div className="door-sheet">
        <p className="wordmark">Tidewright</p>
        <Water />
        {session.firstOwnerWanted ? <FirstOwner onSignedIn={onSignedIn} /> : <Known onSignedIn={onSignedIn} />}
        <p className="quiet door-foot">{say("doors.foot")}</p>
      </div>
    </main>
  );
}

function Known({ onSignedIn }: Pick<Props, "onSignedIn">) {
  const words = useWords();
  const { say } = words;
  const [name, setName] = useState("");
  const [password, setPassword] = useState("");
  const { problem, busy, run } = useTrying();
  return (
    <Form
      title={say("doors.title")}
      done={say("doors.signIn")}
      busy={busy}
      onSubmit={() =>
        run(async () => {
          if (name.trim() === "" || password === "") return say("doors.both");
          const answer = await ask(routes.signIn, { body: { name: name.trim(), password } });
          if (!answer.ok) return signInWords(answer, words);
          onSignedIn(answer.value);
          return undefined;
        })
      }
    >
      <Line label={say("doors.name")} value={name} autoComplete="username" onChange={setName} />
      <PasswordField
        label={say("doors.password")}
        value={password}
        autoComplete="current-password"
        problem={problem}
        onChange={setPassword}
      />
      <p className="quiet">{say("doors.forgotten")}</p>
    </Form>
  );
}

function FirstOwner({ onSignedIn }: Pick<Props, "onSignedIn">) {
  const words = useWords();
  const { say } = words;
  const [token, setToken] = useState("");
  const [name, setName] = useState("");
  const [password, setPassword] = useState("");
  const { problem, busy, run } = useTrying();
  return (
    <Form
      title={say("doors.firstOwner")}
      done={say("doors.makeOwner")}
      busy={busy}
      onSubmit={() =>
        run(async () => {
          if (token.trim() === "" || name.trim() === "") return say("doors.allThree");
          const wrong = newPasswordProblem(password, words);
          if (wrong !== undefined) return wrong;
          const answer = await ask(routes.firstOwner, { body: { token: token.trim(), name: name.trim(), password } });
          if (!answer.ok) {
            const strange = answer.reason === "refused" && [401, 403, 404].includes(answer.problem.status);
            return strange ? say("doors.tokenWrong") : signInWords(answer, words);
          }
          onSignedIn(answer.value);
          return undefined;
        })
      }
    >
      <p>{say("doors.firstOwnerExplain")}</p>
      <Line label={say("doors.token")} value={token} autoComplete="one-time-code" onChange={setToken} />
      <Line label={say("doors.name")} value={name} autoComplete="username" onChange={setName} />
      <NewPasswordField label={say("doors.newPassword")} value={password} problem={problem} onChange={setPassword} />
    </Form>
  );
}

interface FormProps {
  readonly title: string;
  readonly done: string;
  readonly busy: boolean;
  readonly onSubmit: () => void;
  readonly children: ReactNode;
}

function Form({ title, done, busy, onSubmit, children }: FormProps) {
  return (
    <form
      className="field-list"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        onSubmit();
      }}
    >
      <h1>{title}</h1>
      {children}
      <button type="submit" className="action action-strong" disabled={busy}>
        {done}
      </button>
    </form>
  );
}

interface LineProps {
  readonly label: string;
  readonly value: string;
  readonly autoComplete: string;
  readonly onChange: (text: string) => void;
}

function Line({ label, value, autoComplete, onChange }: LineProps) {
  const id = useId();
  return (
    <div className="field">
      <label className="field-label" htmlFor={id}>
        {label}
      </label>
      <input
        id={id}
        className="text-input"
        type="text"
        autoComplete={autoComplete}
        autoCapitalize="none"
        spellCheck={false}
        maxLength={200}
        required
        value={value}
        onChange={(event) => onChange(event.target.value)}
      />
    </div>
  );
}

/** One try at a time; `problem` is why the last one failed. */
function useTrying() {
  const [problem, setProblem] = useState<string>();
  const [busy, setBusy] = useState(false);
  const run = (work: () => Promise<string | undefined>) => {
    if (busy) return;
    setBusy(true);
    void work()
      .then(setProblem)
      .finally(() => setBusy(false));
  };
  return { problem, busy, run };
}

/** A line of water over the form: the sheet has one mark and this is it. */
function Water() {
  return (
    <svg className="door-water" viewBox="0 0 400 24" preserveAspectRatio="none" aria-hidden="true">
      <path className="door-fill" d="M0 12H400V24H0Z" />
      <path d="M0 12H400" vectorEffect="non-scaling-stroke" />
    </svg>
  );
}
