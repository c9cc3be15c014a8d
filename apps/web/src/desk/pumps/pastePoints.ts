/** What a paste brought: rows of cells as texts, and how many lines held no number, such as a heading. */
export interface PastedRows {
  readonly rows: readonly (readonly string[])[];
  readonly skipped: number;
}

type Sign = "." | ",";

/** Returns the columns of numbers in a text out of a sheet program, or undefined where it is a single cell and so an
 *  ordinary paste. Columns are parted by tabs, else by semicolons, else by blanks. Numbers written with the other decimal
 *  sign are written anew with the reader's: which sign a column bears shows where it stands before other than three digits.
 *  text   sign the reader's before decimals   most columns that are taken   -> PastedRows
 *  Example: pastePoints("Q\tH\n1.000\t4,1", ".", 3)?.rows  ->  [["1000","4.1"]] */
export function pastePoints(text: string, sign: Sign, most: number): PastedRows | undefined {
  const lines = text.replace(/\r\n?/g, "\n").replace(/\n+$/, "").split("\n");
  const tabs = lines.some((line) => line.includes("\t"));
  const divider = tabs ? "\t" : lines.some((line) => line.includes(";")) ? ";" : /[ \u00a0]+/;
  const table = lines.map((line) => (tabs ? line : line.trim()).split(divider).map(tidy));
  if (table.length < 2 && (table[0]?.length ?? 0) < 2) return undefined;
  const kept = table.filter((cells) => cells.some((cell) => /^[-+−]?[.,]?\d/.test(cell)));
  if (kept.length === 0) return undefined;
  const rows = kept.map((row) => row.slice(0, most));
  const other = sign === "." ? "," : ".";
  const all = rows.flat();
  const foreign = all.some((cell) => bears(cell, other)) && !all.some((cell) => bears(cell, sign));
  return {
    rows: foreign ? rows.map((row) => row.map((cell) => rewritten(cell, other, sign))) : rows,
    skipped: table.filter((row) => row.some((cell) => cell !== "")).length - kept.length,
  };
}

/** Blanks and apostrophes between thousands are no part of a number. */
const tidy = (cell: string): string => cell.trim().replace(/(\d)[ \u00a0\u202f'’](?=\d{3}(\D|$))/g, "$1");

/** Whether a sign can be nothing but the decimal one of this cell. */
function bears(cell: string, sign: Sign): boolean {
  const [, group, decimals] =
    (sign === "," ? /^[-+−]?\d*(\.\d{3})*,(\d+)$/ : /^[-+−]?\d*(,\d{3})*\.(\d+)$/).exec(cell) ?? [];
  return decimals !== undefined && (group !== undefined || decimals.length !== 3);
}

const rewritten = (cell: string, from: Sign, to: Sign): string =>
  /^[-+−]?[\d.,]+$/.test(cell) ? cell.replaceAll(to, "").replace(from, to) : cell;
