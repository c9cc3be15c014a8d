import { type Account, type AccountRole, accountRoles, routes } from "@tidewright/protocol";
import { type ReactNode, useState } from "react";
import { type Answered, ask } from "../api/ask.ts";
import { Sheet } from "../bench/Sheet.tsx";
import { NewPasswordField, newPasswordProblem } from "../doors/NewPasswordField.tsx";
import { Problem } from "../fields/Problem.tsx";
import { useWords } from "../words/useWords.ts";
import { KeptChoice, KeptText } from "./KeptField.tsx";
import { refusalWords } from "./refusalWords.ts";
import { useAsked } from "./useAsked.ts";

/** Who may sign in, and as what. */
export function Accounts() {
  const words = useWords();
  const { say } = words;
  const accounts = useAsked("accounts", () => ask(routes.accounts, {}));
  const [open, setOpen] = useState<"new" | Account>();
  const [problem, setProblem] = useState<string>();
  const change = async (account: Account, body: { role?: AccountRole; disabled?: boolean }) => {
    const answer = await ask(routes.changeAccount, {
      params: { accountId: account.id },
      body,
      ifMatch: account.version,
    });
    setProblem(answer.ok ? undefined : refusalWords(answer, words));
    await accounts.again();
  };
  const close = () => setOpen(undefined);
  const done = async () => {
    close();
    await accounts.again();
  };
  const items = accounts.value?.items ?? [];
  return (
    <section className="desk-block">
      <div className="block-head">
        <h2>{say("desk.accounts")}</h2>
        <button type="button" className="action" onClick={() => setOpen("new")}>
          {say("desk.newAccount")}
        </button>
      </div>
      <dl className="roles">
        {accountRoles.map((role) => (
          <div key={role}>
            <dt>{say(`desk.role.${role}`)}</dt>
            <dd>{say(`desk.roleMay.${role}`)}</dd>
          </div>
        ))}
      </dl>
      {accounts.failed !== undefined && accounts.value === undefined ? (
        <p className="field-problem">{refusalWords(accounts.failed, words)}</p>
      ) : null}
      <Problem text={problem} />
      {accounts.value !== undefined && items.length === 0 ? <p className="quiet">{say("desk.noAccounts")}</p> : null}
      <ul className="accounts">
        {items.map((account) => (
          <li key={account.id} data-off={account.disabled ? "" : undefined}>
            <span className="account-name">
              {account.name}
              {account.disabled ? <span className="quiet"> · {say("desk.disabled")}</span> : null}
            </span>
            <KeptChoice
              className="bare-label"
              label={say("desk.roleOf", { name: account.name })}
              value={account.role}
              onChange={(role) => void change(account, { role: role as AccountRole })}
            >
              {accountRoles.map((role) => (
                <option key={role} value={role}>
                  {say(`desk.role.${role}`)}
                </option>
              ))}
            </KeptChoice>
            <span className="account-hands">
              <button type="button" className="tool" onClick={() => setOpen(account)}>
                {say("desk.newPassword")}
              </button>
              <button
                type="button"
                className="tool"
                onClick={() => void change(account, { disabled: !account.disabled })}
              >
                {say(account.disabled ? "desk.enable" : "desk.disable")}
              </button>
            </span>
          </li>
        ))}
      </ul>
      <Sheet name="new-account" title={say("desk.newAccount")} open={open === "new"} onClose={close}>
        <NewAccount onDone={done} />
      </Sheet>
      <Sheet
        name="new-password"
        title={typeof open === "object" ? say("desk.newPasswordFor", { name: open.name }) : ""}
        open={typeof open === "object"}
        onClose={close}
      >
        {typeof open === "object" ? <NewPassword account={open} onDone={done} /> : null}
      </Sheet>
    </section>
  );
}

function NewAccount({ onDone }: { readonly onDone: () => Promise<void> }) {
  const { say } = useWords();
  const [name, setName] = useState("");
  const [role, setRole] = useState<AccountRole>("staff");
  return (
    <PasswordForm
      label={say("doors.password")}
      done={say("desk.createAccount")}
      missing={name.trim() === "" ? say("desk.nameMissing") : undefined}
      send={(password) => ask(routes.createAccount, { body: { name: name.trim(), role, password } })}
      onDone={onDone}
    >
      <KeptText begin label={say("doors.name")} value={name} autoComplete="off" onChange={setName} />
      <KeptChoice label={say("desk.role")} value={role} onChange={(value) => setRole(value as AccountRole)}>
        {accountRoles.map((each) => (
          <option key={each} value={each}>
            {say(`desk.role.${each}`)}
          </option>
        ))}
      </KeptChoice>
    </PasswordForm>
  );
}

function NewPassword({ account, onDone }: { readonly account: Account; readonly onDone: () => Promise<void> }) {
  const { say } = useWords();
  return (
    <PasswordForm
      label={say("doors.newPassword")}
      done={say("desk.newPassword")}
      send={(password) =>
        ask(routes.changeAccount, { params: { accountId: account.id }, body: { password }, ifMatch: account.version })
      }
      onDone={onDone}
    >
      <p className="quiet">{say("desk.newPasswordExplain")}</p>
    </PasswordForm>
  );
}

interface PasswordFormProps {
  readonly label: string;
  readonly done: string;
  /** What is still missing above the password. */
  readonly missing?: string | undefined;
  readonly send: (password: string) => Promise<Answered<unknown>>;
  readonly onDone: () => Promise<void>;
  readonly children: ReactNode;
}

/** A form that ends with a password to be chosen, below which it says why it was not taken. */
function PasswordForm({ label, done, missing, send, onDone, children }: PasswordFormProps) {
  const words = useWords();
  const [password, setPassword] = useState("");
  const [problem, setProblem] = useState<string>();
  const submit = async () => {
    const wrong = missing ?? newPasswordProblem(password, words);
    if (wrong !== undefined) return setProblem(wrong);
    const answer = await send(password);
    if (answer.ok) await onDone();
    else setProblem(refusalWords(answer, words));
  };
  return (
    // The browser would say what is missing in its own language.
    <form
      className="field-list"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void submit();
      }}
    >
      {children}
      <NewPasswordField
        label={label}
        value={password}
        problem={problem}
        onChange={(text) => {
          setPassword(text);
          setProblem(undefined);
        }}
      />
      <p className="sheet-actions">
        <button type="submit" className="action action-strong">
          {done}
        </button>
      </p>
    </form>
  );
}
