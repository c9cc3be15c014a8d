import type { Problem } from "../problem.ts";
import { isObject } from "../read/place.ts";
import { type Migration, migrations } from "./migrations.ts";
import { versionProblems } from "./versionProblems.ts";

/** A document brought up to the newest version, or why that cannot be. */
export type Migrated =
  | { readonly ok: true; readonly value: unknown; readonly from: number; readonly to: number }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Returns a document brought up to the newest version by one step a version; the value given is not changed.
 *  value any document   chain steps, `chain[n]` leads from version n to n + 1   -> Migrated
 *  Findings: none; a newer version than the chain reaches is a problem. A missing or malformed version counts as the
 *  newest, so that the check which follows can name it beside all other problems. Throws: never.
 *  Valid: any value; steps leave alone what they do not understand, the check names it.
 *  Source: own construction.
 *  Example: migrate({ tidewright: 0, wishes: { turnover: 8 } }).value.wishes.returnTurnover.length  ->  2
 *  Example: migrate({ tidewright: 1 }).from  ->  1 */
export function migrate(value: unknown, chain: readonly Migration[] = migrations): Migrated {
  const newest = chain.length;
  const problems = versionProblems(value, newest);
  if (problems.length > 0) return { ok: false, problems };
  const version = isObject(value) ? value["tidewright"] : undefined;
  const from = typeof version === "number" && Number.isInteger(version) && version >= 0 ? version : newest;
  let at = value;
  for (let n = from; n < newest; n++) at = { ...chain[n]!(at as Record<string, unknown>), tidewright: n + 1 };
  return { ok: true, value: at, from, to: newest };
}
