import { type ShopGround, type StartAnswers, shopGroundOf } from "@tidewright/advice";
import { type Design, startHistory } from "@tidewright/design";
import type { Words } from "@tidewright/words";
import { type FormEvent, lazy, Suspense, useEffect, useMemo, useState } from "react";
import { useShopTerms } from "../catalogue/shopTerms.ts";
import { type ScreenFormat, useFormat } from "../format/useFormat.ts";
import { designAddress } from "../state/address.ts";
import { layFirst, show, startBench } from "../state/bench.ts";
import { useSettings } from "../state/settings.ts";
import { isWideScreen } from "../state/useWideScreen.ts";
import { useWords } from "../words/useWords.ts";
import { AssumedList } from "./AssumedList.tsx";
import { answersOf, defaultCurrency } from "./answersOf.ts";
import { type Draft, emptyDraft, keepDraft, keptDraft } from "./draft.ts";
import { keepStart } from "./keepStart.ts";
import { idOf, StartForm } from "./StartForm.tsx";
import { StartNotes } from "./StartNotes.tsx";
import { StartFigures, StartPreview } from "./StartPreview.tsx";
import { makeFirst, useFirstDesign } from "./useFirstDesign.ts";
import { animalsText } from "./valueText.ts";
import "./start.css";

const Bench = lazy(async () => ({ default: (await import("../bench/Bench.tsx")).Bench }));

/** The guided start: what a customer can say, a system drawn as it is said, and the pumps that fit. */
export function StartPage() {
  const words = useWords();
  const { say } = words;
  const format = useFormat();
  const us = useSettings((settings) => settings.system !== "metric");
  const [draft, setDraft] = useState(keptDraft);
  const [state, setState] = useState<"asking" | "working" | "unreachable" | "open">("asking");
  const [refusal, setRefusal] = useState("");
  const [asked, setAsked] = useState(false);
  const { jobId, trial } = whereFrom();
  const terms = useShopTerms();
  // On trial there is no shop, even where one was open before.
  const shop: ShopGround = useMemo(() => (trial || terms === undefined ? {} : shopGroundOf(terms)), [trial, terms]);
  const said = answersOf(draft, format.unitOf, us, shop.currency ?? defaultCurrency, words);
  const made = useFirstDesign(said.answers, shop);
  const wrong = Object.keys(said.problems).length;
  const ownName = made && nameOf(made.assessment.volumes.display, words, format, made.design);
  useEffect(() => keepDraft(draft), [draft]);
  // From the bench that it has opened the page is called again by its own address.
  useEffect(() => {
    const again = () => setState("asking");
    addEventListener("hashchange", again);
    return () => removeEventListener("hashchange", again);
  }, []);
  const change = (more: Partial<Draft>) => setDraft((before) => ({ ...before, ...more }));

  if (state === "open")
    return (
      <Suspense fallback={<p className="page-wait" aria-busy="true" />}>
        <Bench />
      </Suspense>
    );

  const named = (answers: StartAnswers): Design => {
    const { design, assessment } = makeFirst(answers, shop);
    return { ...design, name: draft.name.trim() || nameOf(assessment.volumes.display, words, format, design) };
  };
  const lay = () => {
    if (said.answers === undefined) return;
    layFirst(startHistory(named(said.answers)));
    startBench();
    history.replaceState(null, "", "#/start/");
    setState("open");
    showPumps();
  };
  const finish = async (event: FormEvent) => {
    event.preventDefault();
    setAsked(true);
    setRefusal("");
    if (said.answers === undefined) {
      const first = said.waiting ? idOf("/tank/length") : undefined;
      requestAnimationFrame(() => focusOn(first));
      return;
    }
    if (trial) return lay();
    setState("working");
    const design = named(said.answers);
    const kept = await keepStart({
      design,
      jobId,
      jobName: design.name,
      customer: draft.customer.trim(),
    });
    if (kept.ok) {
      keepDraft(emptyDraft);
      history.pushState(null, "", designAddress(kept.designId));
      dispatchEvent(new PopStateEvent("popstate"));
      showPumps();
      return;
    }
    setState(kept.reason === "unreachable" ? "unreachable" : "asking");
    if (kept.reason === "refused") setRefusal(say("start.refused", { detail: kept.detail }));
  };

  return (
    <div className="start">
      <header className="top-bar">
        <a className="wordmark" href="./" title={say("start.toDesk")}>
          Tidewright
        </a>
        <h1 className="start-title">{say("start.title")}</h1>
        <nav className="tools">
          <button type="button" className="tool" onClick={() => setDraft(emptyDraft)}>
            {say("start.clear")}
          </button>
          <a className="tool" href="./">
            {say("start.toDesk")}
          </a>
        </nav>
      </header>
      <main className="start-page">
        <form className="start-form" noValidate onSubmit={(event) => void finish(event)}>
          <p className="start-lead">{say("start.lead")}</p>
          <StartForm
            draft={draft}
            said={said}
            made={made}
            shop={shop}
            ownName={ownName}
            inJob={jobId !== undefined || trial}
            onChange={change}
          />
          <div className="start-finish">
            {wrong > 0 ? (
              <p className="field-problem">{said.problems.form ?? say("start.problems", { count: wrong })}</p>
            ) : asked && said.waiting ? (
              <p className="field-problem" role="alert">
                {say("start.customer.needTank")}
              </p>
            ) : null}
            {state === "unreachable" ? (
              <p className="field-problem" role="alert">
                {say("start.unreachable")}{" "}
                <button type="button" className="action" onClick={lay}>
                  {say("start.tryIt")}
                </button>
              </p>
            ) : null}
            {refusal === "" ? null : (
              <p className="field-problem" role="alert">
                {refusal}
              </p>
            )}
            <button type="submit" className="action action-strong" disabled={state === "working"}>
              {say(state === "working" ? "start.working" : "start.show")}
            </button>
          </div>
          {made === undefined ? null : (
            <div className="start-strip" aria-hidden="true">
              <StartFigures made={made} />
            </div>
          )}
        </form>
        <div className="start-result">
          {made !== undefined && wrong > 0 ? (
            <p className="field-problem" role="status">
              {say("start.behind")}
            </p>
          ) : null}
          <StartPreview made={made} name={draft.name.trim() || ownName} waiting={said.waiting} />
          {made === undefined ? null : <StartNotes made={made} />}
        </div>
        {made === undefined ? null : (
          <AssumedList defaults={made.defaults} onEdit={(question) => focusOn(idOf(question))} />
        )}
      </main>
    </div>
  );
}

/** A name that tells jobs apart until somebody gives a better one: the animals and the water. */
function nameOf(volume: number, words: Words, format: ScreenFormat, design: Design): string {
  const animals = animalsText(design.display.zones?.[0]?.animals ?? "mixedReef", words);
  return `${animals.charAt(0).toUpperCase()}${animals.slice(1)}, ${format(volume, "volume")}`;
}

/** The job that a design is begun for, and whether the page is tried without keeping. */
function whereFrom(): { readonly jobId: string | undefined; readonly trial: boolean } {
  const job = /^#\/start\/([^/]+)/.exec(location.hash)?.[1];
  return {
    jobId: job === undefined ? undefined : decodeURIComponent(job),
    trial: new URLSearchParams(location.search).has("try"),
  };
}

function showPumps(): void {
  show({ tab: "pumps", drawerOpen: true });
  // On one column the pumps lie below the fold, and they are what was asked for.
  if (!isWideScreen()) setTimeout(() => document.querySelector(".drawer")?.scrollIntoView({ block: "start" }), 300);
}

/** Brings a question into view and the caret into it; a group of choices gives its first. */
function focusOn(id: string | undefined): void {
  if (id === undefined) {
    document.querySelector<HTMLElement>('.start-form [aria-invalid="true"]')?.focus();
    return;
  }
  const fallback: Readonly<Record<string, string>> = {
    "start-overflow-drains": 'input[name="drains"]:checked',
    "start-sump": 'input[name="sump"]:checked',
    "start-power-voltage": 'input[name="mains"]:checked',
    "start-wishes-returnTurnover": "#start-wishes-returnTurnover-0",
    "start-rockShare": "#start-animals",
  };
  const found = document.getElementById(id) ?? document.querySelector<HTMLElement>(fallback[id] ?? "#none");
  found?.scrollIntoView({ block: "center" });
  found?.focus({ preventScroll: true });
}
