import { describeLever, type Lever, type LeverEffect } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import { currencyOf } from "@tidewright/units";
import type { MessageKey } from "@tidewright/words";
import { useState } from "react";
import { sentence } from "../fields/setField.ts";
import { type ScreenFormat, useFormat } from "../format/useFormat.ts";
import { takeOver } from "../state/bench.ts";
import { useWords } from "../words/useWords.ts";

const rows: readonly (readonly [
  MessageKey,
  (effect: LeverEffect, format: ScreenFormat, currency: string) => string,
])[] = [
  ["bench.effect.returnFlow", (effect, format) => format(effect.returnFlow, "flow")],
  ["bench.effect.totalHead", (effect, format) => format(effect.totalHead, "head")],
  ["bench.figure.power", (effect, format) => format(effect.watts, "power")],
  ["bench.effect.annualCost", (effect, format, currency) => format.sum(effect.annualCost, currency)],
  ["bench.effect.sound", (effect, format) => format(effect.soundLevel, "soundLevel")],
  ["bench.effect.sumpMargin", (effect, format) => format(effect.sumpMargin, "volume")],
  ["bench.effect.drainLoad", (effect) => `${Math.round(effect.drainLoad * 100)} %`],
  ["bench.effect.dangers", (effect) => String(effect.dangers)],
  ["bench.effect.warnings", (effect) => String(effect.warnings)],
];

interface Props {
  readonly lever: Lever;
  /** The document that the lever changes. */
  readonly base: Design;
}

/** One change on its own, before and after, with the hand to take it over. */
export function EffectTable({ lever, base }: Props) {
  const format = useFormat();
  const words = useWords();
  const { say } = words;
  const name = describeLever(lever, words);
  const currency = currencyOf(base.power.tariff.unit) ?? format.unitOf("money");
  const [problem, setProblem] = useState<string>();
  return (
    <div className="effect">
      <table className="effect-table">
        <caption className="visually-hidden">{say("bench.effect.caption", { label: name })}</caption>
        <thead>
          <tr>
            <th scope="col">
              <span className="visually-hidden">{say("bench.effect.what")}</span>
            </th>
            <th scope="col">{say("bench.effect.before")}</th>
            <th scope="col">{say("bench.effect.after")}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([label, tell]) => {
            const before = tell(lever.before, format, currency);
            const after = tell(lever.after, format, currency);
            return (
              <tr key={label} data-changed={before === after ? undefined : ""}>
                <th scope="row">{say(label)}</th>
                <td>{before}</td>
                <td>{after}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <p className="effect-price">
        {lever.price > 0
          ? say("bench.effect.parts", { price: format(lever.price, "money") })
          : say("bench.effect.nothingToBuy")}{" "}
        {lever.causes.length > 0 ? say("bench.effect.brings", { count: lever.causes.length }) : ""}
      </p>
      <button
        type="button"
        className="action action-strong"
        onClick={() => setProblem(sentence(takeOver(base, lever.design, name)))}
      >
        {say("bench.effect.take")}
      </button>
      {problem === undefined ? null : (
        <p className="field-problem" role="alert">
          {problem}
        </p>
      )}
    </div>
  );
}
