import { luFactor, luSolve } from "./denseLu.ts";
import { differenceJacobian } from "./differenceJacobian.ts";
import { eventWatch } from "./eventWatch.ts";
import { interpolate } from "./interpolate.ts";
import type { KeptStep, Ode, OdeEvents, OdeOptions, OdeResult, OdeStep, OdeSystem } from "./odeTypes.ts";
import { couplingWeights, denseWeights2, denseWeights3, gamma, stages, stageWeights } from "./rodasCoefficients.ts";

/** Rejections in a row after which there is no hope: each cuts the step to a fifth or less, or to a quarter after a number that is
 *  not finite. */
const hopeless = 60;

/** Returns an integrator for y' = f(y) that takes stiff systems in its stride: six Rosenbrock stages of RODAS, order 4, L-stable,
 *  (I - h gamma J) k_i = h gamma (f(y + sum a_ij k_j) + sum c_ij k_j / h), one Jacobian and one factoring per step.
 *  system OdeSystem   -> Ode, whose run(t0 [s], y [n, in and out], tEnd [s], options, events, onStep) gives an OdeResult.
 *  Each step's error, estimated by the embedded method of order 3, is kept below absoluteTolerance + relativeTolerance |y| in every
 *  component. A run stops at the first event: found on the dense output to 1e-10 of the step (1e-9 s where that is more), y set
 *  just past the crossing. A value that is zero at the start has no side until it has left zero, so an event does not fire twice;
 *  one on the far side at the start fires only after it has been back. Of several in one step the earliest wins. Two crossings of
 *  one event inside one step can hide each other: bound the step by largestStep where that matters.
 *  Sums that f keeps are kept: to rounding with an exact Jacobian or where `invariants` names them, else to the 1e-8 of the differences.
 *  Allocates here, once for each run, and in keep(); not from step to step. One run at a time.
 *  Findings: none. Throws: RangeError when y or absoluteTolerance has another size than the system. A derivative that is not finite
 *  shortens the step; where that does not help the status is "stepTooSmall".
 *  Valid: dense systems of up to about 30 components, time running forwards; f should be smooth between events (kinks cost steps,
 *  not accuracy). Global error is usually within ten times the tolerance; dense output is of order 3.
 *  Source: E. Hairer, G. Wanner, Solving Ordinary Differential Equations II: Stiff and Differential-Algebraic Problems, 2nd ed.
 *  1996, section IV.7 (method), IV.8 (predictive step control after Gustafsson).
 *  Example: ((y) => (createOde({ size: 1, derivative: (y, out) => { out[0] = -y[0]; } }).run(0, y, 1, { relativeTolerance: 1e-8, absoluteTolerance: new Float64Array([1e-8]), maximumSteps: 1000 }), y[0]))(new Float64Array([1]))  ->  0.367879 */
export function createOde(system: OdeSystem): Ode {
  const n = system.size;
  const k = new Float64Array(stages * n);
  const f0 = new Float64Array(n);
  const stage = new Float64Array(n);
  const slope = new Float64Array(n);
  const jacobian = new Float64Array(n * n);
  const matrix = new Float64Array(n * n);
  const pivots = new Int32Array(n);
  // State at the start, at the end, and the two corrections of the dense output: what a kept step copies.
  const coefficients = new Float64Array(4 * n);
  const y1 = coefficients.subarray(n, 2 * n);
  const invariants = system.invariants ?? [];
  const heaviest = new Int32Array(invariants.length);

  let evaluations = 0;
  const derivative = (y: Float64Array, out: Float64Array): void => {
    evaluations++;
    system.derivative(y, out);
  };

  const evaluateJacobian = (y: Float64Array, absoluteTolerance: Float64Array): void => {
    if (system.jacobian) system.jacobian(y, f0, jacobian);
    else {
      differenceJacobian(system, y, f0, absoluteTolerance, slope, jacobian);
      evaluations += n;
    }
  };

  /** Where each invariant sum weighs most: its rounding goes there. */
  const findHeaviest = (y: Float64Array): void => {
    for (let v = 0; v < invariants.length; v++) {
      const weights = invariants[v];
      let best = 0;
      for (let i = 1; i < n; i++) {
        if (weights[best] === 0 || Math.abs(weights[i] * y[i]) > Math.abs(weights[best] * y[best])) best = i;
      }
      heaviest[v] = weights[best] === 0 ? -1 : best;
    }
  };

  /** Takes from k_s what the solve or a rough Jacobian added to an invariant sum. */
  const keepInvariants = (start: number): void => {
    for (let v = 0; v < invariants.length; v++) {
      const weights = invariants[v];
      let sum = 0;
      for (let i = 0; i < n; i++) sum += weights[i] * k[start + i];
      const at = heaviest[v];
      if (at >= 0) k[start + at] -= sum / weights[at];
    }
  };

  /** Fills k and y1 for a step of length h; false where it cannot be done. */
  const tryStep = (y: Float64Array, h: number): boolean => {
    const scale = h * gamma;
    for (let i = 0; i < n * n; i++) matrix[i] = -scale * jacobian[i];
    for (let i = 0; i < n; i++) matrix[i * n + i] += 1;
    if (!luFactor(matrix, pivots, n)) return false;
    for (let s = 0; s < stages; s++) {
      const start = s * n;
      if (s > 0) {
        stage.set(y);
        for (let j = 0; j < s; j++) {
          const weight = stageWeights[s * 5 + j];
          for (let i = 0; i < n; i++) stage[i] += weight * k[j * n + i];
        }
        derivative(stage, slope);
      }
      const f = s === 0 ? f0 : slope;
      for (let i = 0; i < n; i++) k[start + i] = scale * f[i];
      for (let j = 0; j < s; j++) {
        const weight = gamma * couplingWeights[s * 5 + j];
        for (let i = 0; i < n; i++) k[start + i] += weight * k[j * n + i];
      }
      luSolve(matrix, pivots, n, k, start);
      keepInvariants(start);
    }
    let check = 0;
    for (let i = 0; i < n; i++) {
      y1[i] = stage[i] + k[5 * n + i];
      check += y1[i] - y1[i];
    }
    return check === 0;
  };

  /** Largest error over its allowance; 1 is just good enough. */
  const errorOf = (y: Float64Array, options: OdeOptions): number => {
    const { relativeTolerance, absoluteTolerance } = options;
    let worst = 0;
    for (let i = 0; i < n; i++) {
      const allowance = absoluteTolerance[i] + relativeTolerance * Math.max(Math.abs(y[i]), Math.abs(y1[i]));
      worst = Math.max(worst, Math.abs(k[5 * n + i]) / allowance);
    }
    return worst;
  };

  /** Puts f(y1) in `slope`. A step may not end where that is no number: it is as bad as meeting one on the way. */
  const endsWell = (): boolean => {
    derivative(y1, slope);
    return allFinite(slope);
  };

  const fillDense = (y: Float64Array): void => {
    for (let i = 0; i < n; i++) {
      let second = 0;
      let third = 0;
      for (let j = 0; j < 5; j++) {
        second += denseWeights2[j] * k[j * n + i];
        third += denseWeights3[j] * k[j * n + i];
      }
      coefficients[i] = y[i];
      coefficients[2 * n + i] = second;
      coefficients[3 * n + i] = third;
    }
  };

  /** A first step over which y moves by at most a hundredth of itself or its slope's change by at most ten tolerances. */
  const firstStep = (y: Float64Array, options: OdeOptions): number => {
    const { relativeTolerance, absoluteTolerance } = options;
    let size = 0;
    let speed = 0;
    let bend = 0;
    for (let i = 0; i < n; i++) {
      const allowance = absoluteTolerance[i] + relativeTolerance * Math.abs(y[i]);
      // The system does not name the time, so y'' = J f.
      let second = 0;
      for (let j = 0; j < n; j++) second += jacobian[i * n + j] * f0[j];
      size = Math.max(size, Math.abs(y[i]) / allowance);
      speed = Math.max(speed, Math.abs(f0[i]) / allowance);
      bend = Math.max(bend, Math.abs(second) / allowance);
    }
    const bySpeed = speed > 0 ? Math.max(1, 0.01 * size) / speed : Number.POSITIVE_INFINITY;
    const byBend = bend > 0 ? Math.sqrt(20 / bend) : Number.POSITIVE_INFINITY;
    return Math.min(Math.max(bySpeed, byBend), 100 * bySpeed);
  };

  // The step that onStep sees: one object, filled anew.
  let span = 0;
  const seen = {
    t0: 0,
    t1: 0,
    at(t: number, out: Float64Array): void {
      interpolate(coefficients, (t - seen.t0) / span, out);
    },
    keep(): KeptStep {
      return { t0: seen.t0, t1: seen.t1, span, coefficients: coefficients.slice() };
    },
  };

  const run = (
    t0: number,
    y: Float64Array,
    tEnd: number,
    options: OdeOptions,
    events?: OdeEvents,
    onStep?: (step: OdeStep) => void,
  ): OdeResult => {
    if (y.length !== n || options.absoluteTolerance.length !== n)
      throw new RangeError(
        `the state and its absolute tolerances must have ${n} components, one for each of the system`,
      );
    evaluations = 0;
    let t = t0;
    let steps = 0;
    let rejected = 0;
    let inRow = 0;
    let lastStep = 0;
    let lastError = 0;
    const largest = options.largestStep ?? Number.POSITIVE_INFINITY;
    const watch = events && events.count > 0 ? eventWatch(events, n) : undefined;
    let h = 0;
    const result = (status: OdeResult["status"], event = -1, together: readonly number[] = []): OdeResult => {
      return { status, t, event, events: together, steps, rejected, evaluations, nextStep: h };
    };
    if (!(tEnd > t)) return result("end");
    derivative(y, f0);
    if (!allFinite(f0)) return result("stepTooSmall");
    evaluateJacobian(y, options.absoluteTolerance);
    findHeaviest(y);
    h = Math.min(options.firstStep ?? firstStep(y, options), largest, tEnd - t);
    watch?.start(y);

    for (;;) {
      if (steps + rejected >= options.maximumSteps) return result("stepBudget");
      // Land on the end, and leave no crumb before it.
      const remaining = tEnd - t;
      const last = h * 1.01 >= remaining;
      const length = last ? remaining : h;
      const t1 = last ? tEnd : t + length;
      if (!(t + 0.1 * length > t) || inRow > hopeless) {
        if (!last || inRow > 0) return result("stepTooSmall");
        // Less time is left than the clock can tell apart: an event just before the end leaves that.
        t = tEnd;
        return result("end");
      }

      const error = tryStep(y, length) ? errorOf(y, options) : Number.NaN;
      if (!(error <= 1 && endsWell())) {
        rejected++;
        inRow++;
        // An error that hardly falls with the step belongs to something that settles within a small part of it.
        const most = inRow > 4 ? 0.25 : 1;
        h = length * Math.min(most, error > 1 ? Math.max(0.2, 0.9 / error ** 0.25) : 0.25);
        continue;
      }
      fillDense(y);
      steps++;
      seen.t0 = t;
      seen.t1 = t1;
      span = t1 - t;
      // Predictive control: how this error compares with the last one says where the next is going.
      const plain = clamp(error ** 0.25 / 0.9, 1 / 6, 5);
      const predicted =
        lastStep > 0 ? clamp(((lastStep / length) * (error * error) ** 0.25) / lastError ** 0.25 / 0.9, 1 / 6, 5) : 0;
      let next = length / Math.max(plain, predicted);
      if (inRow > 0) next = Math.min(next, length);
      // A step cut short by the end says nothing against the length that was planned.
      h = Math.min(last && inRow === 0 ? Math.max(h, next) : next, largest);
      lastStep = length;
      lastError = Math.max(0.01, error);
      inRow = 0;

      if (watch) {
        const resolution = Math.max(1e-10, Math.min(0.5, (4 * Number.EPSILON * Math.abs(t1)) / span));
        const share = watch.firstCrossing(coefficients, y1, Math.max(resolution, Math.min(1e-6, 1e-9 / span)));
        if (share >= 0) {
          t = share === 1 ? t1 : t + share * span;
          seen.t1 = t;
          interpolate(coefficients, share, y);
          onStep?.(seen);
          return result("event", watch.found, watch.together.slice());
        }
      }
      onStep?.(seen);
      t = t1;
      y.set(y1);
      if (last) return result("end");
      f0.set(slope);
      evaluateJacobian(y, options.absoluteTolerance);
      findHeaviest(y);
    }
  };
  return { run };
}

function allFinite(values: Float64Array): boolean {
  let check = 0;
  for (let i = 0; i < values.length; i++) check += values[i] - values[i];
  return check === 0;
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}
