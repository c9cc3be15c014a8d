import type { Scene } from "./scene.ts";

/** Returns a scene in which every shape, part, flag and dimension that equals the one before it is that very one, so that
 *  what has not changed in a drag is not drawn anew.
 *  before the scene last drawn, if any   now the new one   -> scene equal to `now`
 *  Findings: none. Throws: never.
 *  Valid: scenes of plain values; entries are compared place by place, so a new part at the front shares nothing after it.
 *  Source: own construction. */
export function shareScene(before: Scene | undefined, now: Scene): Scene {
  return before === undefined ? now : (shared(before, now) as Scene);
}

/** The old value where both are equal all through; else the new one with its equal members taken from the old. */
function shared(before: unknown, now: unknown): unknown {
  if (Object.is(before, now)) return before;
  if (typeof before !== "object" || typeof now !== "object" || before === null || now === null) return now;
  if (Array.isArray(now)) {
    if (!Array.isArray(before)) return now;
    const list = now.map((entry, i) => shared(before[i], entry));
    return list.length === before.length && list.every((entry, i) => entry === before[i]) ? before : list;
  }
  const old = before as Readonly<Record<string, unknown>>;
  const made: Record<string, unknown> = {};
  const keys = Object.keys(now);
  let equal = keys.length === Object.keys(old).length;
  for (const key of keys) {
    made[key] = shared(old[key], (now as Readonly<Record<string, unknown>>)[key]);
    if (!Object.is(made[key], old[key])) equal = false;
  }
  return equal ? before : made;
}
