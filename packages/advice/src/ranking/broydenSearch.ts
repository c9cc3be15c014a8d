/** A few unknowns x that a step answers with g(x), searched for where g(x) = x. What one search learns of how g moves with x is kept for the next,
 *  so that answers close to the last one take a step or two.
 *  Source: C. G. Broyden, A class of methods for solving nonlinear simultaneous equations, Mathematics of Computation 19 (1965), first method,
 *  in the form that updates the inverse. */
export class BroydenSearch {
  readonly #size: number;
  /** Inverse of the derivative of g(x) - x, row by row. */
  readonly #inverse: Float64Array;
  readonly #tried: Float64Array;
  readonly #apart: Float64Array;
  readonly #moved: Float64Array;
  readonly #turned: Float64Array;
  #farBefore = Number.NaN;

  constructor(size: number) {
    this.#size = size;
    this.#inverse = new Float64Array(size * size);
    this.#tried = new Float64Array(size);
    this.#apart = new Float64Array(size);
    this.#moved = new Float64Array(size);
    this.#turned = new Float64Array(size);
    this.forget();
  }

  /** Plain rounds again: g is taken not to move with x. What was learned across a jump of g leads astray. */
  forget(): void {
    this.#inverse.fill(0);
    for (let i = 0; i < this.#size; i++) this.#inverse[i * this.#size + i] = -1;
  }

  /** Starts another search. */
  begin(): void {
    this.#farBefore = Number.NaN;
  }

  /** Puts the next x to try in place of the one that was answered with g; `far` is the largest |g - x|. */
  next(x: Float64Array, g: Float64Array, far: number): void {
    const n = this.#size;
    if (far > 2 * this.#farBefore) this.forget();
    else if (!Number.isNaN(this.#farBefore)) this.#learn(x, g);
    this.#farBefore = far;
    for (let i = 0; i < n; i++) {
      this.#tried[i] = x[i] as number;
      this.#apart[i] = (g[i] as number) - (x[i] as number);
    }
    for (let i = 0; i < n; i++) {
      let step = 0;
      for (let k = 0; k < n; k++) step += (this.#inverse[i * n + k] as number) * (this.#apart[k] as number);
      x[i] = (x[i] as number) - step;
    }
  }

  /** H += (dx - H df) (dx^T H) / (dx^T H df). */
  #learn(x: Float64Array, g: Float64Array): void {
    const n = this.#size;
    const inverse = this.#inverse;
    const moved = this.#moved;
    const turned = this.#turned;
    let below = 0;
    let long = 0;
    for (let i = 0; i < n; i++) {
      moved[i] = (x[i] as number) - (this.#tried[i] as number);
      long += (moved[i] as number) ** 2;
    }
    for (let i = 0; i < n; i++) {
      let sum = 0;
      for (let k = 0; k < n; k++)
        sum += (inverse[i * n + k] as number) * ((g[k] as number) - (x[k] as number) - (this.#apart[k] as number));
      turned[i] = sum;
      below += (moved[i] as number) * sum;
    }
    // A step that turns too far tells nothing.
    if (!(Math.abs(below) > 0.1 * long)) return;
    const row = this.#apart;
    for (let k = 0; k < n; k++) {
      let sum = 0;
      for (let i = 0; i < n; i++)
        sum += ((x[i] as number) - (this.#tried[i] as number)) * (inverse[i * n + k] as number);
      row[k] = sum;
    }
    for (let i = 0; i < n; i++) {
      const miss = ((x[i] as number) - (this.#tried[i] as number) - (turned[i] as number)) / below;
      for (let k = 0; k < n; k++) inverse[i * n + k] = (inverse[i * n + k] as number) + miss * (row[k] as number);
    }
  }
}
