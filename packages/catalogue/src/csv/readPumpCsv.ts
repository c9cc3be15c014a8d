import { type CatalogueProblem, shown } from "../catalogueProblem.ts";
import { checkPump } from "../check/checkPump.ts";
import type { PumpRow } from "../pumps/pump.ts";
import { collectProblems } from "./problemList.ts";
import { readHeadings } from "./pumpColumns.ts";
import { readPumpRow } from "./readPumpRow.ts";
import { readTable } from "./readTable.ts";

/** Pumps of a CSV text in SI, and every problem of every row; good rows are kept, rows with an error are left out.
 *  text: one heading row, one pump a row; delimiter comma, semicolon or tab, found from the heading; with or without
 *  byte-order mark; cells with the delimiter stand between quotation marks. With semicolons or tabs 3,5 is 3.5.
 *    Columns needed: id, maker, model, placements (inSump, external, inTank joined by +), control (constant or
 *    controllable), curve 1.00 (L/h@m), rated power W, power factor, inlet bore mm, outlet bore mm, voltage V,
 *    frequency Hz (0 for direct current), sound dB(A), price EUR.
 *    Columns possible: minimum speed, controller (included or separate), controller ref, controller label,
 *    controller price EUR, curve 0.80 (L/h@m) and so on, power 1.00 (L/h@W) and so on, inlet connection,
 *    outlet connection, warranty months, maximum temperature C, external cooling (air or water), self-priming,
 *    best efficiency flow L/h, chart (points or reading), note, source, source where, source status.
 *    A curve cell holds points 0@4.1;1000@3.9. A heading may name another unit, as in curve 1.00 (US gal/h@ft) or
 *    outlet bore in; so may a cell of its own, as in 25 mm. Texts lose blanks at both ends; curves are sorted by
 *    falling speed ratio.
 *  -> pumps: PumpRow[] in the order of the file; problems: CatalogueProblem[], row 1 is the heading
 *  Findings: problems of severity "error" and "doubt", all of them; from the thousand-and-first of one kind on they
 *  share one line that counts them and names their rows. Throws: never.
 *  Valid: any text; of two rows with one id the first is kept.
 *  Source: own table layout on RFC 4180.
 *  Example: readPumpCsv("id,maker\nx,Ferrow").problems[0].column  ->  "model"                                  */
export function readPumpCsv(text: string): { pumps: PumpRow[]; problems: CatalogueProblem[] } {
  const table = readTable(text);
  const problems = collectProblems();
  for (const problem of table.problems) problems.add(problem);
  if (table.heading.length === 0) {
    problems.add({
      list: "pumps",
      row: 1,
      id: "",
      column: "",
      value: "",
      problem: "the table has no heading row",
      fix: 'begin with a row of column names: "id,maker,model,…"',
      severity: "error",
    });
    return { pumps: [], problems: problems.list() };
  }
  const { headings, problems: headingProblems } = readHeadings(table.heading);
  for (const problem of headingProblems) problems.add(problem);

  const pumps: PumpRow[] = [];
  const firstRow = new Map<string, number>();
  for (const { row, cells } of table.rows) {
    const read = readPumpRow(row, cells, table.heading.length, headings, table.delimiter !== ",");
    for (const problem of read.problems) problems.add(problem);
    if (read.pump === undefined) continue;
    const pump = read.pump;
    const found = checkPump(pump, row);
    const first = firstRow.get(pump.id);
    if (first !== undefined) {
      found.push({
        list: "pumps",
        row,
        id: shown(pump.id),
        column: "id",
        value: shown(pump.id),
        problem: `the id is used already in row ${first}`,
        fix: "give every pump an id of its own",
        severity: "error",
      });
    }
    for (const problem of found) problems.add(problem);
    if (first === undefined) firstRow.set(pump.id, row);
    if (!found.some((problem) => problem.severity === "error")) pumps.push(pump);
  }
  return { pumps, problems: problems.list() };
}
