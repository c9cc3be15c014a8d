import {
  createColumnHelper,
  createSortedRowModel,
  rowSortingFeature,
  sortFns,
  tableFeatures,
} from "@tanstack/react-table";
import type { Candidate, Ranking } from "@tidewright/advice";
import type { Dimension } from "@tidewright/units";
import type { Words } from "@tidewright/words";
import type { ScreenFormat } from "../format/useFormat.ts";

/** What the ranking table can do. */
export const rankingFeatures = tableFeatures({ rowSortingFeature, sortedRowModel: createSortedRowModel(), sortFns });

const helper = createColumnHelper<typeof rankingFeatures, Candidate>();

/** Columns of the ranking in the units of the screen, named once in the head; each sorts by its number, not by its text.
 *  format   words   currencies of prices and of running costs, which are added up only where they are one   -> columns */
export function rankingColumns(format: ScreenFormat, words: Words, currencies: Ranking["currencies"]) {
  const { say } = words;
  const headed = (name: string, unit: string) => () => (
    <>
      {name} <small className="head-unit">{unit}</small>
    </>
  );
  const head = (name: string, dimension: Dimension) => headed(name, format.label(dimension));
  const { prices, running } = currencies;
  const notAdded = say("bench.cost.notAdded", { one: prices, other: running });
  return helper.columns([
    helper.accessor("label", { header: say("bench.figure.pump") }),
    helper.accessor("speed", { header: say("bench.ranking.speed"), cell: (cell) => format.perCent(cell.getValue()) }),
    helper.accessor("flow", {
      header: head(say("bench.ranking.flow"), "flow"),
      cell: (cell) => format.bare(cell.getValue(), "flow"),
    }),
    helper.accessor("head", {
      header: head(say("bench.ranking.lift"), "head"),
      cell: (cell) => format.bare(cell.getValue(), "head"),
    }),
    helper.accessor("watts", {
      header: head(say("bench.figure.power"), "power"),
      cell: (cell) => format.bare(cell.getValue(), "power"),
    }),
    helper.accessor("annualCost", {
      header: headed(say("bench.ranking.aYear"), running),
      cell: (cell) => format.bare(cell.getValue(), "money"),
    }),
    helper.accessor("price", {
      header: headed(say("bench.readings.price"), prices),
      cell: (cell) => {
        const { extras } = cell.row.original;
        return (
          <>
            {format.bare(cell.getValue(), "money")}
            {extras.length === 0 ? null : (
              <small className="cell-note">
                {say("bench.ranking.with", { extras: extras.map(({ label }) => words.known(label)).join(", ") })}
              </small>
            )}
          </>
        );
      },
    }),
    helper.accessor("horizonCost", {
      header: headed(say("bench.ranking.buyAndRun"), prices),
      cell: (cell) => {
        const cost = cell.getValue();
        return cost === undefined ? <span title={notAdded}>–</span> : format.bare(cost, "money");
      },
    }),
    helper.accessor("soundLevel", {
      header: head(say("bench.effect.sound"), "soundLevel"),
      cell: (cell) => format.bare(cell.getValue(), "soundLevel"),
    }),
    helper.accessor("flowMargin", {
      header: say("bench.ranking.spareFlow"),
      cell: (cell) => format(cell.getValue(), "ratio"),
    }),
  ]);
}
