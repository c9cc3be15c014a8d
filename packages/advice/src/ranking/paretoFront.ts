import type { Candidate, Reason } from "../ranking.ts";

const terms = [
  (c: Candidate) => c.price,
  // Where nothing can be added up it tells nobody apart: price and power have terms of their own.
  (c: Candidate) => c.horizonCost ?? 0,
  (c: Candidate) => c.watts,
  (c: Candidate) => c.soundLevel,
  (c: Candidate) => -c.flowMargin,
];

/** Marks who is on the Pareto front (nobody is better in one term without being worse in another), and tells the best of each term
 *  so. candidates changed in place. Source: definition of Pareto dominance. */
export function markParetoFront(candidates: readonly Unmarked[]): void {
  const values = candidates.map((candidate) => terms.map((term) => term(candidate)));
  // Sorted by the first term, whoever dominates comes before whom it dominates: only the front itself need be asked.
  const order = candidates.map((_, i) => i).sort((a, b) => compare(values[a] as number[], values[b] as number[]));
  const front: number[][] = [];
  const lowest = terms.map(() => Number.POSITIVE_INFINITY);
  for (const i of order) {
    const mine = values[i] as number[];
    for (let k = 0; k < mine.length; k++) lowest[k] = Math.min(lowest[k] as number, mine[k] as number);
    if (isDominated(mine, front)) continue;
    front.push(mine);
    (candidates[i] as Unmarked).paretoFront = true;
  }
  for (const [term, code] of honours)
    for (let i = 0; i < candidates.length; i++) {
      if (code === "lowest-cost-over-horizon" && candidates[i]?.horizonCost === undefined) continue;
      if (values[i]?.[term] === lowest[term]) candidates[i]?.reasons.push({ code });
    }
}

/** A candidate that still waits for its marks. */
export type Unmarked = Omit<Candidate, "score" | "paretoFront" | "reasons"> & {
  score: number;
  paretoFront: boolean;
  reasons: Reason[];
};

const honours: readonly (readonly [number, Reason["code"]])[] = [
  [0, "cheapest"],
  [1, "lowest-cost-over-horizon"],
  [2, "least-power"],
  [3, "quietest"],
];

/** Whoever dominates most is likely to do so again: it is asked first the next time. */
function isDominated(mine: readonly number[], front: number[][]): boolean {
  for (let j = 0; j < front.length; j++) {
    const other = front[j] as number[];
    if (!dominates(other, mine)) continue;
    if (j > 0) {
      front[j] = front[j - 1] as number[];
      front[j - 1] = other;
    }
    return true;
  }
  return false;
}

function compare(a: readonly number[], b: readonly number[]): number {
  for (let k = 0; k < a.length; k++) {
    const difference = (a[k] ?? 0) - (b[k] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}

function dominates(a: readonly number[], b: readonly number[]): boolean {
  let better = false;
  for (let k = 0; k < a.length; k++) {
    if ((a[k] ?? 0) > (b[k] ?? 0)) return false;
    if ((a[k] ?? 0) < (b[k] ?? 0)) better = true;
  }
  return better;
}
