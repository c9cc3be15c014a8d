import {
  createColumnHelper,
  createSortedRowModel,
  rowSortingFeature,
  sortFns,
  tableFeatures,
} from "@tanstack/react-table";
import { type Candidate, describeReason } from "@tidewright/advice";
import type { ScreenFormat } from "../format/useFormat.ts";

/** What the ranking table can do. */
export const rankingFeatures = tableFeatures({ rowSortingFeature, sortedRowModel: createSortedRowModel(), sortFns });

const helper = createColumnHelper<typeof rankingFeatures, Candidate>();

/** Columns of the ranking in the units of the screen; each sorts by its number and not by its text. */
export function rankingColumns(format: ScreenFormat) {
  return helper.columns([
    helper.accessor("label", { header: "Pump" }),
    helper.accessor("speed", { header: "Speed", cell: (cell) => `${Math.round(cell.getValue() * 100)} %` }),
    helper.accessor("flow", { header: "Flow", cell: (cell) => format(cell.getValue(), "flow") }),
    helper.accessor("head", { header: "Head", cell: (cell) => format(cell.getValue(), "head") }),
    helper.accessor("watts", { header: "Power", cell: (cell) => format(cell.getValue(), "power") }),
    helper.accessor("annualCost", { header: "A year", cell: (cell) => format(cell.getValue(), "money") }),
    helper.accessor("price", {
      header: "Price",
      cell: (cell) => {
        const { extras } = cell.row.original;
        return (
          <>
            {format(cell.getValue(), "money")}
            {extras.length === 0 ? null : (
              <small className="cell-note">with {extras.map(({ label }) => label).join(", ")}</small>
            )}
          </>
        );
      },
    }),
    helper.accessor("horizonCost", { header: "Buy and run", cell: (cell) => format(cell.getValue(), "money") }),
    helper.accessor("soundLevel", { header: "Sound", cell: (cell) => format(cell.getValue(), "soundLevel") }),
    helper.accessor("flowMargin", { header: "Spare flow", cell: (cell) => `${Math.round(cell.getValue() * 100)} %` }),
    helper.accessor("score", {
      header: "Why",
      cell: (cell) => (
        <span className="reasons">
          {cell.row.original.reasons.map((reason) => describeReason(reason, format)).join(" · ")}
        </span>
      ),
    }),
  ]);
}
