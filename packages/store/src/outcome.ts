import type { Problem } from "@tidewright/design";

/** Why a change was not made; nothing of it was kept.
 *  `missing` there is no such thing; `invalid` every problem of what was given; `conflict` somebody else was first, and
 *  `current` is what they left. */
export type Refusal<Current = never> =
  | { readonly ok: false; readonly reason: "missing"; readonly message: string }
  | { readonly ok: false; readonly reason: "invalid"; readonly problems: readonly Problem[] }
  | ([Current] extends [never]
      ? never
      : { readonly ok: false; readonly reason: "conflict"; readonly current: Current });

/** The answer to a change: what is kept now, or why it was refused. */
export type Outcome<Value, Current = never> = { readonly ok: true; readonly value: Value } | Refusal<Current>;

/** Says that a change is kept. */
export const done = <Value>(value: Value): { readonly ok: true; readonly value: Value } => ({ ok: true, value });

/** Says that there is no such thing. */
export const missing = (what: string, id: string) =>
  ({ ok: false, reason: "missing", message: `There is no ${what} "${id}".` }) as const;

/** Says every problem of what was given. */
export const invalid = (problems: readonly Problem[]) => ({ ok: false, reason: "invalid", problems }) as const;

/** Says that somebody else was first, and what they left. */
export const conflict = <Current>(current: Current) => ({ ok: false, reason: "conflict", current }) as const;
