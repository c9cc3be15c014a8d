import { type SafetyLever, type SafetyRow, verdicts } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import { useState } from "react";
import { useFormat } from "../format/useFormat.ts";
import { takeOver } from "../state/bench.ts";
import { useFilm } from "./filmState.ts";
import { capital, verdictWords } from "./filmWords.ts";

/** Changes that help against one scenario, each simulated again: before, after, and the hand to take it over. */
export function SafetyHelps({ design, row }: { readonly design: Design; readonly row: SafetyRow }) {
  const levers = useFilm((state) => state.levers);
  const [problem, setProblem] = useState<string>();
  if (levers?.design !== design)
    return (
      <p className="quiet" role="status">
        Simulating each change…
      </p>
    );
  const found = levers.list.flatMap((lever) => {
    const effect = lever.effects.find(({ scenario }) => scenario === row.scenario.id);
    const better = effect !== undefined && verdicts.indexOf(effect.after) > verdicts.indexOf(effect.before);
    return better ? [{ lever, effect }] : [];
  });
  if (found.length === 0)
    return <p className="quiet">No single change that the tool knows helps here; two together may.</p>;
  return (
    <div className="safety-helps">
      <p className="quiet">Each change alone, everything that was in trouble simulated again.</p>
      <ol>
        {found.map(({ lever, effect }) => (
          <li key={`${lever.label} ${lever.at}`} className="safety-help" data-help={lever.kind}>
            <Effect lever={lever} row={row} effect={effect} />
            <button
              type="button"
              className="action"
              aria-label={`Apply: ${lever.label}`}
              onClick={() => {
                const refused = takeOver(design, lever.design, lever.label);
                setProblem(refused === undefined ? undefined : `${refused.message}; ${refused.fix}`);
              }}
            >
              Apply
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
  const { margin } = effect;
  const now = row.spilled > 1e-6 ? `, ${format(row.spilled, "volume")} on the floor` : "";
  const left =
    margin === undefined
      ? ""
      : `, ${format(Math.abs(margin), "length")} ${margin < 0 ? "over a rim" : "to the nearest rim"}`;
  const others = lever.effects.length - 1;
  const cured = lever.effects.filter((each) => each.after !== each.before).length - 1;
  return (
    <>
      <span className="safety-help-name">{capital(lever.label)}</span>
      <span className="safety-help-effect">
        {verdictWords[effect.before]}
        {now} <span aria-hidden="true">→</span>
        <span className="visually-hidden">becomes</span>{" "}
        <strong>
          {verdictWords[effect.after]}
          {left}
        </strong>
        {others > 0 ? (
          <span className="safety-help-others">
            {cured > 0 ? `betters ${cured} of ${others} other troubles too` : "no other trouble with it"}
          </span>
        ) : null}
      </span>
      <span className="safety-help-price">{lever.price > 0 ? format(lever.price, "money") : "nothing to buy"}</span>
    </>
  );
}
