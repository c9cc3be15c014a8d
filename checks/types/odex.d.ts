/** The parts that the checks use of odex 2.0.4, which brings no declarations of its own. */
export class Solver {
  constructor(size: number);
  absoluteTolerance: number;
  relativeTolerance: number;
  maxSteps: number;
  solve(
    derivative: (x: number, y: number[]) => number[],
    start: number,
    initial: readonly number[],
    end: number,
  ): { y: number[]; outcome: number; nStep: number };
}
