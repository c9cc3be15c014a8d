import { describeLever, type SafetyLever, type SafetyRow, verdicts } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import { useState } from "react";
import { sentence } from "../fields/setField.ts";
import { useFormat } from "../format/useFormat.ts";
import { takeOver } from "../state/bench.ts";
import { useWords } from "../words/useWords.ts";
import { useFilm } from "./filmState.ts";
import { capital } from "./filmWords.ts";

/** Changes that help against one scenario, each simulated again: before, after, and the hand to take it over. */
export function SafetyHelps({ design, row }: { readonly design: Design; readonly row: SafetyRow }) {
  const levers = useFilm((state) => state.levers);
  const [problem, setProblem] = useState<string>();
  const words = useWords();
  const { say } = words;
  if (levers?.design !== design)
    return (
      <p className="quiet" role="status">
        {say("film.helps.simulating")}
      </p>
    );
  const found = levers.list.flatMap((lever) => {
    const effect = lever.effects.find(({ scenario }) => scenario === row.scenario.id);
    const better = effect !== undefined && verdicts.indexOf(effect.after) > verdicts.indexOf(effect.before);
    return better ? [{ lever, effect }] : [];
  });
  if (found.length === 0) return <p className="quiet">{say("film.helps.none")}</p>;
  return (
    <div className="safety-helps">
      <p className="quiet">{say("film.helps.each")}</p>
      <ol>
        {found.map(({ lever, effect }) => (
          <li key={`${lever.label} ${lever.at}`} className="safety-help" data-help={lever.kind}>
            <Effect lever={lever} row={row} effect={effect} />
            <button
              type="button"
              className="action"
              aria-label={say("film.helps.applyNamed", { lever: describeLever(lever, words) })}
              onClick={() => {
                const refused = takeOver(design, lever.design, describeLever(lever, words));
                setProblem(sentence(refused));
              }}
            >
              {say("film.helps.apply")}
            </button>
          </li>
        ))}
      </ol>
      {problem === undefined ? null : (
        <p className="field-problem" role="alert">
          {problem}
        </p>
      )}
    </div>
  );
}

function Effect(props: {
  readonly lever: SafetyLever;
  readonly row: SafetyRow;
  readonly effect: SafetyLever["effects"][number];
}) {
  const { lever, row, effect } = props;
  const format = useFormat();
  const words = useWords();
  const { say } = words;
  const { margin } = effect;
  const now = row.spilled > 1e-6 ? say("film.helps.onFloor", { volume: format(row.spilled, "volume") }) : "";
  const left =
    margin === undefined
      ? ""
      : say(margin < 0 ? "film.helps.overRim" : "film.helps.toRim", { length: format(Math.abs(margin), "length") });
  const others = lever.effects.length - 1;
  const cured = lever.effects.filter((each) => each.after !== each.before).length - 1;
  return (
    <>
      <span className="safety-help-name">{capital(describeLever(lever, words))}</span>
      <span className="safety-help-effect">
        {say(`film.verdict.${effect.before}`)}
        {now} <span aria-hidden="true">→</span>
        <span className="visually-hidden">{say("film.helps.becomes")}</span>{" "}
        <strong>
          {say(`film.verdict.${effect.after}`)}
          {left}
        </strong>
        {others > 0 ? (
          <span className="safety-help-others">
            {cured > 0 ? say("film.helps.others", { cured, others }) : say("film.helps.noOther")}
          </span>
        ) : null}
      </span>
      <span className="safety-help-price">
        {lever.price > 0 ? format(lever.price, "money") : say("film.helps.nothingToBuy")}
      </span>
    </>
  );
}
