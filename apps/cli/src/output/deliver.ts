import { writeFile } from "node:fs/promises";
import { badSource } from "../input/badInput.ts";
import { type Format, formatIn, type System } from "./format.ts";
import { type Styles, stylesFor } from "./styles.ts";

/** Options that every answer knows. */
export interface AnswerOptions {
  readonly json?: boolean;
  readonly out?: string;
  readonly units: System;
}

/** What a view needs to turn numbers into lines. */
export interface Look {
  readonly format: Format;
  readonly styles: Styles;
  /** Columns to fill [characters]. */
  readonly width: number;
}

/** Brings an answer to where it was asked for: as table or JSON, to the terminal or into a file. */
export async function deliver(
  options: AnswerOptions,
  result: () => unknown,
  view: (look: Look) => string,
): Promise<void> {
  const toScreen = options.out === undefined;
  const text = options.json === true ? jsonText(result()) : view(lookFor(options, toScreen));
  await write(`${text.trimEnd()}\n`, options.out);
}

function lookFor({ units }: AnswerOptions, toScreen: boolean): Look {
  const columns = toScreen && process.stdout.isTTY ? process.stdout.columns : 80;
  return {
    format: formatIn(units),
    styles: stylesFor(toScreen ? process.stdout : undefined),
    width: Math.max(60, Math.min(columns || 80, 120)),
  };
}

/** Returns a value as JSON in which numbers without a finite value are null, as RFC 8259 has no other word for them. */
export function jsonText(value: unknown): string {
  return JSON.stringify(
    value,
    (_key, each: unknown) => (ArrayBuffer.isView(each) ? [...(each as Float64Array)] : each),
    2,
  );
}

/** Writes text to a file, or to the standard output where no file is named; `option` is the one that named it. */
export async function write(text: string, out: string | undefined, option = "--out"): Promise<void> {
  if (out === undefined) {
    // Awaited, so that a long answer into a slow pipe is whole before the process ends.
    await new Promise<void>((resolve, reject) => {
      process.stdout.write(text, (error) => (error ? reject(error) : resolve()));
    });
    return;
  }
  try {
    await writeFile(out, text);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    throw badSource(
      option,
      `the answer cannot be written there: ${reason}`,
      "name a file in a folder you may write to",
      out,
    );
  }
}
