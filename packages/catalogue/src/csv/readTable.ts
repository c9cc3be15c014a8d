import Papa from "papaparse";
import { type CatalogueProblem, shown } from "../catalogueProblem.ts";

/** A CSV text as cells: `delimiter` found, `heading` cells, data rows with their row number in the file (heading = 1). */
export interface Table {
  delimiter: "," | ";" | "\t";
  heading: string[];
  rows: { row: number; cells: string[] }[];
  problems: CatalogueProblem[];
}

/** Splits a CSV text into heading and rows. The delimiter is the commonest of comma, semicolon and tab in the heading,
 *  because curve cells hold semicolons of their own. A byte-order mark and blank rows are passed over. */
export function readTable(text: string): Table {
  const bare = text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
  const delimiter = findDelimiter(bare);
  const problems: CatalogueProblem[] = [];
  const parsed = Papa.parse<string[]>(bare, { delimiter, quoteChar: '"', header: false });

  // A quote that is never closed swallows the rest of the file: its row is reported and left out.
  const broken = new Set<number>();
  for (const error of parsed.errors) {
    if (error.type !== "Quotes" || error.row === undefined || broken.has(error.row)) continue;
    broken.add(error.row);
    problems.push({
      list: "pumps",
      row: error.row + 1,
      id: "",
      column: "",
      value: shown((parsed.data[error.row] ?? []).join(delimiter)),
      problem:
        "a quotation mark in this row is not closed or stands in the wrong place; what follows it cannot be read",
      fix: 'put cells that hold quotation marks between quotation marks and double the inner ones: "1 1/2"" male"',
      severity: "error",
    });
  }

  const heading: string[] = [];
  const rows: Table["rows"] = [];
  let found = false;
  parsed.data.forEach((cells, index) => {
    if (broken.has(index) || cells.every((cell) => cell.trim() === "")) return;
    if (!found) {
      found = true;
      for (const cell of cells) heading.push(cell.trim());
    } else rows.push({ row: index + 1, cells });
  });
  return { delimiter, heading, rows, problems };
}

function findDelimiter(text: string): Table["delimiter"] {
  const counts = { ",": 0, ";": 0, "\t": 0 };
  let quoted = false;
  let seen = false;
  for (const character of text) {
    if (character === '"') quoted = !quoted;
    else if (quoted) continue;
    else if (character === "\n" || character === "\r") {
      if (seen) break;
    } else {
      if (character.trim() !== "") seen = true;
      if (character === "," || character === ";" || character === "\t") counts[character] += 1;
    }
  }
  if (counts["\t"] > counts[";"] && counts["\t"] > counts[","]) return "\t";
  return counts[";"] > counts[","] ? ";" : ",";
}
