import type { Language } from "@tidewright/words";
import { decimalSign } from "../../format/decimalSign.ts";

/** Lets a sheet program know that the text is UTF-8. */
const byteOrderMark = "\ufeff";

/** Returns a CSV text as the reader's sheet program opens it by a double click: where numbers have a decimal comma, cells are
 *  parted by semicolons and numbers bear that comma; `readPumpCsv` reads both alike.
 *  csv with commas between cells and decimal points   language   -> text with a byte-order mark */
export function sheetText(csv: string, language: Language): string {
  if (decimalSign(language) === ".") return byteOrderMark + csv;
  const lines = cellsOf(csv).map((cells, row) =>
    cells.map((cell) => quoted(row === 0 ? cell : withCommas(cell))).join(";"),
  );
  return `${byteOrderMark}${lines.join("\n")}\n`;
}

const number = /^-?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?( [A-Za-z][\w/]*)?$/i;

/** A number with or without its unit, or the points of a curve; a text with a point in it stays. */
function withCommas(cell: string): string {
  const points = cell.includes("@") && cell.split(/[;@]/).every((part) => number.test(part));
  return points || number.test(cell) ? cell.replace(/\./g, ",") : cell;
}

const quoted = (cell: string): string => (/[";\n\r]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);

/** Cells of a sound CSV text (RFC 4180). */
function cellsOf(csv: string): string[][] {
  const rows: string[][] = [];
  const cell = /(?:"((?:[^"]|"")*)"|([^",\n]*))(,|\n|$)/y;
  let row: string[] = [];
  while (cell.lastIndex < csv.length) {
    const found = cell.exec(csv);
    if (found === null) break;
    row.push(found[1] === undefined ? (found[2] ?? "") : found[1].replaceAll('""', '"'));
    if (found[3] === ",") continue;
    rows.push(row);
    row = [];
  }
  return rows;
}

/** Returns the text of a table's bytes, or undefined where they are no text. Sheet programs write UTF-8, UTF-16 with a mark,
 *  or the older Western European code. */
export function decodeTable(bytes: Uint8Array<ArrayBuffer>): string | undefined {
  const [a, b] = bytes;
  const text =
    (a === 0xff && b === 0xfe) || (a === 0xfe && b === 0xff)
      ? new TextDecoder(a === 0xff ? "utf-16le" : "utf-16be").decode(bytes)
      : asUtf8(bytes);
  return text.includes("\0") ? undefined : text;
}

function asUtf8(bytes: Uint8Array<ArrayBuffer>): string {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}
