import { routes, type Session } from "@tidewright/protocol";
import { useState } from "react";
import { ask } from "../api/ask.ts";
import { NewPasswordField, newPasswordProblem } from "../doors/NewPasswordField.tsx";
import { PasswordField } from "../doors/PasswordField.tsx";
import { Problem } from "../fields/Problem.tsx";
import { forgetCopies } from "../keeping/forgetCopies.ts";
import { askSession, forgetMaker, knowSession } from "../state/session.ts";
import { useWords } from "../words/useWords.ts";
import { forgetDesk } from "./deskCache.ts";
import { refusalWords } from "./refusalWords.ts";

/** Who sits here: sign out, another password. */
export function You({ session }: { readonly session: Session | undefined }) {
  const words = useWords();
  const { say } = words;
  const [problem, setProblem] = useState<string>();
  if (session === undefined) return <p className="quiet">{say("desk.unreachable")}</p>;
  if (session.who !== "account")
    return (
      <section className="desk-block">
        <h2>{say("desk.you")}</h2>
        <p>{say("desk.thisMachine")}</p>
      </section>
    );
  const signOut = async () => {
    const answer = await ask(routes.signOut, {});
    if (!answer.ok) {
      setProblem(refusalWords(answer, words));
      return;
    }
    await Promise.all([forgetDesk(), forgetCopies()]);
    forgetMaker();
    location.hash = "#/jobs";
    knowSession(answer.value);
    await askSession();
  };
  return (
    <section className="desk-block">
      <div className="block-head">
        <h2>{say("desk.you")}</h2>
        <button type="button" className="action" onClick={() => void signOut()}>
          {say("desk.signOut")}
        </button>
      </div>
      <p>
        {say("desk.signedInAs", {
          name: session.name ?? "",
          role: session.role === null ? "" : say(`desk.role.${session.role}`),
        })}
      </p>
      <Problem text={problem} />
      <details>
        <summary>{say("desk.changePassword")}</summary>
        <OwnPassword name={session.name ?? ""} />
      </details>
    </section>
  );
}

function OwnPassword({ name }: { readonly name: string }) {
  const words = useWords();
  const { say } = words;
  const [current, setCurrent] = useState("");
  const [next, setNext] = useState("");
  const [problem, setProblem] = useState<string>();
  const [said, setSaid] = useState("");
  const change = async () => {
    if (current === "") return setProblem(say("doors.currentWrong"));
    const wrong = newPasswordProblem(next, words);
    if (wrong !== undefined) return setProblem(wrong);
    const answer = await ask(routes.changePassword, { body: { current, next } });
    if (!answer.ok) {
      const refused = answer.reason === "refused" && [401, 403].includes(answer.problem.status);
      setProblem(refused ? say("doors.currentWrong") : refusalWords(answer, words));
      return;
    }
    setProblem(undefined);
    setSaid(say("desk.passwordChanged"));
    setCurrent("");
    setNext("");
  };
  return (
    <form
      className="field-list own-password"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void change();
      }}
    >
      {/* Lets a keeper of passwords know whose this is. */}
      <input
        className="visually-hidden"
        type="text"
        autoComplete="username"
        value={name}
        readOnly
        tabIndex={-1}
        aria-hidden="true"
      />
      <PasswordField
        label={say("doors.currentPassword")}
        value={current}
        autoComplete="current-password"
        onChange={setCurrent}
      />
      <NewPasswordField
        label={say("doors.newPassword")}
        value={next}
        problem={problem}
        onChange={(text) => {
          setNext(text);
          setProblem(undefined);
        }}
      />
      <p className="block-hands">
        <button type="submit" className="action">
          {say("desk.changePassword")}
        </button>
        <span role="status" className="quiet">
          {said}
        </span>
      </p>
    </form>
  );
}
