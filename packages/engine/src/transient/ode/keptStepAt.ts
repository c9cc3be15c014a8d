import { interpolate } from "./interpolate.ts";
import type { KeptStep } from "./odeTypes.ts";

/** Writes the state within a step into out: y(t0 + s h) = (1 - s) y0 + s (y1 + (1 - s) (d2 + s d3)), exact at both ends, of third
 *  order between, and true to every sum that the step keeps.
 *  step KeptStep of n components   t [s], t0 to t1   out [n]
 *  Findings: none. Throws: never.
 *  Valid: inside the step; outside it is an extrapolation. Error of the order of the tolerance of the run.
 *  Source: E. Hairer, G. Wanner, Solving Ordinary Differential Equations II, 2nd ed. 1996, section IV.7, dense output of RODAS.
 *  Example: ((out) => (keptStepAt({ t0: 0, t1: 2, span: 2, coefficients: new Float64Array([1, 3, 0, 0]) }, 0.5, out), out[0]))(new Float64Array(1))  ->  1.5 */
export function keptStepAt(step: KeptStep, t: number, out: Float64Array): void {
  interpolate(step.coefficients, (t - step.t0) / step.span, out);
}
