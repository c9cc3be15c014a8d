/** Sparse solution of the nodal equations by star-mesh elimination.
 *
 *  The matrix is a weighted graph: w(i,j) is the conductance between two junctions, e(i) that from junction i to known heads.
 *  Removing junction k replaces its star by a mesh: w(i,j) += w(i,k) w(k,j) / d(k), e(i) += w(i,k) e(k) / d(k), with
 *  d(k) = e(k) + sum of its w. This is Cholesky without a single subtraction, so conductances may differ by any ratio
 *  (a closed valve next to a wide socket) without losing figures. The order and the pattern depend on topology alone and
 *  are worked out once, as a flat list of operations. */
export interface Elimination {
  readonly size: number;
  /** Junctions in the order of their removal. */
  readonly order: Int32Array;
  /** Neighbours of order[s] at its removal: entries start[s] .. start[s+1]-1, each a junction and the slot of its weight. */
  readonly start: Int32Array;
  readonly neighbour: Int32Array;
  readonly slot: Int32Array;
  /** Slots that receive the mesh, one for each pair of neighbours, in order of the double loop i < j. */
  readonly meshTarget: Int32Array;
  readonly slots: number;
  /** Slot of the weight between the two junction ends of a link; -1 where an end is a known head. */
  readonly linkSlot: Int32Array;
}

/** Works out order and pattern: minimum degree, which keeps the mesh small on the nearly tree-like networks of plumbing. */
export function planElimination(size: number, from: Int32Array, to: Int32Array): Elimination {
  const adjacent: Map<number, number>[] = Array.from({ length: size }, () => new Map());
  let slots = 0;
  const slotBetween = (i: number, j: number): number => {
    const known = adjacent[i].get(j);
    if (known !== undefined) return known;
    adjacent[i].set(j, slots);
    adjacent[j].set(i, slots);
    return slots++;
  };
  const linkSlot = new Int32Array(from.length).fill(-1);
  for (let link = 0; link < from.length; link++)
    if (from[link] < size && to[link] < size) linkSlot[link] = slotBetween(from[link], to[link]);

  const order = new Int32Array(size);
  const start = new Int32Array(size + 1);
  const neighbour: number[] = [];
  const slot: number[] = [];
  const meshTarget: number[] = [];
  const queue = new DegreeQueue(adjacent.map((edges) => edges.size));
  for (let s = 0; s < size; s++) {
    const k = queue.takeLowest();
    order[s] = k;
    const edges = [...adjacent[k]];
    for (const [i] of edges) adjacent[i].delete(k);
    for (let a = 0; a < edges.length; a++) {
      neighbour.push(edges[a][0]);
      slot.push(edges[a][1]);
      for (let b = a + 1; b < edges.length; b++) meshTarget.push(slotBetween(edges[a][0], edges[b][0]));
    }
    for (const [i] of edges) queue.update(i, adjacent[i].size);
    start[s + 1] = neighbour.length;
  }
  return {
    size,
    order,
    start,
    neighbour: Int32Array.from(neighbour),
    slot: Int32Array.from(slot),
    meshTarget: Int32Array.from(meshTarget),
    slots,
    linkSlot,
  };
}

/** Buckets of nodes by degree; stale entries are skipped when they come up. */
class DegreeQueue {
  readonly #buckets: number[][] = [];
  readonly #degree: number[];
  readonly #done: boolean[];
  #lowest = 0;

  constructor(degree: number[]) {
    this.#degree = degree;
    this.#done = degree.map(() => false);
    // Backwards, so that nodes of equal degree come out in their own order.
    for (let i = degree.length - 1; i >= 0; i--) this.#push(i, degree[i]);
  }

  #push(i: number, degree: number): void {
    while (this.#buckets.length <= degree) this.#buckets.push([]);
    this.#buckets[degree].push(i);
    if (degree < this.#lowest) this.#lowest = degree;
  }

  update(i: number, degree: number): void {
    if (this.#degree[i] === degree) return;
    this.#degree[i] = degree;
    this.#push(i, degree);
  }

  takeLowest(): number {
    for (;;) {
      const bucket = this.#buckets[this.#lowest];
      const i = bucket.pop();
      if (i === undefined) this.#lowest++;
      else if (!this.#done[i] && this.#degree[i] === this.#lowest) {
        this.#done[i] = true;
        return i;
      }
    }
  }
}

/** Solves the nodal equations in place. weight [one per slot] and excess [one per junction] are conductances [m2/s] and
 *  are used up; rhs [m3/s, one per junction] becomes the solution [m]. */
export function eliminate(
  plan: Elimination,
  weight: Float64Array,
  excess: Float64Array,
  rhs: Float64Array,
  diagonal: Float64Array,
): void {
  const { size, order, start, neighbour, slot, meshTarget } = plan;
  let mesh = 0;
  for (let s = 0; s < size; s++) {
    const k = order[s];
    const begin = start[s];
    const end = start[s + 1];
    let d = excess[k];
    for (let a = begin; a < end; a++) d += weight[slot[a]];
    diagonal[s] = d;
    const scaledExcess = excess[k] / d;
    const scaledRhs = rhs[k] / d;
    for (let a = begin; a < end; a++) {
      const w = weight[slot[a]];
      const i = neighbour[a];
      excess[i] += w * scaledExcess;
      rhs[i] += w * scaledRhs;
      const ratio = w / d;
      for (let b = a + 1; b < end; b++) weight[meshTarget[mesh++]] += ratio * weight[slot[b]];
    }
  }
  for (let s = size - 1; s >= 0; s--) {
    const k = order[s];
    let sum = rhs[k];
    for (let a = start[s]; a < start[s + 1]; a++) sum += weight[slot[a]] * rhs[neighbour[a]];
    rhs[k] = sum / diagonal[s];
  }
}
