/** Factors a square matrix in place into L and U with row pivoting (Doolittle, L below the diagonal with ones on it).
 *  matrix row-major [n * n], overwritten   pivots [n], filled with the row that took each place   n rows
 *  -> false where the matrix is singular or holds a number that is not finite
 *  Source: G. H. Golub, C. F. Van Loan, Matrix Computations, 4th ed. 2013, algorithm 3.4.1. */
export function luFactor(matrix: Float64Array, pivots: Int32Array, n: number): boolean {
  for (let column = 0; column < n; column++) {
    let best = column;
    let size = Math.abs(matrix[column * n + column]);
    for (let row = column + 1; row < n; row++) {
      const candidate = Math.abs(matrix[row * n + column]);
      if (candidate > size || Number.isNaN(candidate)) {
        best = row;
        size = candidate;
      }
    }
    if (!(size > 0 && size < Number.POSITIVE_INFINITY)) return false;
    pivots[column] = best;
    if (best !== column) {
      for (let k = 0; k < n; k++) {
        const kept = matrix[column * n + k];
        matrix[column * n + k] = matrix[best * n + k];
        matrix[best * n + k] = kept;
      }
    }
    const inverse = 1 / matrix[column * n + column];
    for (let row = column + 1; row < n; row++) {
      const at = row * n;
      // Vessels touch few others: most factors are zero.
      if (matrix[at + column] === 0) continue;
      const factor = matrix[at + column] * inverse;
      matrix[at + column] = factor;
      for (let k = column + 1; k < n; k++) matrix[at + k] -= factor * matrix[column * n + k];
    }
  }
  return true;
}

/** Solves A x = b with the factors of luFactor; b lies in `vector` from `start` and is overwritten with x. */
export function luSolve(
  factors: Float64Array,
  pivots: Int32Array,
  n: number,
  vector: Float64Array,
  start: number,
): void {
  for (let i = 0; i < n; i++) {
    const pivot = pivots[i];
    if (pivot === i) continue;
    const kept = vector[start + i];
    vector[start + i] = vector[start + pivot];
    vector[start + pivot] = kept;
  }
  for (let i = 1; i < n; i++) {
    let sum = vector[start + i];
    for (let k = 0; k < i; k++) sum -= factors[i * n + k] * vector[start + k];
    vector[start + i] = sum;
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = vector[start + i];
    for (let k = i + 1; k < n; k++) sum -= factors[i * n + k] * vector[start + k];
    vector[start + i] = sum / factors[i * n + i];
  }
}
