import type { Candidate, Reason } from "../ranking.ts";

const terms = [
  (c: Candidate) => c.price,
  (c: Candidate) => c.horizonCost,
  (c: Candidate) => c.watts,
  (c: Candidate) => c.soundLevel,
  (c: Candidate) => -c.flowMargin,
];

/** Returns the candidates with their place on the Pareto front marked (nobody is better in one term without being worse in
 *  another), and the best of each term told so. Source: definition of Pareto dominance. */
export function markParetoFront(candidates: readonly Candidate[]): Candidate[] {
  const values = candidates.map((candidate) => terms.map((term) => term(candidate)));
  // Sorted by the first term, whoever dominates comes before whom it dominates: only the front itself need be asked.
  const order = candidates.map((_, i) => i).sort((a, b) => compare(values[a] as number[], values[b] as number[]));
  const front: number[] = [];
  const onFront = new Set<number>();
  for (const i of order) {
    const mine = values[i] as number[];
    if (front.some((j) => dominates(values[j] as number[], mine))) continue;
    front.push(i);
    onFront.add(i);
  }
  const best = (term: number) => Math.min(...values.map((value) => value[term] ?? Number.POSITIVE_INFINITY));
  const honours: [number, Reason["code"]][] = [
    [0, "cheapest"],
    [1, "lowest-cost-over-horizon"],
    [2, "least-power"],
    [3, "quietest"],
  ];
  const lowest = honours.map(([term]) => best(term));
  return candidates.map((candidate, i) => {
    const extra = honours.flatMap(([term, code], k): Reason[] => (values[i]?.[term] === lowest[k] ? [{ code }] : []));
    return { ...candidate, paretoFront: onFront.has(i), reasons: [...candidate.reasons, ...extra] };
  });
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
