/** Where and why a text stops being JSON: `offset` in characters from 0. */
export interface JsonSlip {
  readonly offset: number;
  readonly message: string;
  readonly fix: string;
}

/** A field that one object holds twice: its name and the offset of the second. `keys` leads to it. */
export interface DoubleField {
  readonly keys: readonly (string | number)[];
  readonly offset: number;
}

/** What a walk over JSON text finds: the first slip, if any, and every field given twice. */
export interface JsonScan {
  readonly slip?: JsonSlip;
  readonly doubles: readonly DoubleField[];
}

interface Level {
  /** Names seen so far; undefined in a list. */
  names: Set<string> | undefined;
  /** Name of the field, or place in the list, being read. */
  at: string | number;
}

// Paths of fields given twice stop here, so that very deep nesting cannot make them long.
const deepestPath = 200;

const number = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const plainText = /[^"\\\u0000-\u001f]*/y;
const escaped = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;
const word = /[A-Za-z_$][\w$]*/y;
const space = /[ \t\r\n]*/y;

/** Returns the first place where a text breaks the rules of JSON, told as a person would, and all fields given twice.
 *  text   -> JsonScan; no slip where JSON.parse would read it
 *  Findings: none. Throws: never; nesting of any depth costs memory only, not call stack.
 *  Valid: any text.
 *  Source: T. Bray (ed.), RFC 8259, The JavaScript Object Notation Data Interchange Format, sections 2 to 7.
 *  Example: scanJson("{\"a\": 1,}").slip.offset  ->  8
 *  Example: scanJson("{\"a\": 1, \"a\": 2}").doubles.length  ->  1 */
export function scanJson(text: string): JsonScan {
  const doubles: DoubleField[] = [];
  const levels: Level[] = [];
  let offset = 0;

  const take = (pattern: RegExp): string | undefined => {
    pattern.lastIndex = offset;
    const match = pattern.exec(text);
    if (match === null) return undefined;
    offset = pattern.lastIndex;
    return match[0];
  };
  const slip = (message: string, fix: string, at = offset): JsonScan => ({
    slip: { offset: at, message, fix },
    doubles,
  });

  /** Reads a quoted text from its opening mark on; returns it, or the slip. */
  const quoted = (): string | JsonScan => {
    const start = offset;
    offset++;
    for (;;) {
      take(plainText);
      const mark = text[offset];
      if (mark === '"') {
        offset++;
        return text.slice(start, offset);
      }
      if (mark === undefined) return slip("this text never ends", 'close it with a double quote: "', start);
      if (mark !== "\\")
        return slip("a text goes on over the end of its line", "close it with a double quote, or write \\n");
      if (take(escaped) === undefined)
        return slip("a backslash that means nothing", "write \\\\ for a backslash of its own");
    }
  };

  // state: "value" expects a value, "first" a value or the end of a list, "name" a field name, "after" a comma or an end
  let state: "value" | "first" | "name" | "firstName" | "after" = "value";
  for (;;) {
    take(space);
    const mark = text[offset];
    if (state === "after") {
      const level = levels.at(-1);
      if (level === undefined) {
        if (mark === undefined) return { doubles };
        return slip("there is more after the end of the document", "remove it; a file holds one document");
      }
      const end = level.names === undefined ? "]" : "}";
      if (mark === end) {
        offset++;
        levels.pop();
      } else if (mark === ",") {
        offset++;
        if (level.names === undefined) {
          level.at = (level.at as number) + 1;
          state = "value";
        } else state = "name";
      } else if (mark === undefined) return slip(unfinished(levels), `close it with ${end}`);
      else if (mark === ":" && level.names === undefined)
        return slip("a colon inside a list", "a list holds values only; use { } for named fields");
      else return slip(`a comma or ${end} is missing here`, `write a comma before it, or ${end} to end`);
      continue;
    }
    if (state === "name" || state === "firstName") {
      if (mark === "}" && state === "firstName") {
        offset++;
        levels.pop();
        state = "after";
        continue;
      }
      if (mark === "}") return slip("a comma before the closing }", "remove the comma");
      if (mark === undefined) return slip(unfinished(levels), "close it with }");
      if (mark === "'") return slip("a field name in single quotes", 'use double quotes: "');
      if (mark === "/" || mark === "#") return slip("a comment", "JSON has none; put it into a note");
      if (mark !== '"') return slip("a field name in double quotes is expected here", 'write it as "name": value');
      const start = offset;
      const name = quoted();
      if (typeof name !== "string") return name;
      const level = levels.at(-1)!;
      const key = name.includes("\\") ? (JSON.parse(name) as string) : name.slice(1, -1);
      level.at = key;
      if (level.names!.has(key))
        doubles.push({ keys: levels.slice(0, deepestPath).map((each) => each.at), offset: start });
      level.names!.add(key);
      take(space);
      if (text[offset] !== ":") return slip("a colon is missing after the field's name", 'write "name": value');
      offset++;
      state = "value";
      continue;
    }
    if (mark === "{" || mark === "[") {
      offset++;
      levels.push(mark === "{" ? { names: new Set(), at: "" } : { names: undefined, at: 0 });
      state = mark === "{" ? "firstName" : "first";
      continue;
    }
    if (mark === "]" && state === "first") {
      offset++;
      levels.pop();
      state = "after";
      continue;
    }
    if (mark === '"') {
      const value = quoted();
      if (typeof value !== "string") return value;
    } else {
      const wrong = scalar(mark);
      if (wrong !== undefined) return wrong;
    }
    state = "after";
  }

  /** Reads a number, true, false or null; returns the slip where there is none of them. */
  function scalar(mark: string | undefined): JsonScan | undefined {
    const start = offset;
    if (mark === undefined) return slip(unfinished(levels), "the rest of the document is missing");
    if (/[-\d]/.test(mark) && take(number) !== undefined) {
      if (!/[\w.+]/.test(text[offset] ?? "")) return undefined;
      const digits = text.slice(start, offset + 1);
      if (/^-?0\d/.test(digits)) return slip("a number that begins with 0", "remove the leading 0", start);
      return slip("a number that is not written as JSON writes it", "write it like 1250, 0.5 or 1e-3", start);
    }
    const found = take(word);
    if (found === "true" || found === "false" || found === "null") return undefined;
    if (found === "NaN" || found === "Infinity" || text.startsWith("-Infinity", start))
      return slip(`${found ?? "-Infinity"} is not a number JSON knows`, "give a number, or leave the field out", start);
    if (found !== undefined)
      return slip(`${found.slice(0, 40)} stands without quotes`, 'put text in double quotes: "', start);
    if (mark === "'") return slip("a text in single quotes", 'use double quotes: "');
    if (mark === "," || mark === "}" || mark === "]")
      return slip(
        mark === "," ? "a value is missing before the comma" : `a value is missing before the closing ${mark}`,
        mark === "," ? "write the value, or remove the comma" : "write the value, or remove the comma before it",
      );
    if (mark === "/" || mark === "#") return slip("a comment", "JSON has none; put it into a note");
    if (mark === "." || mark === "+" || mark === "-")
      return slip("a number that is not written as JSON writes it", "write it like 0.5 or -0.5");
    return slip("a value is expected here", "write a text, a number, true, false, null, [ ] or { }");
  }
}

function unfinished(levels: readonly Level[]): string {
  if (levels.length === 0) return "the document is missing";
  return `the document ends in the middle: ${levels.length} ${levels.length === 1 ? "bracket is" : "brackets are"} still open`;
}
