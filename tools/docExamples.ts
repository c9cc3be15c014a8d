import type { ApiEntry } from "./publicApi.ts";

/** A worked example found in a comment: one expression and the value printed for it. */
export interface DocExample {
  readonly entry: ApiEntry;
  readonly expression: string;
  readonly printed: string;
}

/** Lists every `Example: EXPR  ->  VALUE` line of the comments given; a line without an arrow has an empty value. */
export function findExamples(entries: readonly ApiEntry[]): DocExample[] {
  return entries.flatMap((entry) =>
    entry.comment.split("\n").flatMap((line) => {
      const text = /^\s*Example:\s*(.+)$/.exec(line)?.[1];
      if (text === undefined) return [];
      const parts = /^(.*?)\s+->\s+(.*)$/.exec(text);
      return [{ entry, expression: (parts?.[1] ?? text).trim(), printed: (parts?.[2] ?? "").trim() }];
    }),
  );
}

/** Evaluates an expression with the given names in scope. */
export function evaluateExample(expression: string, scope: Readonly<Record<string, unknown>>): unknown {
  const names = Object.keys(scope).filter((name) => /^[A-Za-z_$][\w$]*$/.test(name) && name !== "default");
  const body = new Function(...names, `"use strict"; return (${expression});`);
  return body(...names.map((name) => scope[name]));
}

/** Lists where a value differs from the printed one, empty when they agree.
 *  Numbers agree within half a unit of the last printed place, and never looser than half a per cent, so "1" printed
 *  for 1.4 fails; a printed 0 stands for 1e-12 at most. Objects must have the same keys; a key whose value is undefined
 *  counts as absent, as in JSON. */
export function differences(actual: unknown, printed: string): string[] {
  const found: string[] = [];
  compare(actual, readPrinted(printed), "value", found);
  return found;
}

interface PrintedNumber {
  readonly digits: string;
}

const words: Readonly<Record<string, unknown>> = {
  undefined: undefined,
  NaN: Number.NaN,
  Infinity: Number.POSITIVE_INFINITY,
  "-Infinity": Number.NEGATIVE_INFINITY,
};

/** JSON.parse drops how many digits were printed, so each number outside a string is kept as its text. */
function readPrinted(printed: string): unknown {
  if (printed in words) return words[printed];
  const marked = printed.replace(/"(?:[^"\\]|\\.)*"|-?\d+(?:\.\d+)?(?:[eE][+-]?\d+)?/g, (token) =>
    token.startsWith('"') ? token : `{"\\u0000digits":"${token}"}`,
  );
  try {
    return JSON.parse(marked, (_key, value: unknown) => {
      const digits = isRecord(value) ? value["\u0000digits"] : undefined;
      return typeof digits === "string" ? ({ digits } satisfies PrintedNumber) : value;
    });
  } catch {
    throw new Error(`the printed value is not a JSON literal: ${printed}`);
  }
}

function compare(actual: unknown, expected: unknown, at: string, found: string[]): void {
  if (isPrintedNumber(expected)) {
    if (typeof actual !== "number" || !(Math.abs(actual - Number(expected.digits)) <= tolerance(expected.digits))) {
      found.push(`${at} is ${show(actual)}, printed ${expected.digits}`);
    }
  } else if (Array.isArray(expected)) {
    const values =
      Array.isArray(actual) || ArrayBuffer.isView(actual) ? Array.from(actual as ArrayLike<unknown>) : null;
    if (!values || values.length !== expected.length) {
      found.push(`${at} is ${show(actual)}, printed an array of ${expected.length}`);
    } else for (const [i, item] of expected.entries()) compare(values[i], item, `${at}[${i}]`, found);
  } else if (isRecord(expected)) {
    if (!isRecord(actual)) {
      found.push(`${at} is ${show(actual)}, printed an object`);
      return;
    }
    const present = Object.keys(actual).filter((key) => actual[key] !== undefined);
    for (const key of new Set([...Object.keys(expected), ...present])) {
      if (!(key in expected)) found.push(`${at}.${key} is ${show(actual[key])}, not printed`);
      else compare(actual[key], expected[key], `${at}.${key}`, found);
    }
  } else if (!Object.is(actual, expected)) found.push(`${at} is ${show(actual)}, printed ${show(expected)}`);
}

function tolerance(digits: string): number {
  const value = Math.abs(Number(digits));
  if (value === 0) return 1e-12;
  const [mantissa = "", exponent = "0"] = digits.toLowerCase().split("e");
  const places = mantissa.split(".")[1]?.length ?? 0;
  const halfUnit = 0.5 * 10 ** (Number(exponent) - places);
  // The last term forgives the rounding of a value that lies exactly half-way.
  return Math.min(halfUnit, 0.005 * value) + 1e-12 * value;
}

function isPrintedNumber(value: unknown): value is PrintedNumber {
  return isRecord(value) && typeof value.digits === "string" && Object.keys(value).length === 1;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function show(value: unknown): string {
  return typeof value === "number" ? String(value) : (JSON.stringify(value) ?? String(value));
}
