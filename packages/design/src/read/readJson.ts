import type { Problem } from "../problem.ts";
import { shortened } from "../problem.ts";
import { toPointer } from "./jsonPointer.ts";
import { scanJson } from "./scanJson.ts";

/** Longest document text that is read, in characters: ten megabytes of plain JSON.
 *  Findings: none. Throws: never.
 *  Valid: a design of a hundred branches is about 0.1 MB, so ten is far beyond any real one.
 *  Source: own construction.
 *  Example: longestDocument  ->  10000000 */
export const longestDocument = 10_000_000;

/** Either the value a text holds, or everything that keeps it from being read. */
export type JsonReading =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Returns the value of a JSON text whose outermost part is an object, or its problems with line and column.
 *  text at most `longestDocument` characters; a byte order mark at the start is passed over   -> JsonReading
 *  Findings: none; problems are too large, empty, not JSON (the first slip only: after it nothing can be read for sure),
 *  a field given twice (all of them), not an object. Throws: never.
 *  Valid: any text.
 *  Source: RFC 8259; RFC 6901 for the paths.
 *  Example: readJson("{\"a\": 1}").value.a  ->  1
 *  Example: readJson("[1, 2]").ok  ->  false */
export function readJson(text: string): JsonReading {
  const only = (message: string, fix: string, value?: unknown): JsonReading => ({
    ok: false,
    problems: [value === undefined ? { path: "", message, fix } : { path: "", message, value, fix }],
  });
  if (text.length > longestDocument) {
    const size = (text.length / 1e6).toFixed(1);
    return only(
      `the document is ${size} MB long; up to ${longestDocument / 1e6} MB are read`,
      "check that this is the right file; split several systems into a file each",
    );
  }
  const body = text.startsWith("\uFEFF") ? text.slice(1) : text;
  if (/^\s*$/.test(body)) return only("the document is empty", "choose a file that holds a Tidewright document");
  const { slip, doubles } = scanJson(body);
  if (slip !== undefined) {
    const { line, column, excerpt } = placesOf(body)(slip.offset);
    return only(`not JSON: line ${line}, column ${column}: ${slip.message}`, slip.fix, excerpt);
  }
  const value: unknown = JSON.parse(body);
  if (Array.isArray(value))
    return only(
      `the document is a list of ${value.length}; it must be one object`,
      "begin with { and give the fields by name; keep one system in one file",
    );
  if (typeof value !== "object" || value === null)
    return only(
      `the document is ${value === null ? "null" : `a bare ${typeof value}`}; it must be an object`,
      "begin with { and give the fields by name",
    );
  if (doubles.length > 0) {
    const placeOf = placesOf(body);
    return {
      ok: false,
      problems: doubles.map(({ keys, offset }) => {
        const { line, column } = placeOf(offset);
        const name = shortened(String(keys.at(-1)));
        return {
          path: toPointer(keys),
          message: `"${name}" is given a second time, at line ${line}, column ${column}; it is not clear which one counts`,
          fix: "keep one of them",
        };
      }),
    };
  }
  return { ok: true, value };
}

/** Returns a function that gives line and column from 1 of an offset, and the text around it. */
function placesOf(text: string): (offset: number) => { line: number; column: number; excerpt: string } {
  const starts = [0];
  for (let at = text.indexOf("\n"); at !== -1; at = text.indexOf("\n", at + 1)) starts.push(at + 1);
  return (offset) => {
    let low = 0;
    let high = starts.length;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (starts[middle]! <= offset) low = middle;
      else high = middle;
    }
    const lineStart = starts[low]!;
    const lineEnd = (starts[low + 1] ?? text.length + 1) - 1;
    const excerpt = text.slice(Math.max(lineStart, offset - 30), Math.min(lineEnd, offset + 30)).trim();
    return { line: low + 1, column: offset - lineStart + 1, excerpt };
  };
}
