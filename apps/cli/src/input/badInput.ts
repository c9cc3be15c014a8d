import type { Problem } from "@tidewright/design";

/** Input that cannot be worked with: thrown anywhere, told once in `main` with its complete list of problems. */
export class BadInput extends Error {
  readonly source: string;
  readonly problems: readonly Problem[];

  /** `source` is the file, stream or option the problems are in. */
  constructor(source: string, problems: readonly Problem[]) {
    super(`${source}: ${problems.length} problems`);
    this.name = "BadInput";
    this.source = source;
    this.problems = problems;
  }
}

/** Returns a BadInput of one problem that concerns the whole source. */
export function badSource(source: string, message: string, fix: string, value?: unknown): BadInput {
  return new BadInput(source, [value === undefined ? { path: "", message, fix } : { path: "", message, value, fix }]);
}
