/** How a solution came about, told truthfully: EPANET's convergence record, in one object. */
export interface ConvergenceRecord {
  /** "converged"; "stalled" where steps no longer help; "limit" where the step budget ran out; "unreachable" where a demand
   *  lies behind shut links, so that no answer exists. */
  readonly status: "converged" | "stalled" | "limit" | "unreachable";
  readonly iterations: number;
  /** Steps that had to be shortened. */
  readonly shortened: number;
  /** Largest energy error of any link over the head scale, and largest continuity error over the flow scale. */
  readonly residual: number;
  readonly energyResidual: number;
  readonly continuityResidual: number;
  /** Where the largest energy and continuity errors are. */
  readonly worstLink: string | undefined;
  readonly worstNode: string | undefined;
  /** Energy residual after each iteration. */
  readonly history: readonly number[];
}
