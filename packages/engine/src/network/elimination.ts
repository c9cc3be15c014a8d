/** Sparse solution of the nodal equations by star-mesh elimination.
 *
 *  The matrix is a weighted graph: w(i,j) is the conductance between two junctions, e(i) that from junction i to known heads.
 *  Removing junction k replaces its star by a mesh: w(i,j) += w(i,k) w(k,j) / d(k), e(i) += w(i,k) e(k) / d(k), with
 *  d(k) = e(k) + sum of its w. This is Cholesky without a single subtraction, so conductances may differ by any ratio
 *  (a closed valve next to a wide socket) without losing figures. Order and pattern depend on topology alone and are worked out
 *  once. Junctions are numbered in the order of their removal, so all is read from front to back:
 *
 *    values   e(0) .. e(size-1) | w of junction 0 to its later neighbours | w of junction 1 ... */
export interface Elimination {
  readonly size: number;
  /** Removal order: order[s] is the number, before renumbering, of junction s. */
  readonly order: Int32Array;
  /** Entries of junction s: start[s] .. start[s+1]-1 of `neighbour`, and of `values` after the first `size`. */
  readonly start: Int32Array;
  readonly neighbour: Int32Array;
  /** Places in `values` that receive the mesh, one for each pair of neighbours, in order of the double loop i < j. */
  readonly meshTarget: Int32Array;
  /** Length of `values`; the last place takes what links between known heads add, and is never read. */
  readonly length: number;
  /** Place in `values` of the conductance of each link. */
  readonly linkTarget: Int32Array;
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
  const rank = new Int32Array(size);
  const start = new Int32Array(size + 1);
  const rows: [neighbour: number, slot: number][][] = [];
  const queue = new DegreeQueue(adjacent.map((edges) => edges.size));
  for (let s = 0; s < size; s++) {
    const k = queue.takeLowest();
    order[s] = k;
    rank[k] = s;
    const edges = [...adjacent[k]];
    rows.push(edges);
    for (const [i] of edges) adjacent[i].delete(k);
    for (let a = 0; a < edges.length; a++)
      for (let b = a + 1; b < edges.length; b++) slotBetween(edges[a][0], edges[b][0]);
    for (const [i] of edges) queue.update(i, adjacent[i].size);
    start[s + 1] = start[s] + edges.length;
  }
  const neighbour = new Int32Array(slots);
  /** Place of each slot in `values`: slots of one junction side by side, in order of removal. */
  const place = new Int32Array(slots);
  rows.forEach((edges, s) => {
    if (edges.length > 1) edges.sort((one, other) => rank[one[0]] - rank[other[0]]);
    edges.forEach(([i, slot], a) => {
      neighbour[start[s] + a] = rank[i];
      place[slot] = size + start[s] + a;
    });
  });
  const nowhere = size + slots;
  const linkTarget = new Int32Array(from.length);
  for (let l = 0; l < from.length; l++) {
    if (linkSlot[l] >= 0) linkTarget[l] = place[linkSlot[l]];
    else if (from[l] < size) linkTarget[l] = rank[from[l]];
    else linkTarget[l] = to[l] < size ? rank[to[l]] : nowhere;
  }
  return {
    size,
    order,
    start,
    neighbour,
    meshTarget: planMesh(size, start, neighbour),
    length: nowhere + 1,
    linkTarget,
  };
}

/** Neighbours of a junction stand in order of removal, as do those of each neighbour: the mesh is found by walking both. */
function planMesh(size: number, start: Int32Array, neighbour: Int32Array): Int32Array {
  const meshTarget: number[] = [];
  for (let s = 0; s < size; s++)
    for (let a = start[s]; a < start[s + 1]; a++) {
      let at = start[neighbour[a]];
      for (let b = a + 1; b < start[s + 1]; b++) {
        while (neighbour[at] !== neighbour[b]) at++;
        meshTarget.push(size + at);
      }
    }
  return Int32Array.from(meshTarget);
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

/** Eliminates in place: `values` [m2/s] come in as conductances; behind e(k) stay the shares w(i,k)/d(k), and `inverse`
 *  takes 1/d(k) [s/m2]. */
export function factorise(plan: Elimination, values: Float64Array, inverse: Float64Array): void {
  const { size, start, neighbour, meshTarget } = plan;
  let mesh = 0;
  let begin = size;
  for (let k = 0; k < size; k++) {
    const end = size + start[k + 1];
    const excess = values[k];
    let d = excess;
    for (let a = begin; a < end; a++) d += values[a];
    const share = 1 / d;
    inverse[k] = share;
    for (let a = begin; a < end; a++) {
      const ratio = values[a] * share;
      values[neighbour[a - size]] += ratio * excess;
      for (let b = a + 1; b < end; b++) values[meshTarget[mesh++]] += ratio * values[b];
      values[a] = ratio;
    }
    begin = end;
  }
}

/** Solves for one right-hand side [m3/s, one per junction], which becomes the solution [m]. */
export function substitute(plan: Elimination, values: Float64Array, inverse: Float64Array, rhs: Float64Array): void {
  const { size, start, neighbour } = plan;
  let a = 0;
  for (let k = 0; k < size; k++) {
    const end = start[k + 1];
    const b = rhs[k];
    for (; a < end; a++) rhs[neighbour[a]] += values[size + a] * b;
  }
  for (let k = size - 1; k >= 0; k--) {
    let sum = rhs[k] * inverse[k];
    for (a = start[k + 1] - 1; a >= start[k]; a--) sum += values[size + a] * rhs[neighbour[a]];
    rhs[k] = sum;
  }
}
