/** Largest x with spare(x) >= 0, and whether all of the range has it. */
export interface HighestSolution {
  readonly at: number;
  readonly always: boolean;
}

/** Returns the largest x in [low, high] at which a falling function is still zero or more, by regula falsi (Illinois); undefined
 *  where it is below zero already at `low`.
 *  spare falling function   low, high [same unit as x]   precision of x   -> HighestSolution or undefined
 *  Findings: none. Throws: never.
 *  Valid: continuous, falling functions; each call may be dear.
 *  Source: M. Dowell and P. Jarratt, A modified regula falsi method, BIT 11 (1971) 168-174. */
export function highestSolution(
  spare: (x: number) => number,
  low: number,
  high: number,
  precision = 1e-4,
): HighestSolution | undefined {
  let a = low;
  let fa = spare(a);
  if (!(fa >= 0)) return undefined;
  let b = high;
  let fb = b > a ? spare(b) : fa;
  if (fb >= 0) return { at: Math.max(low, high), always: true };
  let side = 0;
  for (let i = 0; i < 60 && b - a > precision; i++) {
    let x = (a * fb - b * fa) / (fb - fa);
    if (!(x > a + 0.01 * precision && x < b - 0.01 * precision)) x = 0.5 * (a + b);
    const f = spare(x);
    if (f >= 0) {
      a = x;
      fa = f;
      if (side === 1) fb /= 2;
      side = 1;
      // As good as on it.
      if (f < 0.1 * precision) break;
    } else {
      b = x;
      fb = f;
      if (side === -1) fa /= 2;
      side = -1;
    }
  }
  return { at: a, always: false };
}
