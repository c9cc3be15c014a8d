import { type Problem, shown } from "@tidewright/design";

/** How much one thing may hold: names and notes in characters, documents and files in bytes. */
export interface Limits {
  readonly nameLength: number;
  readonly notesLength: number;
  readonly documentBytes: number;
  readonly fileBytes: number;
}

/** What one thing may hold unless the opener of a store says otherwise. */
export const usualLimits: Limits = {
  nameLength: 200,
  notesLength: 20_000,
  documentBytes: 4 * 1024 * 1024,
  fileBytes: 20 * 1024 * 1024,
};

/** Every problem of one text: its type, its length, and characters that not every database can keep. */
export function textProblems(
  path: string,
  value: unknown,
  longest: number,
  { empty = false }: { readonly empty?: boolean } = {},
): Problem[] {
  if (typeof value !== "string") return [{ path, message: "must be text", value, fix: "write text here" }];
  const problems: Problem[] = [];
  if (!empty && value.trim() === "") problems.push({ path, message: "is empty", value, fix: "write a name" });
  if (value.length > longest) {
    problems.push({
      path,
      message: `has ${value.length} characters, more than the ${longest} that are kept`,
      value: shown(value),
      fix: `shorten it to ${longest} characters`,
    });
  }
  if (/\0|\p{Surrogate}/u.test(value)) {
    problems.push({
      path,
      message: "holds a character that is no text (a zero or half of a pair)",
      value: shown(value),
      fix: "take that character out",
    });
  }
  return problems;
}

/** Every problem of who did something and when. */
export function byProblems(by: { readonly author: unknown; readonly at: unknown }): Problem[] {
  return [...textProblems("/by/author", by.author, 200), ...instantProblems("/by/at", by.at)];
}

/** The problem of an instant that is not in the one form in which text sorts as time does: UTC, to the millisecond. */
export function instantProblems(path: string, at: unknown): Problem[] {
  const isInstant =
    typeof at === "string" && /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/.test(at) && !Number.isNaN(Date.parse(at));
  return isInstant
    ? []
    : [
        {
          path,
          message: "must be an instant in UTC, to the millisecond",
          value: at,
          fix: "write it like 2026-03-01T09:30:00.000Z",
        },
      ];
}

/** A page of a list as whole numbers that every database takes: at most ten thousand things at once
 *  unless the list says otherwise. */
export function pageOf(limit: number, offset: number, most = 10_000): readonly [limit: number, offset: number] {
  const whole = (value: number, largest: number): number =>
    Number.isFinite(value) ? Math.min(Math.max(Math.floor(value), 0), largest) : 0;
  return [whole(limit, most), whole(offset, 1_000_000_000)];
}

/** Every problem of an id that a caller brings: letters, digits, dots, - and _ only. */
export function idProblems(path: string, id: unknown): Problem[] {
  return typeof id === "string" && /^[A-Za-z0-9._-]{1,100}$/.test(id)
    ? []
    : [{ path, message: "is no id", value: id, fix: "use 1 to 100 letters, digits, dots, - and _" }];
}

/** JSON text of a value within a size, or the problem of it. */
export function jsonText(
  path: string,
  value: unknown,
  mostBytes: number,
): { readonly text: string } | { readonly problem: Problem } {
  let text: string | undefined;
  try {
    text = JSON.stringify(value);
  } catch (error) {
    return { problem: { path, message: `cannot be written as JSON: ${String(error)}`, fix: "give plain data" } };
  }
  if (text === undefined) return { problem: { path, message: "is missing", fix: "give a document" } };
  const size = Buffer.byteLength(text);
  if (size > mostBytes) {
    return {
      problem: {
        path,
        message: `takes ${size} bytes, more than the ${mostBytes} that are kept`,
        fix: "make it smaller; pictures belong into files",
      },
    };
  }
  return { text };
}
