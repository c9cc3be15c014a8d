/** Returns the x between low and high where a rising function passes zero, by Brent's method: bisection safeguards secant and
 *  inverse quadratic steps, so it never leaves the bracket and never fails.
 *  f rising and continuous   low, high [unit of x] with f(low) <= 0 <= f(high)   tolerance [unit of x]   -> x
 *  Findings: none. Throws: never; without a sign change the nearer end is returned.
 *  Source: R. P. Brent, Algorithms for Minimization without Derivatives (1973) chapter 4, procedure zero. */
export function bracketedRoot(f: (x: number) => number, low: number, high: number, tolerance: number): number {
  let a = low;
  let b = high;
  let fa = f(a);
  let fb = f(b);
  if (fa >= 0) return a;
  if (fb <= 0) return b;
  let c = a;
  let fc = fa;
  let step = b - a;
  let previousStep = step;
  for (let i = 0; i < 200; i++) {
    // b is the best guess so far, c lies on the other side of the root.
    if (Math.abs(fc) < Math.abs(fb)) {
      a = b;
      b = c;
      c = a;
      fa = fb;
      fb = fc;
      fc = fa;
    }
    const reach = 2 * Number.EPSILON * Math.abs(b) + 0.5 * tolerance;
    const half = 0.5 * (c - b);
    if (Math.abs(half) <= reach || fb === 0) return b;
    if (Math.abs(previousStep) < reach || Math.abs(fa) <= Math.abs(fb)) {
      step = half;
      previousStep = half;
    } else {
      const s = fb / fa;
      let p: number;
      let q: number;
      if (a === c) {
        p = 2 * half * s;
        q = 1 - s;
      } else {
        const r = fb / fc;
        const t = fa / fc;
        p = s * (2 * half * t * (t - r) - (b - a) * (r - 1));
        q = (t - 1) * (r - 1) * (s - 1);
      }
      if (p > 0) q = -q;
      else p = -p;
      const accepted = 2 * p < Math.min(3 * half * q - Math.abs(reach * q), Math.abs(previousStep * q));
      previousStep = accepted ? step : half;
      step = accepted ? p / q : half;
    }
    a = b;
    fa = fb;
    b += Math.abs(step) > reach ? step : half > 0 ? reach : -reach;
    fb = f(b);
    if (fb > 0 === fc > 0) {
      c = a;
      fc = fa;
      step = b - a;
      previousStep = step;
    }
  }
  return b;
}
