/** Numbers that look random and are the same for the same start, so that a failure can be found again. */
export interface RandomNumbers {
  /** Between two bounds, evenly. */
  between(low: number, high: number): number;
  /** Between two bounds, evenly over orders of magnitude. */
  orders(low: number, high: number): number;
  /** A whole number, both bounds included. */
  whole(low: number, high: number): number;
  /** True with this probability. */
  chance(probability: number): boolean;
  pick<T>(from: readonly T[]): T;
}

/** The generator mulberry32 (T. Ettinger, public domain). */
export function randomNumbers(start: number): RandomNumbers {
  let state = Math.imul(start + 1, 0x9e3779b1) >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const between = (low: number, high: number) => low + (high - low) * next();
  const whole = (low: number, high: number) => Math.min(high, Math.floor(between(low, high + 1)));
  return {
    between,
    whole,
    orders: (low, high) => Math.exp(between(Math.log(low), Math.log(high))),
    chance: (probability) => next() < probability,
    pick: (from) => from[whole(0, from.length - 1)],
  };
}
