import { animalGroups } from "@tidewright/design";
import { type IntakeInvitation, routes } from "@tidewright/protocol";
import { languages } from "@tidewright/words";
import { type FormEvent, useEffect, useRef, useState } from "react";
import { ask } from "../../api/ask.ts";
import { changeSettings } from "../../state/settings.ts";
import { useWords } from "../../words/useWords.ts";
import { ChoiceAnswer, TypedAnswer } from "../StartFields.tsx";
import {
  type CustomerDraft,
  type CustomerProblems,
  type CustomerSize,
  customerUnit,
  readCustomer,
} from "./customerDraft.ts";
import { forgetDraft, keepDraft, keepSent, keptDraft } from "./keptDrafts.ts";
import "../start.css";
import "./customer.css";

type State = "opening" | "asking" | "sending" | "sent" | "closed" | "offline";

/** Statuses of a link that opens nothing any more. */
const gone = [401, 403, 404, 410];
const languageNames = { en: "English", de: "Deutsch" } as const;

/** The form that a customer fills in on a phone, behind the link that a shop has sent. */
export function CustomerPage() {
  const [token, setToken] = useState(() => location.hash.slice(1));
  useEffect(() => {
    const changed = () => setToken(location.hash.slice(1));
    addEventListener("hashchange", changed);
    return () => removeEventListener("hashchange", changed);
  }, []);
  // Another link is another customer's: nothing of the one before is shown under it.
  return <CustomerForm key={token} token={token} />;
}

function CustomerForm({ token }: { readonly token: string }) {
  const words = useWords();
  const { say } = words;
  const [state, setState] = useState<State>("opening");
  const [invitation, setInvitation] = useState<IntakeInvitation>();
  const [draft, setDraft] = useState(() => keptDraft(token, navigator.language));
  const [problems, setProblems] = useState<CustomerProblems>({});
  const [trouble, setTrouble] = useState("");
  const form = useRef<HTMLFormElement>(null);
  const close = () => {
    forgetDraft(token, draft);
    setState("closed");
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is typed does not ask again
  useEffect(() => {
    let here = true;
    const open = async () => {
      setState("opening");
      if (token === "") return setState("closed");
      const answer = await ask(routes.intake, { link: `${token}.${draft.id}` });
      if (!here) return;
      if (answer.ok) setInvitation(answer.value);
      if (answer.ok && answer.value.answered) keepSent(token, draft);
      if (answer.ok) return setState(answer.value.answered ? "sent" : "asking");
      if (answer.reason === "refused" && gone.includes(answer.problem.status)) return close();
      setState(answer.reason === "refused" && answer.problem.status < 429 ? "closed" : "offline");
    };
    void open();
    addEventListener("online", open);
    return () => {
      here = false;
      removeEventListener("online", open);
    };
  }, [token]);
  useEffect(() => {
    document.title = say("start.customer.title");
  }, [say]);

  const shop = invitation?.shop.name || say("start.customer.aShop");
  const change = (more: Partial<CustomerDraft>) => {
    const next = { ...draft, ...more };
    setDraft(next);
    keepDraft(token, next);
  };
  const send = async (event: FormEvent) => {
    event.preventDefault();
    setTrouble("");
    const reading = readCustomer(draft, words);
    setProblems(reading.ok ? {} : reading.problems);
    if (!reading.ok) {
      requestAnimationFrame(() => form.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus());
      return;
    }
    setState("sending");
    // Its id must outlive a reload: the answer may be lost though all has arrived.
    keepDraft(token, draft);
    const answer = await ask(routes.answerIntake, {
      link: `${token}.${draft.id}`,
      body: {
        name: draft.name.trim(),
        contact: draft.contact.trim(),
        notes: reading.notes,
        language: words.language,
        answers: reading.answers,
      },
    });
    if (answer.ok) {
      keepSent(token, draft);
      setState("sent");
      return;
    }
    if (answer.reason === "refused" && gone.includes(answer.problem.status)) return close();
    setState("asking");
    if (answer.reason === "unreachable") setTrouble(say("start.customer.offline"));
    // Too many at once, a full disk, a fault of the server's: what was typed is sound.
    else if (answer.problem.status === 429 || answer.problem.status >= 500) setTrouble(say("start.customer.tooMany"));
    else setTrouble(say("start.customer.outOfRange"));
  };

  if (state === "closed") return <Word shop={shop} text={say("start.customer.closed")} />;
  if (state === "sent")
    return <Word shop={shop} title={say("start.customer.thanks")} text={say("start.customer.thanksMore", { shop })} />;
  if (invitation === undefined)
    return <Word shop="" text={say(state === "offline" ? "start.customer.offline" : "start.customer.opening")} />;

  const size = (name: CustomerSize, label: string, hint?: string) => (
    <TypedAnswer
      id={`customer-${name}`}
      label={label}
      text={draft.sizes[name] ?? ""}
      unit={customerUnit(name, draft.units).replace("US ", "")}
      problem={problems[name]}
      {...(hint === undefined ? {} : { hint })}
      onText={(text) => change({ sizes: { ...draft.sizes, [name]: text } })}
    />
  );
  return (
    <div className="customer">
      <header className="customer-head">
        <p className="customer-shop">{shop}</p>
        <div className="customer-languages">
          {languages.map((language) => (
            <button
              key={language}
              type="button"
              className="tool"
              lang={language}
              aria-pressed={words.language === language}
              onClick={() => changeSettings({ language })}
            >
              {languageNames[language]}
            </button>
          ))}
        </div>
      </header>
      <main className="customer-main">
        <h1>{say("start.customer.title")}</h1>
        <p className="start-lead">{say("start.customer.lead", { shop })}</p>
        <form ref={form} className="start-form" noValidate onSubmit={(event) => void send(event)}>
          <section className="start-step" aria-labelledby="customer-you">
            <h2 id="customer-you">{say("start.customer.you")}</h2>
            <TypedAnswer
              id="customer-name"
              label={say("start.customer.name")}
              text={draft.name}
              problem={problems.name}
              numeric={false}
              onText={(name) => change({ name: name.slice(0, 200) })}
            />
            <TypedAnswer
              id="customer-contact"
              label={say("start.customer.contact")}
              text={draft.contact}
              problem={problems.contact}
              numeric={false}
              onText={(contact) => change({ contact: contact.slice(0, 2000) })}
            />
          </section>

          <section className="start-step" aria-labelledby="customer-tank">
            <h2 id="customer-tank">{say("start.customer.tank")}</h2>
            <ChoiceAnswer
              legend={say("start.customer.units")}
              name="units"
              value={draft.units}
              choices={(["metric", "us"] as const).map((value) => ({
                value,
                label: say(`start.customer.units.${value}`),
              }))}
              onChoose={(units) => change({ units })}
            />
            <div className="start-columns">
              {size("length", say("start.customer.length"))}
              {size("width", say("start.customer.width"))}
              {size("height", say("start.customer.height"))}
              {size("volume", say("start.customer.volume"))}
            </div>
            {problems.tank === undefined ? null : (
              <p className="field-problem" role="alert">
                {problems.tank}
              </p>
            )}
            <ChoiceAnswer
              legend={say("start.customer.glass")}
              name="glass"
              value={draft.glass}
              choices={(["drilled", "drill", "keep", "unknown"] as const).map((value) => ({
                value,
                label: say(`start.customer.glass.${value}`),
              }))}
              onChoose={(glass) => change({ glass })}
            />
            {draft.glass === "drilled" ? (
              <div className="start-columns">
                <TypedAnswer
                  id="customer-holes"
                  label={say("start.customer.holes")}
                  text={draft.holes}
                  problem={problems.holes}
                  onText={(holes) => change({ holes })}
                />
                {size("holeSize", say("start.holes.diameter"))}
              </div>
            ) : null}
          </section>

          <section className="start-step" aria-labelledby="customer-life">
            <h2 id="customer-life">{say("start.step.life")}</h2>
            <fieldset className="start-choice">
              <legend className="field-label">{say("start.customer.animals")}</legend>
              {animalGroups.map((group) => (
                <label key={group} className="start-option">
                  <input
                    type="checkbox"
                    checked={draft.animals.includes(group)}
                    onChange={(event) =>
                      change({
                        animals: event.target.checked
                          ? [...draft.animals, group]
                          : draft.animals.filter((each) => each !== group),
                      })
                    }
                  />
                  <span>{say(`start.customer.animals.${group}`)}</span>
                </label>
              ))}
            </fieldset>
          </section>

          <section className="start-step" aria-labelledby="customer-place">
            <h2 id="customer-place">{say("start.customer.place")}</h2>
            {size("stand", say("start.customer.stand"), say("start.customer.stand.hint"))}
            <ChoiceAnswer
              legend={say("start.customer.topOff")}
              name="topOff"
              value={draft.topOff}
              choices={(["automatic", "none", "unknown"] as const).map((value) => ({
                value,
                label: say(`start.customer.topOff.${value}`),
              }))}
              onChoose={(topOff) => change({ topOff })}
            />
            {draft.topOff === "automatic" ? size("reservoir", say("start.customer.reservoir")) : null}
            <div className="field">
              <label className="field-label" htmlFor="customer-notes">
                {say("start.customer.notes")}
              </label>
              <textarea
                id="customer-notes"
                className="customer-notes"
                rows={4}
                maxLength={4500}
                value={draft.notes}
                onChange={(event) => change({ notes: event.target.value })}
              />
            </div>
          </section>

          <p className="customer-privacy">{say("start.customer.privacy")}</p>
          {trouble === "" ? null : (
            <p className="field-problem" role="alert">
              {trouble}
            </p>
          )}
          <button type="submit" className="action action-strong customer-send" disabled={state === "sending"}>
            {say(state === "sending" ? "start.customer.sending" : "start.customer.send")}
          </button>
          <p className="quiet">{say("start.customer.kept")}</p>
        </form>
      </main>
    </div>
  );
}

/** A page that says one thing. */
function Word({ shop, title, text }: { readonly shop: string; readonly title?: string; readonly text: string }) {
  return (
    <main className="customer customer-word">
      {shop === "" ? null : <p className="customer-shop">{shop}</p>}
      {title === undefined ? null : <h1>{title}</h1>}
      <p role="status">{text}</p>
    </main>
  );
}
