/** Anderson mixing of a fixed-point search x = G(x): differences of the last few rounds, from which the next x is extrapolated. For a
 *  linear G it is GMRES, so it also ends where plain repetition would run away. */
export interface Mixing {
  readonly length: number;
  /** Differences of errors F = G - x and of values G, newest at (count - 1) % depth. */
  readonly errors: readonly Float64Array[];
  readonly values: readonly Float64Array[];
  readonly lastError: Float64Array;
  readonly lastValue: Float64Array;
  readonly normal: Float64Array;
  readonly share: Float64Array;
  count: number;
}

const depth = 6;

/** Room for vectors of a length. */
export function newMixing(length: number): Mixing {
  const rows = () => Array.from({ length: depth }, () => new Float64Array(length));
  return {
    length,
    errors: rows(),
    values: rows(),
    lastError: new Float64Array(length),
    lastValue: new Float64Array(length),
    normal: new Float64Array(depth * depth),
    share: new Float64Array(depth),
    count: -1,
  };
}

/** Begins a new search. */
export function restart(mixing: Mixing): void {
  mixing.count = -1;
}

/** Replaces `value` = G(x) by the next x to try, given the x it was reckoned at: G - sum of share * (differences of G), with the shares
 *  that make the error's own combination smallest. */
export function mix(mixing: Mixing, x: Float64Array, value: Float64Array): void {
  const { length, errors, values, lastError, lastValue, share } = mixing;
  const slot = Math.max(0, mixing.count) % depth;
  for (let i = 0; i < length; i++) {
    const g = value[i];
    const error = g - x[i];
    if (mixing.count >= 0) {
      errors[slot][i] = error - lastError[i];
      values[slot][i] = g - lastValue[i];
    }
    lastError[i] = error;
    lastValue[i] = g;
  }
  mixing.count++;
  const known = Math.min(depth, mixing.count);
  if (known === 0) return;
  leastSquares(mixing, known);
  for (let k = 0; k < known; k++) {
    const part = share[k];
    const row = values[k];
    for (let i = 0; i < length; i++) value[i] -= part * row[i];
  }
}

/** Shares from the normal equations, eliminated symmetrically; a difference that adds nothing new gets no share. */
function leastSquares({ length, errors, lastError, normal, share }: Mixing, known: number): void {
  for (let a = 0; a < known; a++) {
    for (let b = a; b < known; b++) {
      let sum = 0;
      for (let i = 0; i < length; i++) sum += errors[a][i] * errors[b][i];
      normal[a * depth + b] = sum;
    }
    let sum = 0;
    for (let i = 0; i < length; i++) sum += errors[a][i] * lastError[i];
    share[a] = sum;
  }
  for (let a = 0; a < known; a++) {
    const own = errors[a];
    let size = 0;
    for (let i = 0; i < length; i++) size += own[i] * own[i];
    const pivot = normal[a * depth + a];
    const useful = pivot > 1e-12 * size && pivot > 0;
    normal[a * depth + a] = useful ? pivot : 0;
    if (!useful) continue;
    for (let b = a + 1; b < known; b++) {
      const ratio = normal[a * depth + b] / pivot;
      for (let c = b; c < known; c++) normal[b * depth + c] -= ratio * normal[a * depth + c];
      share[b] -= ratio * share[a];
    }
  }
  for (let a = known - 1; a >= 0; a--) {
    const pivot = normal[a * depth + a];
    let sum = share[a];
    for (let b = a + 1; b < known; b++) sum -= normal[a * depth + b] * share[b];
    share[a] = pivot > 0 ? sum / pivot : 0;
  }
}
