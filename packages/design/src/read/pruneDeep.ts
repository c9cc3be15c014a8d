import { toPointer } from "./jsonPointer.ts";

/** Deepest nesting that is read: thirty tees one behind the other.
 *  Findings: none. Throws: never.
 *  Valid: each tee adds three levels (its branches, one branch, one part).
 *  Source: own construction; a real system has fewer than ten tees in a row.
 *  Example: deepestNesting  ->  100 */
export const deepestNesting = 100;

/** A value whose nesting is safe to walk, and the paths of what was cut off it. */
export interface Pruned {
  readonly value: unknown;
  readonly cut: readonly string[];
}

/** Returns the value itself where its nesting is at most `deepest` levels, else a copy without the deeper parts.
 *  value anything, also with circles in it   deepest levels   -> Pruned; `cut` holds a JSON Pointer a part
 *  Findings: none. Throws: never: the walk keeps its own stack.
 *  Valid: plain objects and lists.
 *  Source: own construction.
 *  Example: pruneDeep({ a: { b: { c: 1 } } }, 2).cut  ->  ["/a/b"] */
export function pruneDeep(value: unknown, deepest: number = deepestNesting): Pruned {
  if (!isDeeper(value, deepest)) return { value, cut: [] };
  const cut: string[] = [];
  const around = new Set<object>();
  const copy = (at: unknown, keys: (string | number)[]): unknown => {
    if (typeof at !== "object" || at === null) return at;
    if (keys.length >= deepest || around.has(at)) {
      cut.push(toPointer(keys));
      return Array.isArray(at) ? [] : {};
    }
    around.add(at);
    const whole = Array.isArray(at)
      ? at.map((each, i) => copy(each, [...keys, i]))
      : Object.fromEntries(Object.entries(at).map(([key, each]) => [key, copy(each, [...keys, key])]));
    around.delete(at);
    return whole;
  };
  return { value: copy(value, []), cut };
}

// An object met again at no greater depth needs no second look; one that holds itself grows deeper until it is found.
function isDeeper(value: unknown, deepest: number): boolean {
  const seen = new Map<object, number>();
  const stack: { at: unknown; depth: number }[] = [{ at: value, depth: 0 }];
  for (let top = stack.pop(); top !== undefined; top = stack.pop()) {
    const { at, depth } = top;
    if (typeof at !== "object" || at === null) continue;
    if (depth >= deepest) return true;
    if (depth <= (seen.get(at) ?? -1)) continue;
    seen.set(at, depth);
    for (const each of Object.values(at)) if (typeof each === "object") stack.push({ at: each, depth: depth + 1 });
  }
  return false;
}
