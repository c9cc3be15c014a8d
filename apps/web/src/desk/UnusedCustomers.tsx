import { type Customer, routes } from "@tidewright/protocol";
import { useState } from "react";
import { ask } from "../api/ask.ts";
import { Problem } from "../fields/Problem.tsx";
import { useWords } from "../words/useWords.ts";
import { customerHash } from "./deskAddress.ts";
import { KeptChoice } from "./KeptField.tsx";
import { refusalWords } from "./refusalWords.ts";
import { whenWords } from "./whenWords.ts";

const spans = [12, 24, 36, 60, 120] as const;

/** Customers of whom nothing was changed for long: whose data may be due to go. */
export function UnusedCustomers() {
  const words = useWords();
  const { say } = words;
  const [months, setMonths] = useState<number>(36);
  const [found, setFound] = useState<readonly Customer[]>();
  const [problem, setProblem] = useState<string>();
  const look = async () => {
    const since = new Date();
    since.setMonth(since.getMonth() - months);
    const answer = await ask(routes.unusedCustomers, { query: { since: since.toISOString() } });
    setFound(answer.ok ? answer.value.items : undefined);
    setProblem(answer.ok ? undefined : refusalWords(answer, words));
  };
  return (
    <section className="desk-block unused">
      <h2>{say("desk.unused")}</h2>
      <p className="quiet">{say("desk.unusedExplain")}</p>
      <form
        className="name-form"
        onSubmit={(event) => {
          event.preventDefault();
          void look();
        }}
      >
        <KeptChoice
          label={say("desk.unusedFor")}
          value={String(months)}
          onChange={(value) => {
            setMonths(Number(value));
            setFound(undefined);
          }}
        >
          {spans.map((span) => (
            <option key={span} value={span}>
              {say("desk.months", { months: span })}
            </option>
          ))}
        </KeptChoice>
        <button type="submit" className="action">
          {say("desk.look")}
        </button>
      </form>
      <Problem text={problem} />
      <div aria-live="polite">
        {found === undefined ? null : <p>{say("desk.unusedFound", { count: found.length })}</p>}
        <ul className="plain-list">
          {found?.map((customer) => (
            <li key={customer.id}>
              <a className="plain-link" href={customerHash(customer.id)}>
                {customer.name}
              </a>{" "}
              <span className="quiet">{whenWords(customer.updatedAt, new Date(), words)}</span>
            </li>
          ))}
        </ul>
      </div>
    </section>
  );
}
