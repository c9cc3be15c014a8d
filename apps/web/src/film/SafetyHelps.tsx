import { describeScenario, type Scenario, timeWords } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import { useState } from "react";
import { useFormat } from "../format/useFormat.ts";
import { takeOver } from "../state/bench.ts";
import type { Help } from "./filmProtocol.ts";
import { useFilm } from "./filmState.ts";
import { capital, verdictWords } from "./filmWords.ts";

/** Changes that help against one scenario, each simulated again: before, after, and the hand to take it over. */
export function SafetyHelps({ design, scenario }: { readonly design: Design; readonly scenario: Scenario }) {
  const helps = useFilm((state) => state.helps);
  const format = useFormat();
  const [problem, setProblem] = useState<string>();
  if (helps?.design !== design || helps.scenarioId !== scenario.id)
    return (
      <p className="quiet" role="status">
        Simulating each change…
      </p>
    );
  if (helps.list.length === 0)
    return <p className="quiet">No single change that the tool knows helps here; two together may.</p>;
  const length = (si: number | undefined) =>
    si === undefined ? "" : si < 0 ? `${format(-si, "length")} over` : `${format(si, "length")} to spare`;
  const state = (help: Help, when: "before" | "after") => {
    const verdict = verdictWords[help[when]];
    const margin = when === "before" ? help.marginBefore : help.marginAfter;
    const spilled = when === "before" ? help.spilledBefore : help.spilledAfter;
    const told = [
      spilled > 1e-6 ? `${format(spilled, "volume")} on the floor` : "",
      when === "after" && help.after === "dry" && help.troubleAfter !== undefined
        ? `after ${timeWords(help.troubleAfter)}`
        : "",
      spilled > 1e-6 ? "" : length(margin),
    ].filter((text) => text !== "");
    return `${verdict}${told.length > 0 ? `, ${told.join(", ")}` : ""}`;
  };
  return (
    <div className="safety-helps">
      <p className="quiet">Each change alone, the whole of “{describeScenario(scenario)}” simulated again.</p>
      <ol>
        {helps.list.map((help) => (
          <li key={`${help.label} ${help.at}`} className="safety-help" data-help={help.at}>
            <span className="safety-help-name">{capital(help.label)}</span>
            <span className="safety-help-effect">
              {state(help, "before")} <span aria-hidden="true">→</span>
              <span className="visually-hidden">becomes</span> <strong>{state(help, "after")}</strong>
            </span>
            <span className="safety-help-price">{help.price > 0 ? format(help.price, "money") : "free"}</span>
            <button
              type="button"
              className="action"
              aria-label={`Apply: ${help.label}`}
              onClick={() => {
                const refused = takeOver(design, help.design, help.label);
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
