import type { Lever, LeverEffect } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import { useState } from "react";
import { sentence } from "../fields/setField.ts";
import { type ScreenFormat, useFormat } from "../format/useFormat.ts";
import { takeOver } from "../state/bench.ts";

const rows: readonly (readonly [string, (effect: LeverEffect, format: ScreenFormat) => string])[] = [
  ["Return flow", (effect, format) => format(effect.returnFlow, "flow")],
  ["Total head", (effect, format) => format(effect.totalHead, "head")],
  ["Power", (effect, format) => format(effect.watts, "power")],
  ["Running a year", (effect, format) => format(effect.annualCost, "money")],
  ["Sound", (effect, format) => format(effect.soundLevel, "soundLevel")],
  ["Room for a power cut", (effect, format) => format(effect.sumpMargin, "volume")],
  ["Worst drain, share of quiet", (effect) => `${Math.round(effect.drainLoad * 100)} %`],
  ["Dangers", (effect) => String(effect.dangers)],
  ["Warnings", (effect) => String(effect.warnings)],
];

interface Props {
  readonly lever: Lever;
  /** The document that the lever changes. */
  readonly base: Design;
}

/** One change on its own, before and after, with the hand to take it over. */
export function EffectTable({ lever, base }: Props) {
  const format = useFormat();
  const [problem, setProblem] = useState<string>();
  return (
    <div className="effect">
      <table className="effect-table">
        <caption className="visually-hidden">Before and after: {lever.label}</caption>
        <thead>
          <tr>
            <th scope="col">
              <span className="visually-hidden">What</span>
            </th>
            <th scope="col">Before</th>
            <th scope="col">After</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([label, tell]) => {
            const before = tell(lever.before, format);
            const after = tell(lever.after, format);
            return (
              <tr key={label} data-changed={before === after ? undefined : ""}>
                <th scope="row">{label}</th>
                <td>{before}</td>
                <td>{after}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <p className="effect-price">
        {lever.price > 0
          ? `Parts about ${format(lever.price, "money")} by the catalogue, labour not counted.`
          : "Nothing to buy."}{" "}
        {lever.causes.length > 0
          ? `It brings ${lever.causes.length} new ${lever.causes.length === 1 ? "finding" : "findings"}.`
          : ""}
      </p>
      <button
        type="button"
        className="action action-strong"
        onClick={() => setProblem(sentence(takeOver(base, lever.design, lever.label)))}
      >
        Take it over
      </button>
      {problem === undefined ? null : (
        <p className="field-problem" role="alert">
          {problem}
        </p>
      )}
    </div>
  );
}
