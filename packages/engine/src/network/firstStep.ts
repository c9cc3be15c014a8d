import type { Elimination } from "./elimination.ts";

/** Losses [m], conductances [m2/s] and 1/sqrt(f) of every link at the first flows and the elimination of their nodal equations: the part of a
 *  cold start that knows neither levels nor demands. Made by the first cold solution, kept until a link is set anew. */
export interface FirstStep {
  ready: boolean;
  readonly loss: Float64Array;
  readonly conductance: Float64Array;
  readonly x: Float64Array;
  readonly values: Float64Array;
  readonly inverse: Float64Array;
}

/** Room for the first step of so many links. */
export function newFirstStep(links: number, plan: Elimination): FirstStep {
  return {
    ready: false,
    loss: new Float64Array(links),
    conductance: new Float64Array(links),
    x: new Float64Array(links),
    values: new Float64Array(plan.length),
    inverse: new Float64Array(plan.size),
  };
}
