/** A curve made of cubic pieces that passes through every point and never overshoots between two of them.
 *  `x` holds the n knots; piece i is value(t) = y[i] + t (b[i] + t (c[i] + t d[i])) with t = x - x[i].
 *  Units are those of the points. */
export interface MonotoneCubic {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly b: Float64Array;
  readonly c: Float64Array;
  readonly d: Float64Array;
  /** Slope at the last knot, with which the curve goes on beyond it. */
  readonly endSlope: number;
}

/** Returns the shape-preserving cubic through points with rising x: inner slopes are the weighted harmonic mean of the
 *  two neighbouring secants where these agree in sign, else zero, so a falling table gives a falling curve.
 *  x [any, n >= 2, strictly rising]   y [any, n]   -> MonotoneCubic
 *  Findings: none. Throws: RangeError if there are fewer than two points or x does not rise.
 *  Valid: any data; monotone where the data are; continuous first derivative.
 *  Source: F. N. Fritsch and J. Butland, A method for constructing local monotone piecewise cubic interpolants,
 *  SIAM J. Sci. Stat. Comput. 5 (1984) 300-304; end slopes after C. Moler, Numerical Computing with MATLAB (2004) section 3.6.
 *  Example: evaluateMonotoneCubic(monotoneCubic([0, 1, 2], [4, 3, 0]), 1)  ->  3 */
export function monotoneCubic(x: ArrayLike<number>, y: ArrayLike<number>): MonotoneCubic {
  const n = x.length;
  if (n < 2 || y.length !== n) throw new RangeError("a monotone cubic needs at least two points, with as many y as x");
  const h = new Float64Array(n - 1);
  const secant = new Float64Array(n - 1);
  for (let i = 0; i < n - 1; i++) {
    h[i] = x[i + 1] - x[i];
    if (!(h[i] > 0)) throw new RangeError(`x must rise: x[${i + 1}] = ${x[i + 1]} follows x[${i}] = ${x[i]}`);
    secant[i] = (y[i + 1] - y[i]) / h[i];
  }
  const slope = knotSlopes(h, secant);
  const b = new Float64Array(n - 1);
  const c = new Float64Array(n - 1);
  const d = new Float64Array(n - 1);
  for (let i = 0; i < n - 1; i++) {
    b[i] = slope[i];
    c[i] = (3 * secant[i] - 2 * slope[i] - slope[i + 1]) / h[i];
    d[i] = (slope[i] + slope[i + 1] - 2 * secant[i]) / (h[i] * h[i]);
  }
  return { x: Float64Array.from(x), y: Float64Array.from(y), b, c, d, endSlope: slope[n - 1] };
}

function knotSlopes(h: Float64Array, secant: Float64Array): Float64Array {
  const n = h.length + 1;
  const slope = new Float64Array(n);
  if (n === 2) return slope.fill(secant[0]);
  for (let i = 1; i < n - 1; i++) {
    if (secant[i - 1] * secant[i] <= 0) continue;
    const w1 = 2 * h[i] + h[i - 1];
    const w2 = h[i] + 2 * h[i - 1];
    slope[i] = (w1 + w2) / (w1 / secant[i - 1] + w2 / secant[i]);
  }
  slope[0] = endSlope(h[0], h[1], secant[0], secant[1]);
  slope[n - 1] = endSlope(h[n - 2], h[n - 3], secant[n - 2], secant[n - 3]);
  return slope;
}

/** Three-point end slope, limited so that the last piece stays monotone. */
function endSlope(h0: number, h1: number, secant0: number, secant1: number): number {
  const slope = ((2 * h0 + h1) * secant0 - h0 * secant1) / (h0 + h1);
  if (slope * secant0 <= 0) return 0;
  return Math.abs(slope) > 3 * Math.abs(secant0) ? 3 * secant0 : slope;
}

/** Index of the piece that holds x: the last i with knots[i] <= x, within 0 .. n-2. */
function pieceAt(knots: Float64Array, x: number): number {
  let low = 0;
  let high = knots.length - 2;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (knots[middle] <= x) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Returns the value of a monotone cubic at x; outside the knots it goes on straight with the slope at the end.
 *  curve MonotoneCubic   x [unit of its knots]   -> value [unit of its y]
 *  Findings: none. Throws: never.
 *  Valid: any x; outside the knots it is an extrapolation, which the caller has to say.
 *  Source: piecewise polynomial, by definition.
 *  Example: evaluateMonotoneCubic(monotoneCubic([0, 1], [2, 1]), 0.5)  ->  1.5 */
export function evaluateMonotoneCubic(curve: MonotoneCubic, x: number): number {
  const last = curve.x.length - 1;
  if (x >= curve.x[last]) return curve.y[last] + curve.endSlope * (x - curve.x[last]);
  if (x <= curve.x[0]) return curve.y[0] + curve.b[0] * (x - curve.x[0]);
  const i = pieceAt(curve.x, x);
  const t = x - curve.x[i];
  return curve.y[i] + t * (curve.b[i] + t * (curve.c[i] + t * curve.d[i]));
}

/** Returns the slope dy/dx of a monotone cubic at x, constant outside the knots.
 *  curve MonotoneCubic   x [unit of its knots]   -> slope [unit of y per unit of x]
 *  Findings: none. Throws: never.
 *  Valid: any x.
 *  Source: derivative of the piecewise polynomial.
 *  Example: slopeOfMonotoneCubic(monotoneCubic([0, 1], [2, 1]), 0.5)  ->  -1 */
export function slopeOfMonotoneCubic(curve: MonotoneCubic, x: number): number {
  const last = curve.x.length - 1;
  if (x >= curve.x[last]) return curve.endSlope;
  if (x <= curve.x[0]) return curve.b[0];
  const i = pieceAt(curve.x, x);
  const t = x - curve.x[i];
  return curve.b[i] + t * (2 * curve.c[i] + t * 3 * curve.d[i]);
}
