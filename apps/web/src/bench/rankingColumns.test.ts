import type { Candidate } from "@tidewright/advice";
import { englishWords } from "@tidewright/words";
import type { ReactNode } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { screenFormat } from "../format/screenFormat.ts";
import { rankingColumns } from "./rankingColumns.tsx";

const format = screenFormat({ system: "metric", own: {} });

/** Head and one cell of a column as text. */
function shown(running: string, key: keyof Candidate, value: number | undefined): string {
  const columns = rankingColumns(format, englishWords, { prices: "EUR", running });
  const column = columns.find((each) => "accessorKey" in each && each.accessorKey === key) as unknown as {
    readonly header: () => ReactNode;
    readonly cell: (cell: object) => ReactNode;
  };
  const cell = { getValue: () => value, row: { original: { extras: [] } } };
  return renderToStaticMarkup([column.header(), ": ", column.cell(cell)]);
}

describe("money in the ranking", () => {
  it("is headed by the currency it is in", () => {
    expect(shown("USD", "annualCost", 71.4)).toBe('A year <small class="head-unit">USD</small>: 71');
    expect(shown("USD", "price", 468)).toBe('Price <small class="head-unit">EUR</small>: 468');
    expect(shown("EUR", "annualCost", 129.8)).toBe('A year <small class="head-unit">EUR</small>: 130');
  });

  it("is added up only in one currency, and says so where it is not", () => {
    expect(shown("EUR", "horizonCost", 1117.2)).toBe('Buy and run <small class="head-unit">EUR</small>: 1117');
    expect(shown("USD", "horizonCost", undefined)).toBe(
      'Buy and run <small class="head-unit">EUR</small>: <span title="not added: EUR and USD">–</span>',
    );
  });
});
