import { alignment } from "./alignment.ts";
import { likeness } from "./likeness.ts";
import { sameJson } from "./sameJson.ts";
import { fieldOf, isFields, isWhole } from "./shape.ts";

/** Which entry of one list is which of another. `to[i]` is the place in the second list, -1 where it is gone; `from[j]`
 *  the way back. `carried` are entries without a name that were found elsewhere by being unchanged. */
export interface ListMatch {
  readonly to: readonly number[];
  readonly from: readonly number[];
  readonly carried: ReadonlySet<number>;
}

/** How alike entries with a name must be to count as one that was renamed. */
const renamed = 0.5;

/** Returns which entries of two lists are the same thing: first by a unique `id`, or `name` where there is no id; then by
 *  equality in order; then unchanged but elsewhere; then renamed or changed, by likeness. Parts of different kind are
 *  never the same. */
export function matchLists(one: readonly unknown[], other: readonly unknown[]): ListMatch {
  const to: number[] = one.map(() => -1);
  const from: number[] = other.map(() => -1);
  const carried = new Set<number>();
  const pair = (i: number, j: number) => {
    to[i] = j;
    from[j] = i;
  };
  const names = uniqueNames(one);
  const others = uniqueNames(other);
  const places = new Map([...others].map(([place, name]) => [name, place]));
  for (const [i, name] of names) {
    const j = places.get(name);
    if (j !== undefined) pair(i, j);
  }
  // Equal ones in order: the head and the tail at once, the middle by a longest common subsequence.
  const left = (list: readonly number[]) => list.flatMap((mate, place) => (mate < 0 ? [place] : []));
  const rest = left(to);
  const rests = left(from);
  const classOf = classes();
  const a = rest.map((i) => classOf(one[i]));
  const b = rests.map((j) => classOf(other[j]));
  let head = 0;
  while (head < a.length && head < b.length && a[head] === b[head]) pair(rest[head]!, rests[head++]!);
  let tail = 0;
  while (tail < a.length - head && tail < b.length - head && a.at(-1 - tail) === b.at(-1 - tail)) {
    pair(rest.at(-1 - tail)!, rests.at(-1 - tail)!);
    tail++;
  }
  const [n, m] = [a.length - head - tail, b.length - head - tail];
  const spine = alignment(n, m, (i, j) => (a[head + i] === b[head + j] ? 1 : 0));
  for (const [i, j] of spine) pair(rest[head + i]!, rests[head + j]!);
  // Unchanged but elsewhere, where there is no doubt which.
  const once = single(left(to), (i) => classOf(one[i]));
  const onces = single(left(from), (j) => classOf(other[j]));
  for (const [kind, i] of once) {
    const j = onces.get(kind);
    if (j === undefined) continue;
    pair(i, j);
    carried.add(i);
  }
  // Changed in place: within each gap of the spine, entries without a name by their likeness, in order.
  let [i0, j0] = [0, 0];
  for (const [i1, j1] of [...spine, [n, m] as const]) {
    const gap = rest.slice(head + i0, head + i1).filter((i) => to[i]! < 0 && !nameOf(one[i]));
    const gaps = rests.slice(head + j0, head + j1).filter((j) => from[j]! < 0 && !nameOf(other[j]));
    const worth = table(gap.length, gaps.length, (i, j) => alikeness(one[gap[i]!], other[gaps[j]!]));
    for (const [i, j] of alignment(gap.length, gaps.length, worth)) pair(gap[i]!, gaps[j]!);
    [i0, j0] = [i1 + 1, j1 + 1];
  }
  // Renamed: the most alike first, wherever they stand.
  const gone = left(to);
  const fresh = left(from);
  const candidates: { i: number; j: number; alike: number }[] = [];
  if (gone.length * fresh.length <= 10_000)
    for (const i of gone)
      for (const j of fresh) {
        if (!nameOf(one[i]) && !nameOf(other[j])) continue;
        const alike = sameKind(one[i], other[j]) ? likeness(one[i], other[j]) : 0;
        if (alike >= renamed) candidates.push({ i, j, alike });
      }
  candidates.sort((x, y) => y.alike - x.alike || Math.abs(x.i - x.j) - Math.abs(y.i - y.j) || x.i - y.i);
  for (const { i, j } of candidates) if (to[i]! < 0 && from[j]! < 0) pair(i, j);
  return { to, from, carried };
}

/** The name that an entry goes by, with which field it is; undefined where it has none. */
function nameOf(entry: unknown): string | undefined {
  if (!isFields(entry)) return undefined;
  for (const key of ["id", "name"] as const) {
    const name = fieldOf(entry, key);
    if (typeof name === "string") return `${key} ${name}`;
  }
  return undefined;
}

/** Places of the entries whose name no other entry of the list has. */
export function uniqueNames(list: readonly unknown[]): Map<number, string> {
  const places = single(
    list.map((_, place) => place).filter((place) => nameOf(list[place]) !== undefined),
    (place) => nameOf(list[place])!,
  );
  return new Map([...places].map(([name, place]) => [place, name]));
}

function single<Key>(places: readonly number[], keyOf: (place: number) => Key): Map<Key, number> {
  const found = new Map<Key, number>();
  const twice = new Set<Key>();
  for (const place of places) {
    const key = keyOf(place);
    if (found.has(key)) twice.add(key);
    found.set(key, place);
  }
  for (const key of twice) found.delete(key);
  return found;
}

/** A numbering in which equal entries, and only those, have the same number. */
function classes(): (entry: unknown) => number {
  const known = new Map<string, { entry: unknown; number: number }[]>();
  let count = 0;
  return (entry) => {
    const print = fingerprint(entry, 4);
    const alike = known.get(print) ?? [];
    const same = alike.find((each) => sameJson(each.entry, entry));
    if (same !== undefined) return same.number;
    known.set(print, [...alike, { entry, number: count }]);
    return count++;
  };
}

// Equal entries have equal prints; the depth is bounded so that no nesting overflows the stack.
function fingerprint(value: unknown, depth: number): string {
  if (typeof value !== "object" || value === null) return `${typeof value}${String(value)}`;
  if (depth === 0) return Array.isArray(value) ? "[]" : "{}";
  if (Array.isArray(value)) return `[${value.map((entry) => fingerprint(entry, depth - 1)).join()}]`;
  const fields = value as Readonly<Record<string, unknown>>;
  const names = Object.keys(fields).filter((key) => fields[key] !== undefined);
  return `{${names
    .sort()
    .map((key) => `${key}:${fingerprint(fields[key], depth - 1)}`)
    .join()}}`;
}

function sameKind(one: unknown, other: unknown): boolean {
  if (Array.isArray(one) && Array.isArray(other)) return !isWhole(one) && !isWhole(other);
  return isFields(one) && isFields(other) && !isWhole(one) && fieldOf(one, "kind") === fieldOf(other, "kind");
}

/** Of the same kind counts a little, so that a part changed throughout is still the part in its place. */
function alikeness(one: unknown, other: unknown): number {
  return sameKind(one, other) ? 0.1 + likeness(one, other) : 0;
}

function table(n: number, m: number, worth: (i: number, j: number) => number): (i: number, j: number) => number {
  const known = new Map<number, number>();
  return (i, j) => {
    const place = i * m + j;
    let found = known.get(place);
    if (found === undefined) {
      found = n * m > 40_000 ? 0 : worth(i, j);
      known.set(place, found);
    }
    return found;
  };
}
