import Table from "cli-table3";
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

/** Returns rows as a table without rules, at most `width` characters wide where its flexible columns allow that. */
export function tableText(columns: readonly Column[], rows: readonly (readonly string[])[], width: number): string {
  if (rows.length === 0) return "";
  const wide = columns.map((column, i) => Math.max(column.head.length, ...rows.map((row) => (row[i] ?? "").length)));
  const over = wide.reduce((sum, each) => sum + each + 2, 0) - width;
  const flexible = columns.map((column, i) => (column.flexible === true ? i : -1)).filter((i) => i >= 0);
  if (over > 0) for (const i of flexible) wide[i] = Math.max(10, wide[i]! - Math.ceil(over / flexible.length));
  const table = new Table({
    chars: ruled,
    style: { head: [], border: [], "padding-left": 0, "padding-right": 0 },
    colAligns: columns.map((column) => column.align ?? "left"),
  });
  const cells = (row: readonly string[]) => row.map((cell, i) => wrap(cell, wide[i] ?? 10));
  if (columns.some((column) => column.head !== "")) table.push(cells(columns.map((column) => column.head)));
  for (const row of rows) table.push(cells(row));
  return table
    .toString()
    .split("\n")
    .map((line) => line.trimEnd())
    .filter((line) => line !== "")
    .join("\n");
}
