import {
  createColumnHelper,
  createSortedRowModel,
  rowSortingFeature,
  sortFns,
  tableFeatures,
} from "@tanstack/react-table";
import type { Candidate } from "@tidewright/advice";
import type { Dimension } from "@tidewright/units";
import type { Words } from "@tidewright/words";
import type { ScreenFormat } from "../format/useFormat.ts";

/** What the ranking table can do. */
export const rankingFeatures = tableFeatures({ rowSortingFeature, sortedRowModel: createSortedRowModel(), sortFns });

const helper = createColumnHelper<typeof rankingFeatures, Candidate>();

/** Columns of the ranking in the units of the screen, named once in the head; each sorts by its number, not by its text. */
export function rankingColumns(format: ScreenFormat, words: Words) {
  const { say } = words;
  const head = (name: string, dimension: Dimension) => () => (
    <>
      {name} <small className="head-unit">{format.label(dimension)}</small>
    </>
  );
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
      header: head(say("bench.ranking.aYear"), "money"),
      cell: (cell) => format.bare(cell.getValue(), "money"),
    }),
    helper.accessor("price", {
      header: head(say("bench.readings.price"), "money"),
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
      header: head(say("bench.ranking.buyAndRun"), "money"),
      cell: (cell) => format.bare(cell.getValue(), "money"),
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
