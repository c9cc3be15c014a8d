import type { OdeSystem } from "./odeTypes.ts";

/** Writes df/dy by one-sided differences into out, row-major: column j from a step of 1.5e-8 of the component, at least a hundredth
 *  of its absolute tolerance, towards where the component is moving, so that a kink just behind does no harm.
 *  system   y [n] (moved and put back)   f0 = f(y)   absoluteTolerance [n]   work [n]   out [n * n]
 *  Accuracy: about 1e-8 relative to f / y, which suffices for the order of the method. */
export function differenceJacobian(
  system: OdeSystem,
  y: Float64Array,
  f0: Float64Array,
  absoluteTolerance: Float64Array,
  work: Float64Array,
  out: Float64Array,
): void {
  const n = system.size;
  for (let j = 0; j < n; j++) {
    const kept = y[j];
    const length = Math.max(1.5e-8 * Math.abs(kept), 0.01 * absoluteTolerance[j]);
    y[j] = f0[j] < 0 ? kept - length : kept + length;
    // The step that was really taken, after rounding.
    const inverse = 1 / (y[j] - kept);
    system.derivative(y, work);
    y[j] = kept;
    for (let i = 0; i < n; i++) out[i * n + j] = (work[i] - f0[i]) * inverse;
  }
}
