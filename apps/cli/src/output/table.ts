import Table from "cli-table3";
import { liftUnit } from "./liftUnit.ts";
import { wrap } from "./wrap.ts";

/** One column: its heading, which side its cells lean to, and whether it may be narrowed by breaking lines. */
export interface Column {
  readonly head: string;
  readonly align?: "left" | "right";
  readonly flexible?: boolean;
}

const ruled = {
  top: "",
  "top-mid": "",
  "top-left": "",
  "top-right": "",
  bottom: "",
  "bottom-mid": "",
  "bottom-left": "",
  "bottom-right": "",
  left: "  ",
  "left-mid": "",
  mid: "",
  "mid-mid": "",
  right: "",
  "right-mid": "",
  middle: "  ",
};

/** Returns rows as a table without rules, at most `width` characters wide where its flexible columns allow that; a unit
 *  that all cells of a number column share stands once, below its heading. */
export function tableText(columns: readonly Column[], rows: readonly (readonly string[])[], width: number): string {
  if (rows.length === 0) return "";
  const headed = columns.some((column) => column.head !== "");
  const lifted = columns.map((column, i) => {
    const cells = rows.map((row) => row[i] ?? "");
    return headed && column.align === "right" ? liftUnit(cells) : { unit: "", cells };
  });
  const lines = rows.map((_, row) => lifted.map((column) => column.cells[row] ?? ""));
  if (lifted.some((column) => column.unit !== "")) lines.unshift(lifted.map((column) => column.unit));
  if (headed) lines.unshift(columns.map((column) => column.head));
  const widths = columnWidths(columns, lines, width);
  const table = new Table({
    chars: ruled,
    style: { head: [], border: [], "padding-left": 0, "padding-right": 0 },
    colAligns: columns.map((column) => column.align ?? "left"),
  });
  for (const line of lines) table.push(line.map((cell, i) => wrap(cell, widths[i] ?? 10)));
  return table
    .toString()
    .split("\n")
    .map((line) => line.trimEnd())
    .filter((line) => line !== "")
    .join("\n");
}

/** What does not fit is taken from the flexible columns, the widest first, down to their longest words. */
function columnWidths(columns: readonly Column[], lines: readonly (readonly string[])[], width: number): number[] {
  const longest = (i: number, part: RegExp) =>
    Math.max(...lines.flatMap((line) => lengths((line[i] ?? "").split(part))));
  const widths = columns.map((_, i) => longest(i, /\n/));
  const least = columns.map((column, i) => (column.flexible === true ? longest(i, /[ \t\n]+/) : widths[i]!));
  for (let over = widths.reduce((sum, each) => sum + each + 2, 0) - width; over > 0; over--) {
    const loose = widths.map((each, i) => (each > least[i]! ? each : 0));
    const widest = loose.indexOf(Math.max(...loose));
    if (loose[widest] === 0) break;
    widths[widest]! -= 1;
  }
  return widths;
}

const lengths = (texts: readonly string[]): number[] => texts.map((text) => text.length);
