import { type SafetySweep, safetyCautions } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import { useEffect } from "react";
import "./film.css";
import { useFormat } from "../format/useFormat.ts";
import { useBench } from "../state/bench.ts";
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
        Our fault: the simulation stopped ({fault}). The document is unharmed.
      </p>
    );
  return (
    <div className="safety">
      <Summary result={sweep.result} />
      <SafetyTable design={design} sweep={sweep.result} />
      <div className="sheet-columns">
        <Answers design={design} result={sweep.result} />
        <section className="sheet-block">
          <h3>Besides reckoning</h3>
          <ul className="safety-cautions">
            {safetyCautions(design).map((text) => (
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
  const known = sweeping?.design === design ? sweeping : undefined;
  return (
    <div className="safety-progress">
      <p className="quiet" role="status">
        {known === undefined || known.done === 0
          ? "Simulating everything that can fail…"
          : `Simulated ${known.done} of ${known.of}…`}
      </p>
      <progress max={known?.of ?? 1} value={known?.done ?? 0} aria-label="Scenarios simulated" />
    </div>
  );
}

function Summary({ result: { rows } }: { readonly result: SafetySweep }) {
  const count = (...wanted: string[]) => rows.filter(({ verdict }) => wanted.includes(verdict)).length;
  const told: readonly (readonly [number, string, string])[] = [
    [count("wet"), "wets the floor", "wet the floor"],
    [count("unsolved"), "could not be simulated to its end", "could not be simulated to their end"],
    [count("dry"), "makes a pump draw air", "make a pump draw air"],
    [count("tight"), "stays dry by little", "stay dry by little"],
    [count("safe"), "stays dry", "stay dry"],
  ];
  const parts = told.flatMap(([n, one, many]) => (n === 0 ? [] : [`${n} ${n === 1 ? one : many}`]));
  return (
    <p className="safety-summary">
      Of {rows.length} things that can go wrong, {parts.join(", ")}.
    </p>
  );
}

function Answers({ design, result }: { readonly design: Design; readonly result: SafetySweep }) {
  const format = useFormat();
  return (
    <section className="sheet-block safety-answers">
      <h3>What follows</h3>
      <dl>
        {answerSentences(result.answers, design, format).map(({ id, title, text, missed }) => (
          <div key={id} data-answer={id} data-missed={missed ? "" : undefined}>
            <dt>
              {title}
              {missed ? <span className="safety-missed"> not met</span> : null}
            </dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
