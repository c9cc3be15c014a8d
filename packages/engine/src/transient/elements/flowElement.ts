/** One way for water, or one quantity that changes: it adds its rates to `out` and says what they depend on.
 *  What it takes from one volume it gives to another, so that no sum of elements can lose water. */
export interface FlowElement {
  /** Indices of the state that its rates depend on just now. */
  readonly dependsOn: () => readonly number[];
  /** Indices of the state that it changes. */
  readonly changes: readonly number[];
  /** Adds its rates [1/s] at state y. */
  add(y: Float64Array, out: Float64Array): void;
  /** As `add`, good enough for a difference quotient at a state a hair's breadth from the one before; `add` where absent. */
  addNear?(y: Float64Array, out: Float64Array): void;
}
