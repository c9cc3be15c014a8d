import { interpolate } from "./interpolate.ts";
import type { OdeEvents } from "./odeTypes.ts";

/** Watches the signs of events from step to step and finds the first crossing in one. */
export interface EventWatch {
  /** Takes the sides on which the values lie at the start: a zero has no side yet. */
  start(y: Float64Array): void;
  /** Looks at the step from share 0 to 1 of the polynomial that ends in y1.
   *  resolution: width [share of the step] to which a crossing is bracketed
   *  -> share of the first crossing, just past it, or -1 for none (and then the sides are those of y1) */
  firstCrossing(coefficients: Float64Array, y1: Float64Array, resolution: number): number;
  /** The event found last, and all that were past their crossing there. */
  readonly found: number;
  readonly together: number[];
}

/** Returns a watch for the events of a system of n components. Illinois's false position on the dense output, kept at least half the
 *  resolution from both ends of the bracket and helped by halving.
 *  Source: M. Dowell, P. Jarratt, A modified regula falsi method, BIT 11 (1971) 168-174. */
export function eventWatch(events: OdeEvents, n: number): EventWatch {
  const { count, direction } = events;
  const sides = new Int8Array(count);
  const values = new Float64Array(count);
  const state = new Float64Array(n);

  /** True where an event that lay on `side` is past a crossing that counts. */
  const isPast = (event: number): boolean => {
    const side = sides[event];
    const value = values[event];
    // Rising events start below, falling ones above; zero counts as crossed.
    if (side < 0) return value >= 0 && direction[event] >= 0;
    return side > 0 && value <= 0 && direction[event] <= 0;
  };
  const takeSides = (): void => {
    for (let i = 0; i < count; i++) {
      if (values[i] > 0) sides[i] = 1;
      else if (values[i] < 0) sides[i] = -1;
    }
  };
  const evaluateAt = (coefficients: Float64Array, share: number): void => {
    interpolate(coefficients, share, state);
    events.values(state, values);
  };
  const anyPast = (): boolean => {
    for (let i = 0; i < count; i++) if (isPast(i)) return true;
    return false;
  };

  /** Narrows the crossing of one event between 0 and `high`, where it is past; leaves `values` as they are at the answer. */
  const locate = (coefficients: Float64Array, event: number, high: number, resolution: number): number => {
    let low = 0;
    let upper = high;
    let atUpper = values[event];
    evaluateAt(coefficients, 0);
    let atLow = values[event];
    let lastMoved = 0;
    for (let i = 0; i < 200 && upper - low > resolution; i++) {
      const width = upper - low;
      const slope = atUpper - atLow;
      let share = slope === 0 || i % 4 === 3 ? low + 0.5 * width : low - (atLow * width) / slope;
      if (!(share > low + 0.5 * resolution)) share = low + 0.5 * resolution;
      if (!(share < upper - 0.5 * resolution)) share = upper - 0.5 * resolution;
      // Neighbouring numbers leave nothing between them.
      if (!(share > low && share < upper)) break;
      evaluateAt(coefficients, share);
      if (isPast(event)) {
        upper = share;
        atUpper = values[event];
        if (lastMoved === 1) atLow *= 0.5;
        lastMoved = 1;
      } else {
        low = share;
        atLow = values[event];
        if (lastMoved === -1) atUpper *= 0.5;
        lastMoved = -1;
      }
    }
    evaluateAt(coefficients, upper);
    return upper;
  };

  const together: number[] = [];
  const watch = {
    found: -1,
    together,
    start(y: Float64Array): void {
      sides.fill(0);
      events.values(y, values);
      takeSides();
    },
    firstCrossing(coefficients: Float64Array, y1: Float64Array, resolution: number): number {
      events.values(y1, values);
      if (!anyPast()) {
        takeSides();
        return -1;
      }
      // Each crossing found ends the stretch in which the next event is looked for, so one pass leaves the earliest.
      let share = 1;
      for (let event = 0; event < count; event++) {
        if (!isPast(event)) continue;
        share = locate(coefficients, event, share, resolution);
        watch.found = event;
      }
      together.length = 0;
      for (let i = 0; i < count; i++) if (isPast(i)) together.push(i);
      return share;
    },
  };
  return watch;
}
