/** What is the matter with a file, and how to mend it. */
export interface Trouble {
  readonly message: string;
  readonly fix: string;
}

/** Returns what keeps a text from being a table of numbers, or undefined for a table.
 *  text decoded from UTF-8   -> Trouble or undefined
 *  Valid: cells parted by comma, semicolon or tab; at least two rows with two numbers in each, and no more than half of it words.
 *  Source: RFC 4180 for the shape; OWASP, CSV Injection, for cells that a spreadsheet would run.
 *  Example: csvProblem("flow,head\n0,3.2\n1000,2.1\n")  ->  undefined */
export function csvProblem(text: string): Trouble | undefined {
  if (/[\0-\x08\x0b\x0c\x0e-\x1f\x7f]/.test(text)) {
    return {
      message: "is text with signs in it that no table has",
      fix: "save the table again as CSV in UTF-8",
    };
  }
  const lines = text.split(/\r\n|\n|\r/).filter((line) => line.trim() !== "");
  const cellsOf = (line: string): readonly string[] =>
    line.split(/[,;\t]/).map((cell) => cell.trim().replace(/^"|"$/g, ""));
  const rows = lines.map(cellsOf);
  const isNumber = (cell: string): boolean => /^[+-]?\d+([.,]\d+)?(e[+-]?\d+)?$/i.test(cell);
  const numeric = rows.filter((cells) => cells.filter(isNumber).length >= 2);
  if (numeric.length < 2 || numeric.length * 2 < rows.length - 5) {
    return {
      message: "is text, but no table of two rows with two numbers each",
      fix: "send a chart as CSV with one row for each point, as XLSX, as picture or as PDF",
    };
  }
  const running = lines.findIndex((_, at) => rows[at]!.some((cell) => /^[=@]|^[+-](?![\d.,])./.test(cell)));
  if (running >= 0) {
    return {
      message: `has a cell in line ${running + 1} that a spreadsheet would take for a formula`,
      fix: "save the table with values instead of formulas",
    };
  }
  return undefined;
}
