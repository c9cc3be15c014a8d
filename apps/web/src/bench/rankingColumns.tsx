import {
  createColumnHelper,
  createSortedRowModel,
  rowSortingFeature,
  sortFns,
  tableFeatures,
} from "@tanstack/react-table";
import type { Candidate } from "@tidewright/advice";
import type { Dimension } from "@tidewright/units";
import type { ScreenFormat } from "../format/useFormat.ts";

/** What the ranking table can do. */
export const rankingFeatures = tableFeatures({ rowSortingFeature, sortedRowModel: createSortedRowModel(), sortFns });

const helper = createColumnHelper<typeof rankingFeatures, Candidate>();

/** Columns of the ranking in the units of the screen, named once in the head; each sorts by its number, not by its text. */
export function rankingColumns(format: ScreenFormat) {
  const head = (name: string, dimension: Dimension) => () => (
    <>
      {name} <small className="head-unit">{format.label(dimension)}</small>
    </>
  );
  return helper.columns([
    helper.accessor("label", { header: "Pump" }),
    helper.accessor("speed", { header: "Speed", cell: (cell) => `${Math.round(cell.getValue() * 100)} %` }),
    helper.accessor("flow", { header: head("Flow", "flow"), cell: (cell) => format.bare(cell.getValue(), "flow") }),
    helper.accessor("head", { header: head("Head", "head"), cell: (cell) => format.bare(cell.getValue(), "head") }),
    helper.accessor("watts", { header: head("Power", "power"), cell: (cell) => format.bare(cell.getValue(), "power") }),
    helper.accessor("annualCost", {
      header: head("A year", "money"),
      cell: (cell) => format.bare(cell.getValue(), "money"),
    }),
    helper.accessor("price", {
      header: head("Price", "money"),
      cell: (cell) => {
        const { extras } = cell.row.original;
        return (
          <>
            {format.bare(cell.getValue(), "money")}
            {extras.length === 0 ? null : (
              <small className="cell-note">with {extras.map(({ label }) => label).join(", ")}</small>
            )}
          </>
        );
      },
    }),
    helper.accessor("horizonCost", {
      header: head("Buy and run", "money"),
      cell: (cell) => format.bare(cell.getValue(), "money"),
    }),
    helper.accessor("soundLevel", {
      header: head("Sound", "soundLevel"),
      cell: (cell) => format.bare(cell.getValue(), "soundLevel"),
    }),
    helper.accessor("flowMargin", { header: "Spare flow", cell: (cell) => format(cell.getValue(), "ratio") }),
  ]);
}
