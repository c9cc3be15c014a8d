/** Returns the known name closest to a misspelt one, or undefined where none is close: the fewest letters inserted,
 *  removed, changed or swapped with their neighbour, at most a third of the name and at least one.
 *  name text as typed   known names allowed   -> one of `known`, or undefined
 *  Findings: none. Throws: never.
 *  Valid: any text; capitals and the marks - _ . and space do not count.
 *  Source: F. J. Damerau, A technique for computer detection and correction of spelling errors, Communications of the
 *  ACM 7 (1964) 171: four out of five slips are one such change.
 *  Example: nearest("lenght", ["length", "width", "height"])  ->  "length"
 *  Example: nearest("colour", ["length", "width"]) === undefined  ->  true */
export function nearest(name: string, known: readonly string[]): string | undefined {
  if (name.length > 64) return undefined;
  const plain = folded(name);
  let best: string | undefined;
  let bestDistance = Number.POSITIVE_INFINITY;
  for (const candidate of known) {
    const other = folded(candidate);
    const limit = Math.max(1, Math.floor(Math.max(plain.length, other.length) / 3));
    if (Math.abs(other.length - plain.length) > limit) continue;
    const distance = editDistance(plain, other);
    if (distance <= limit && distance < bestDistance) {
      best = candidate;
      bestDistance = distance;
    }
  }
  // One letter for another one-letter name is no likeness at all.
  return best !== undefined && plain.length === 1 && bestDistance > 0 ? undefined : best;
}

/** Returns "a", "a and b" or "a, b and c", each in quotes, for a sentence; long lists end in how many more there are.
 *  names list of texts   most how many are shown   -> text
 *  Findings: none. Throws: never.
 *  Valid: any list.
 *  Source: own construction.
 *  Example: listed(["gate", "ball"])  ->  "\"gate\" and \"ball\"" */
export function listed(names: readonly string[], most = 12): string {
  const head = names.slice(0, most).map((name) => `"${name}"`);
  if (names.length > most) return `${head.join(", ")} and ${names.length - most} more`;
  const last = head.pop();
  if (last === undefined) return "nothing";
  return head.length === 0 ? last : `${head.join(", ")} and ${last}`;
}

function folded(text: string): string {
  return text.toLowerCase().replace(/[-_. ]/g, "");
}

/** Optimal string alignment distance: insertions, removals, changes and swaps of neighbours, each costing one. */
function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      let cost = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + change);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        cost = Math.min(cost, beforeLast[j - 2]! + 1);
      row.push(cost);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length]!;
}
