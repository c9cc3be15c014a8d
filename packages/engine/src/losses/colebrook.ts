/** 2 / ln 10: turns -2 log10 into natural logarithms. */
const c = 2 / Math.LN10;

/** Below this the explicit start is poor and Newton from it may leave the domain of the logarithm. */
const lowestExplicitReynolds = 100;

/** 1/sqrt(f) of Colebrook-White, the root x of x + 2 log10(b + a x) = 0 with a = 2.51/Re, b = e/3.7D.
 *  One explicit start (two logarithms, 0.07 %) and one fourth-order Householder step reach rounding error. */
function colebrookRoot(reynolds: number, relativeRoughness: number): number {
  const a = 2.51 / reynolds;
  const b = relativeRoughness / 3.7;
  if (!(reynolds >= lowestExplicitReynolds) || b > 0.8) return bracketedRoot(a, b);
  // Praks and Brkic 2020: an expansion of the Wright omega function, of which the exact solution is made.
  const reynoldsTerm = Math.log(reynolds) - 0.7794;
  const s = (reynolds * relativeRoughness) / 8.0884 + reynoldsTerm;
  const logarithm = Math.log(s);
  const start = c * (reynoldsTerm - logarithm + logarithm / (s - 0.5588 * logarithm + 1.2079));
  return improved(start, a, b);
}

function improved(x: number, a: number, b: number): number {
  const inner = b + a * x;
  const r = a / inner;
  const w = c * r;
  const F = x + c * Math.log(inner);
  // F' = 1 + w, F'' = -w r, F''' = 2 w r^2.
  const d = 1 + w;
  const curvature = F * w * r;
  return x - (F * (6 * d * d + 3 * curvature)) / (6 * d * d * d + 6 * d * curvature + 2 * F * curvature * r);
}

/** Newton kept inside a bracket; F rises, F(0) = c ln b < 0 where b < 1. */
function bracketedRoot(a: number, b: number): number {
  if (!(b < 1)) return 0;
  let low = 0;
  let high = 40;
  let x = Math.min(1, 1 / a);
  for (let step = 0; step < 200; step++) {
    const inner = b + a * x;
    const F = x + c * Math.log(inner);
    if (F > 0) high = x;
    else low = x;
    let next = x - F / (1 + (c * a) / inner);
    if (!(next > low && next < high)) next = (low + high) / 2;
    if (Math.abs(next - x) <= 1e-16 * next) return next;
    x = next;
  }
  return x;
}

/** Darcy friction factor of turbulent flow, exact root of 1/sqrt f = -2 log10(e/3.7D + 2.51/(Re sqrt f)).
 *  reynolds Re [-], above 0   relativeRoughness e/D [-]   -> Darcy friction factor [-]
 *  Findings: none. Throws: never. From e/D 3.7 on the formula has no root; the result is then Infinity.
 *  Valid: physically Re 4000 to 1e8, e/D 0 to 0.05; residual of the implicit form below 1e-12.
 *  Source: C. F. Colebrook, J. Institution of Civil Engineers 11 (1939) 133-156; start after P. Praks and D. Brkic,
 *  Mathematics 8 (2020) 26.
 *  Example: colebrook(1e5, 1e-3)  ->  0.022175 */
export function colebrook(reynolds: number, relativeRoughness: number): number {
  const x = colebrookRoot(reynolds, relativeRoughness);
  return 1 / (x * x);
}

/** Slope of Colebrook's factor: df/dRe = -2 f w / (Re (1 + w)), w = (2/ln 10) a / (b + a x), from implicit differentiation. */
export function colebrookSlope(reynolds: number, relativeRoughness: number): number {
  const x = colebrookRoot(reynolds, relativeRoughness);
  const a = 2.51 / reynolds;
  const w = (c * a) / (relativeRoughness / 3.7 + a * x);
  return (-2 * w) / (x * x * reynolds * (1 + w));
}
