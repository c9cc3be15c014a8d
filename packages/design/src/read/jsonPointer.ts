/** Returns the RFC 6901 JSON Pointer of a list of keys: "/" before each, "~" written "~0" and "/" written "~1".
 *  keys field names and list places from 0   -> pointer; "" is the whole document
 *  Findings: none. Throws: never.
 *  Valid: any keys.
 *  Source: P. Bryan, K. Zyp, M. Nottingham, RFC 6901, JavaScript Object Notation Pointer, section 3.
 *  Example: toPointer(["drains", 0, "a/b"])  ->  "/drains/0/a~1b" */
export function toPointer(keys: readonly (string | number)[]): string {
  let pointer = "";
  for (const key of keys) pointer += `/${escaped(key)}`;
  return pointer;
}

/** Returns a pointer one step deeper than another.
 *  parent JSON Pointer   key field name or place from 0   -> JSON Pointer
 *  Findings: none. Throws: never.
 *  Valid: any key.
 *  Source: RFC 6901, section 3.
 *  Example: below("/drains", 0)  ->  "/drains/0" */
export function below(parent: string, key: string | number): string {
  return `${parent}/${escaped(key)}`;
}

/** Returns the keys of a JSON Pointer, or undefined where the text is not one.
 *  pointer text   -> list of keys, all text; [] for the whole document
 *  Findings: none. Throws: never.
 *  Valid: any text.
 *  Source: RFC 6901, sections 3 and 4.
 *  Example: fromPointer("/a~1b/0")  ->  ["a/b", "0"]
 *  Example: fromPointer("drains") === undefined  ->  true */
export function fromPointer(pointer: string): string[] | undefined {
  if (pointer === "") return [];
  if (!pointer.startsWith("/") || /~(?![01])/.test(pointer)) return undefined;
  return pointer
    .slice(1)
    .split("/")
    .map((key) => key.replaceAll("~1", "/").replaceAll("~0", "~"));
}

/** Returns what stands at a pointer, or undefined where there is nothing.
 *  value any document   pointer JSON Pointer   -> value
 *  Findings: none. Throws: never.
 *  Valid: plain objects and lists; inherited names such as "constructor" are not found.
 *  Source: RFC 6901, section 4.
 *  Example: valueAt({ drains: [{ name: "main" }] }, "/drains/0/name")  ->  "main" */
export function valueAt(value: unknown, pointer: string): unknown {
  let at = value;
  for (const key of fromPointer(pointer) ?? [""]) {
    if (Array.isArray(at)) at = isPlace(key) ? at[Number(key)] : undefined;
    else if (typeof at === "object" && at !== null && Object.hasOwn(at, key)) at = (at as Record<string, unknown>)[key];
    else return undefined;
  }
  return at;
}

/** True for a list place as RFC 6901 writes it: digits without leading zeros.
 *  key text   -> true or false
 *  Findings: none. Throws: never.
 *  Valid: any text.
 *  Source: RFC 6901, section 4.
 *  Example: isPlace("01")  ->  false */
export function isPlace(key: string): boolean {
  return /^(0|[1-9]\d{0,9})$/.test(key);
}

function escaped(key: string | number): string {
  return typeof key === "number" ? String(key) : key.replaceAll("~", "~0").replaceAll("/", "~1");
}
