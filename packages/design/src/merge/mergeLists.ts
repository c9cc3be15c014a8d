import { below } from "../read/jsonPointer.ts";
import { alignment } from "./alignment.ts";
import { matchLists, uniqueNames } from "./matchLists.ts";
import type { MergeConflict } from "./mergeConflict.ts";
import { mergeOrder } from "./mergeOrder.ts";
import { sameJson } from "./sameJson.ts";

type Inner = (base: unknown, mine: unknown, theirs: unknown, path: string) => unknown;

/** Joins two lists that began as one. Entries that both kept form a spine, in the order of whoever changed it; what was
 *  inserted hangs on the entry of the spine it was put behind. */
export function mergeLists(
  base: readonly unknown[],
  mine: readonly unknown[],
  theirs: readonly unknown[],
  path: string,
  inner: Inner,
  conflicts: MergeConflict[],
): unknown[] {
  const my = matchLists(base, mine);
  const their = matchLists(base, theirs);
  const spine: number[] = [];
  const values = new Map<number, unknown>();
  const disputed = new Set<number>();
  base.forEach((was, i) => {
    const [m, t] = [my.to[i]!, their.to[i]!];
    const at = below(path, i);
    if (m >= 0 && t >= 0) {
      spine.push(i);
      values.set(i, inner(was, mine[m], theirs[t], at));
    } else if (t >= 0 && (their.carried.has(i) || !sameJson(was, theirs[t]))) {
      conflicts.push({ path: at, base: was, mine: undefined, theirs: theirs[t] });
      disputed.add(i);
    } else if (m >= 0 && (my.carried.has(i) || !sameJson(was, mine[m])))
      conflicts.push({ path: at, base: was, mine: mine[m], theirs: undefined });
  });
  const order = mergeOrder(spine, my.to, their.to);
  if (order.disputed) conflicts.push({ path, base, mine, theirs });

  // The same new name on both sides is one thing, added twice.
  const myNames = new Map([...uniqueNames(mine)].map(([place, name]) => [name, place]));
  const twins = new Map<number, number>();
  for (const [t, name] of uniqueNames(theirs)) {
    const m = myNames.get(name);
    if (m !== undefined && my.from[m]! < 0 && their.from[t]! < 0) twins.set(m, t);
  }
  const twinOf = new Map([...twins].map(([m, t]) => [t, m]));
  const onSpine = new Set(spine);
  const theirNew = hung(their.from, onSpine, (t) => {
    const i = their.from[t]!;
    if (i >= 0) return disputed.has(i) ? [theirs[t]] : [];
    const m = twinOf.get(t);
    return [m === undefined ? theirs[t] : inner(undefined, mine[m], theirs[t], below(path, t))];
  });
  const myNew = hung(my.from, onSpine, (m) => (my.from[m]! >= 0 || twins.has(m) ? [] : [mine[m]]));
  const behind = (i: number) => interleaved(theirNew.get(i) ?? [], myNew.get(i) ?? []);
  return [...behind(start), ...order.spine.flatMap((i) => [values.get(i), ...behind(i)])];
}

/** Stands for the place before all entries. */
const start = -1;

function hung(
  from: readonly number[],
  spine: ReadonlySet<number>,
  take: (place: number) => readonly unknown[],
): Map<number, unknown[]> {
  const slots = new Map<number, unknown[]>();
  let last = start;
  from.forEach((i, place) => {
    if (spine.has(i)) last = i;
    else slots.set(last, [...(slots.get(last) ?? []), ...take(place)]);
  });
  return slots;
}

/** Both lists one after the other, what is identical in both once. */
function interleaved(theirs: readonly unknown[], mine: readonly unknown[]): unknown[] {
  if (theirs.length === 0 || mine.length === 0) return [...theirs, ...mine];
  const all: unknown[] = [];
  let [t, m] = [0, 0];
  const common = alignment(theirs.length, mine.length, (i, j) => (sameJson(theirs[i], mine[j]) ? 1 : 0));
  for (const [i, j] of [...common, [theirs.length, mine.length] as const]) {
    all.push(...theirs.slice(t, i), ...mine.slice(m, j), ...theirs.slice(i, i + 1));
    [t, m] = [i + 1, j + 1];
  }
  return all;
}
