import { type SafetySweep, safetyCautions, verdicts } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import { useEffect } from "react";
import "./film.css";
import { useFormat } from "../format/useFormat.ts";
import { useBench } from "../state/bench.ts";
import { useWords } from "../words/useWords.ts";
import { answerSentences } from "./answerSentences.ts";
import { forgetOthers, useFilm, wantSweep } from "./filmState.ts";
import { SafetyTable } from "./SafetyTable.tsx";

/** Quiet time after the last edit before everything is simulated again [ms]. */
const settleTime = 300;

/** Every way to wet a floor that the tool knows, played on the design on the table: table, answers, cautions. */
export function SafetySheet() {
  const design = useBench((state) => state.history.present);
  const sweep = useFilm((state) => state.sweep);
  const fault = useFilm((state) => state.fault);
  const words = useWords();
  const { say } = words;
  useEffect(() => {
    forgetOthers(design);
    const timer = setTimeout(() => wantSweep(design), settleTime);
    return () => clearTimeout(timer);
  }, [design]);
  // A table belongs to one document and is never shown for another.
  if (sweep?.design !== design)
    return fault === undefined ? (
      <Progress design={design} />
    ) : (
      <p className="field-problem" role="alert">
        {say("film.fault", { fault })}
      </p>
    );
  return (
    <div className="safety">
      <Summary result={sweep.result} />
      <SafetyTable design={design} sweep={sweep.result} />
      <div className="sheet-columns">
        <Answers design={design} result={sweep.result} />
        <section className="sheet-block">
          <h3>{say("film.sheet.besides")}</h3>
          <ul className="safety-cautions">
            {safetyCautions(design, words).map((text) => (
              <li key={text} className="caution">
                {text}
              </li>
            ))}
          </ul>
        </section>
      </div>
    </div>
  );
}

function Progress({ design }: { readonly design: Design }) {
  const sweeping = useFilm((state) => state.sweeping);
  const { say } = useWords();
  const known = sweeping?.design === design ? sweeping : undefined;
  return (
    <div className="safety-progress">
      <p className="quiet" role="status">
        {known === undefined || known.done === 0
          ? say("film.sheet.everything")
          : say("film.sheet.progress", { done: known.done, all: known.of })}
      </p>
      <progress max={known?.of ?? 1} value={known?.done ?? 0} aria-label={say("film.sheet.scenarios")} />
    </div>
  );
}

function Summary({ result: { rows } }: { readonly result: SafetySweep }) {
  const { say } = useWords();
  const parts = verdicts
    .map((verdict) => [verdict, rows.filter((row) => row.verdict === verdict).length] as const)
    .flatMap(([verdict, count]) => (count === 0 ? [] : [say(`film.sheet.${verdict}`, { count })]));
  return <p className="safety-summary">{say("film.sheet.summary", { all: rows.length, parts: parts.join(", ") })}</p>;
}

function Answers({ design, result }: { readonly design: Design; readonly result: SafetySweep }) {
  const format = useFormat();
  const words = useWords();
  const { say } = words;
  return (
    <section className="sheet-block safety-answers">
      <h3>{say("film.sheet.follows")}</h3>
      <dl>
        {answerSentences(result.answers, design, format, words).map(({ id, title, text, missed }) => (
          <div key={id} data-answer={id} data-missed={missed ? "" : undefined}>
            <dt>
              {title}
              {missed ? <span className="safety-missed"> {say("film.sheet.notMet")}</span> : null}
            </dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
