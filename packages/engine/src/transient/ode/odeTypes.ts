/** A system of ordinary differential equations that does not name the time: y' = f(y), of up to about 30 components. */
export interface OdeSystem {
  /** Number of components [-]. */
  readonly size: number;
  /** Writes f(y) [unit of y per s] into out; must keep nothing of y and change nothing of it. */
  derivative(y: Float64Array, out: Float64Array): void;
  /** Writes df/dy [1/s x units], row-major [size * size], into out; f0 = f(y) is given. Absent: one-sided differences. */
  jacobian?(y: Float64Array, f0: Float64Array, out: Float64Array): void;
  /** Weights w, one per component, of sums that f never changes: w . f(y) = 0 for every y. The integrator then keeps w . y to
   *  rounding even with a Jacobian by differences. Several must have no component in common. */
  readonly invariants?: readonly Float64Array[];
}

/** Functions of the state whose sign changes stop the integration. */
export interface OdeEvents {
  /** Number of events [-]. */
  readonly count: number;
  /** Writes one value per event into out; its change of sign is the event. A value that is not a number never fires. */
  values(y: Float64Array, out: Float64Array): void;
  /** Per event: +1 rising through zero only, -1 falling only, 0 both. */
  readonly direction: Int8Array;
}

/** How closely and how far an integration goes. */
export interface OdeOptions {
  /** Error allowed per step, relative to the component [-], above 1e-13. */
  readonly relativeTolerance: number;
  /** Error allowed per step, per component [unit of y], above 0. */
  readonly absoluteTolerance: Float64Array;
  /** Length of the first step to try [s]; absent: from the slope and its change. */
  readonly firstStep?: number;
  /** Longest step [s]. */
  readonly largestStep?: number;
  /** Accepted and rejected steps together [-], after which the run stops and says so. */
  readonly maximumSteps: number;
}

/** One accepted step with the polynomial that runs through it; valid until the next step is taken. */
export interface OdeStep {
  /** Start and end of the step [s]; the end is the event where one stopped the run. */
  readonly t0: number;
  readonly t1: number;
  /** Writes the state at a time [s] between t0 and t1 into out. */
  at(t: number, out: Float64Array): void;
  /** Copies what is needed to interpolate later, as plain data. */
  keep(): KeptStep;
}

/** A step copied for later, as plain data that can be sent to another thread: read it with keptStepAt. */
export interface KeptStep {
  /** Start and end of the step [s]. */
  readonly t0: number;
  readonly t1: number;
  /** Length [s] to which the polynomial belongs: longer than t1 - t0 where an event cut the step. */
  readonly span: number;
  /** Four numbers per component, component after component within each: state at the start, at the end, two corrections. */
  readonly coefficients: Float64Array;
}

/** How a run ended. */
export interface OdeResult {
  /** "end": tEnd reached; "event": stopped at an event; "stepBudget": maximumSteps used up; "stepTooSmall": no step, however
   *  short, meets the tolerance or gives finite numbers. In every case t and y are the last good state. */
  readonly status: "end" | "event" | "stepBudget" | "stepTooSmall";
  /** Time reached [s]. */
  readonly t: number;
  /** Index of the event that stopped the run, or -1. */
  readonly event: number;
  /** Every event crossed by then: more than one only where they fall together to within the accuracy of the location. */
  readonly events: readonly number[];
  /** Accepted steps, rejected steps and evaluations of the derivative (those for the Jacobian included). */
  readonly steps: number;
  readonly rejected: number;
  readonly evaluations: number;
  /** Step length [s] that the error control would take next: a firstStep for going on from here. */
  readonly nextStep: number;
}

/** An integrator for one system, with its work space. */
export interface Ode {
  /** Integrates from t0 to tEnd [s]; y is the state, in and out. See createOde. */
  run(
    t0: number,
    y: Float64Array,
    tEnd: number,
    options: OdeOptions,
    events?: OdeEvents,
    onStep?: (step: OdeStep) => void,
  ): OdeResult;
}
