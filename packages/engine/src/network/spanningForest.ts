/** A forest that hangs every junction from the known heads, leaves first: the way by which flows are made to balance. */
export interface SpanningForest {
  /** For each step: the junction, its link toward the root, and the other end (a junction, or -1 for a known head). */
  readonly junction: Int32Array;
  readonly link: Int32Array;
  readonly parent: Int32Array;
}

/** Breadth-first from the known heads. `shut` marks links that may carry nothing; they are used only where nothing else reaches,
 *  those first that would let water in (from the reached side forward), and each brings in all that hangs on it by open links. */
export function planForest(size: number, from: Int32Array, to: Int32Array, shut?: Uint8Array): SpanningForest {
  const nodeCount = 1 + Math.max(size - 1, ...from, ...to);
  const first = new Int32Array(nodeCount + 1);
  for (let l = 0; l < from.length; l++) {
    first[from[l] + 1]++;
    first[to[l] + 1]++;
  }
  for (let i = 0; i < nodeCount; i++) first[i + 1] += first[i];
  const fill = first.slice();
  const incident = new Int32Array(2 * from.length);
  for (let l = 0; l < from.length; l++) {
    incident[fill[from[l]]++] = l;
    incident[fill[to[l]]++] = l;
  }

  const reached = new Uint8Array(nodeCount).fill(1, size);
  const junction = new Int32Array(size);
  const link = new Int32Array(size);
  const parent = new Int32Array(size);
  let count = 0;
  const queue = Array.from({ length: nodeCount - size }, (_, i) => size + i);
  const attach = (other: number, l: number, at: number) => {
    reached[other] = 1;
    junction[count] = other;
    link[count] = l;
    parent[count] = at < size ? at : -1;
    count++;
    queue.push(other);
  };
  let head = 0;
  const spread = () => {
    for (; head < queue.length; head++) {
      const at = queue[head];
      for (let e = first[at]; e < first[at + 1]; e++) {
        const l = incident[e];
        const other = from[l] === at ? to[l] : from[l];
        if (!reached[other] && !shut?.[l]) attach(other, l, at);
      }
    }
  };
  spread();
  while (count < size) {
    let best = -1;
    for (let l = 0; l < from.length; l++) {
      if (reached[from[l]] === reached[to[l]]) continue;
      if (best < 0) best = l;
      // 2 marks a closed valve, which no flow opens.
      if (shut?.[l] !== 2 && reached[from[l]]) {
        best = l;
        break;
      }
    }
    if (best < 0) break;
    const at = reached[from[best]] ? from[best] : to[best];
    attach(at === from[best] ? to[best] : from[best], best, at);
    spread();
  }
  // Leaves first: reverse the order of discovery.
  return {
    junction: junction.subarray(0, count).reverse(),
    link: link.subarray(0, count).reverse(),
    parent: parent.subarray(0, count).reverse(),
  };
}

/** Corrects the flows of the forest's links so that every junction balances to rounding: from the leaves inward, what is
 *  left over at a junction is passed on toward the known heads. Rounding is all it ever moves once the solver has balanced. */
export function balanceFlows(
  forest: SpanningForest,
  from: Int32Array,
  to: Int32Array,
  demand: Float64Array,
  flow: Float64Array,
  surplus: Float64Array,
): void {
  const size = demand.length;
  for (let j = 0; j < size; j++) surplus[j] = -demand[j];
  for (let l = 0; l < from.length; l++) {
    if (from[l] < size) surplus[from[l]] -= flow[l];
    if (to[l] < size) surplus[to[l]] += flow[l];
  }
  for (let s = 0; s < forest.junction.length; s++) {
    const j = forest.junction[s];
    const extra = surplus[j];
    if (extra === 0) continue;
    const l = forest.link[s];
    if (to[l] === j) flow[l] -= extra;
    else flow[l] += extra;
    const p = forest.parent[s];
    if (p >= 0) surplus[p] += extra;
  }
}
