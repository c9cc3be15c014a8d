/** Largest x with spare(x) >= 0, and whether all of the range has it. */
export interface HighestSolution {
  readonly at: number;
  readonly always: boolean;
}

/** A place where the function is known, and about how it falls there. */
export interface KnownPoint {
  readonly x: number;
  readonly spare: number;
  /** d spare / dx, below 0. */
  readonly slope: number;
}

/** Returns the largest x in [low, high] at which a falling function is still zero or more, by secants kept between what is known to be
 *  enough and too much; undefined where it is below zero already at `low`.
 *  spare falling function   low, high [same unit as x]   known a point of it   precision of x   -> HighestSolution or undefined
 *  Findings: none. Throws: never.
 *  Valid: continuous, falling functions; each call may be dear, so a nearly straight one takes three or four.
 *  Source: secant method with bisection as its guard, as in R. P. Brent, Algorithms for Minimization without Derivatives (1973). */
export function highestSolution(
  spare: (x: number) => number,
  low: number,
  high: number,
  known: KnownPoint,
  precision = 1e-4,
): HighestSolution | undefined {
  let { x, slope } = known;
  let f = known.spare;
  // Enough at a, too much at b; not known yet where they are undefined.
  let a = f >= 0 && x >= low ? x : undefined;
  let b = f < 0 && x <= high ? x : undefined;
  for (let i = 0; i < 60; i++) {
    if (a !== undefined && b !== undefined && b - a <= precision) break;
    let next = x - f / slope;
    // A little beyond, so that the answer soon lies between two points.
    next += (f >= 0 ? 0.3 : -0.3) * precision;
    if (a !== undefined && b !== undefined && !(next > a && next < b)) next = 0.5 * (a + b);
    next = Math.min(high, Math.max(low, next));
    const value = spare(next);
    if (next === high && value >= 0) return { at: high, always: true };
    if (next === low && value < 0) return undefined;
    const secant = (value - f) / (next - x);
    if (secant < 0 && Number.isFinite(secant)) slope = secant;
    x = next;
    f = value;
    if (value >= 0) a = next;
    else b = next;
  }
  return { at: a ?? low, always: false };
}
