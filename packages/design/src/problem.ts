/** One thing wrong with a document, in plain words.
 *  `path` RFC 6901 JSON Pointer of the place; `message` what is the matter there; `value` what stands there, as it is;
 *  `fix` what to write instead. */
export interface Problem {
  readonly path: string;
  readonly message: string;
  readonly value?: unknown;
  readonly fix: string;
}

const longest = 60;

/** Returns a value as short text for a sentence: text in quotes, objects and lists by their size, the rest as JSON.
 *  value anything   -> text of at most about 60 characters
 *  Findings: none. Throws: never.
 *  Valid: any value, also cyclic or very large ones.
 *  Source: own construction.
 *  Example: shown("a".repeat(100)).length  ->  63
 *  Example: shown([1, 2, 3])  ->  "a list of 3" */
export function shown(value: unknown): string {
  if (typeof value === "string") return `"${shortened(value)}"`;
  if (Array.isArray(value)) return value.length === 0 ? "an empty list" : `a list of ${value.length}`;
  if (value === null) return "null";
  if (typeof value === "object") {
    const count = Object.keys(value).length;
    return count === 1 ? "an object of 1 field" : `an object of ${count} fields`;
  }
  if (value === undefined) return "nothing";
  return String(value);
}

/** Returns text cut to 60 characters, with an ellipsis where something is missing; line breaks become spaces.
 *  text any text   -> text
 *  Findings: none. Throws: never.
 *  Valid: any text.
 *  Source: own construction.
 *  Example: shortened("sump\nreturn")  ->  "sump return" */
export function shortened(text: string): string {
  // Cut first: replacing inside megabytes of text to show sixty characters would be slow.
  const start = text.slice(0, longest);
  const plain = start.replace(/[\s\p{Cc}]+/gu, " ");
  return text.length > longest ? `${plain}…` : plain;
}
