/** Writes the state at a share s of a step's span into out: (1 - s) y0 + s (y1 + (1 - s) (d2 + s d3)).
 *  coefficients [4 n]: y0, y1, d2, d3   s [-]   out [n] */
export function interpolate(coefficients: Float64Array, s: number, out: Float64Array): void {
  const n = coefficients.length / 4;
  const rest = 1 - s;
  for (let i = 0; i < n; i++) {
    const bend = coefficients[2 * n + i] + s * coefficients[3 * n + i];
    out[i] = rest * coefficients[i] + s * (coefficients[n + i] + rest * bend);
  }
}
