import { describeScenario, type SafetyRow, type SafetySweep, timeWords } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import { Fragment, useState } from "react";
import { Glyph } from "../bench/Glyph.tsx";
import { type ScreenFormat, useFormat } from "../format/useFormat.ts";
import { useWords } from "../words/useWords.ts";
import { verdictSeverity } from "./filmWords.ts";
import { SafetyHelps } from "./SafetyHelps.tsx";
import { showFilm } from "./showFilm.ts";

interface Props {
  readonly design: Design;
  readonly sweep: SafetySweep;
}

/** One row a scenario, the worst first; each opens its film at its worst moment, each danger the changes that help. */
export function SafetyTable({ design, sweep }: Props) {
  const format = useFormat();
  const { say } = useWords();
  const [opened, setOpened] = useState<string>();
  const unit = <span className="head-unit"> {format.label("length")}</span>;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section className="table-scroll" tabIndex={0} aria-label={say("film.table.label")}>
      <table className="safety-table">
        <thead>
          <tr>
            <th scope="col">{say("film.table.what")}</th>
            <th scope="col">{say("film.table.outcome")}</th>
            <th scope="col" className="number">
              {say("film.table.display")}
              {unit}
            </th>
            <th scope="col" className="number">
              {say("film.table.box")}
              {unit}
            </th>
            <th scope="col" className="number">
              {say("film.table.sump")}
              {unit}
            </th>
            <th scope="col" className="number">
              {say("film.table.after")}
            </th>
            <th scope="col" className="number">
              {say("film.table.floor")}
              <span className="head-unit"> {format.label("volume")}</span>
            </th>
            <th scope="col">
              <span className="visually-hidden">{say("film.table.look")}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {sweep.rows.map((row) => {
            const { scenario, verdict } = row;
            const open = opened === scenario.id;
            // Nobody mends a missing top-up by changing pipes.
            const mendable = verdict !== "safe" && scenario.kind !== "topOffFails";
            return (
              <Fragment key={scenario.id}>
                <Row row={row} design={design} format={format}>
                  {mendable ? (
                    <button
                      type="button"
                      className="action"
                      aria-expanded={open}
                      onClick={() => setOpened(open ? undefined : scenario.id)}
                    >
                      {say("film.table.helps")}
                    </button>
                  ) : null}
                </Row>
                {open ? (
                  <tr className="safety-helps-row">
                    <td colSpan={8}>
                      <SafetyHelps design={design} row={row} />
                    </td>
                  </tr>
                ) : null}
              </Fragment>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}

function Row(props: {
  readonly row: SafetyRow;
  readonly design: Design;
  readonly format: ScreenFormat;
  readonly children: React.ReactNode;
}) {
  const { row, design, format, children } = props;
  const { scenario, verdict, margins, timeToTrouble, spilled } = row;
  const severity = verdictSeverity[verdict];
  const words = useWords();
  const { say } = words;
  const name = describeScenario(scenario, words);
  return (
    <tr data-scenario={scenario.id} data-verdict={verdict}>
      <th scope="row">{name}</th>
      <td className="safety-verdict">
        <span className="safety-mark">{severity === undefined ? null : <Glyph severity={severity} />}</span>
        {say(`film.verdict.${verdict}`)}
      </td>
      {(
        [
          ["film.table.display", margins.display],
          ["film.table.box", margins.overflowBox],
          ["film.table.sump", margins.sump],
        ] as const
      ).map(([label, margin]) => (
        <td
          key={label}
          className="number"
          data-label={say("film.table.withUnit", { column: say(label), unit: format.label("length") })}
        >
          {margin === undefined ? "" : <Margin margin={margin} format={format} />}
        </td>
      ))}
      <td className="number" data-label={say("film.table.after")}>
        {timeToTrouble === undefined ? "" : timeWords(timeToTrouble, words)}
      </td>
      <td
        className="number"
        data-label={say("film.table.withUnit", { column: say("film.table.floor"), unit: format.label("volume") })}
      >
        {spilled > 1e-6 ? <strong>{format.bare(spilled, "volume")}</strong> : ""}
      </td>
      <td className="safety-keys">
        <button
          type="button"
          className="action"
          aria-label={say("film.table.showNamed", { scenario: name })}
          onClick={() => showFilm(design, scenario.id, "worst")}
        >
          {say("film.table.show")}
        </button>
        {children}
      </td>
    </tr>
  );
}

function Margin({ margin, format }: { readonly margin: number; readonly format: ScreenFormat }) {
  const { say } = useWords();
  if (margin >= 0) return format.bare(margin, "length");
  const over = format.bare(-margin, "length");
  // A film of water over the rim rounds to nothing, and still is over it.
  return (
    <strong className="safety-over">
      {over === "0" ? say("film.table.atRim") : say("film.table.over", { length: over })}
    </strong>
  );
}
