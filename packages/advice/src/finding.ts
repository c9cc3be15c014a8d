/** How bad: danger wets a floor or harms; warning misses the wish or good practice; notice is worth knowing. */
export type Severity = "danger" | "warning" | "notice";

/** Every finding there is, grouped by cause. The union is closed: sentences live in `wording.ts`. */
export type FindingCode =
  | "solve/not-converged"
  | "flow/below-wish"
  | "flow/above-wish"
  | "flow/no-lift"
  | "flow/total-turnover-low"
  | "flow/total-turnover-high"
  | "drain/beyond-quiet"
  | "drain/beyond-practice"
  | "drain/beyond-siphon"
  | "drain/no-emergency"
  | "drain/emergency-too-small"
  | "drain/emergency-wet"
  | "drain/siphon-share-unreachable"
  | "drain/siphon-not-clearing-air"
  | "overflow/box-over-rim"
  | "overflow/display-over-rim"
  | "overflow/little-freeboard"
  | "overflow/weir-drowned"
  | "overflow/siphon-alone"
  | "overflow/siphon-gathers-air"
  | "overflow/siphon-runs-dry"
  | "overflow/siphon-vacuum"
  | "pipe/fast"
  | "pipe/slow"
  | "pipe/bulkhead-undersized"
  | "pipe/uncertain-regime"
  | "pump/missing"
  | "pump/near-shutoff"
  | "pump/near-runout"
  | "pump/beyond-curve"
  | "pump/suction-too-small"
  | "pump/not-flooded"
  | "pump/npsh-low"
  | "pump/wrong-place"
  | "pump/missing-controller"
  | "pump/not-controllable"
  | "pump/below-minimum-speed"
  | "pump/wrong-voltage"
  | "pump/no-check-valve"
  | "outlet/jet-fast"
  | "device/flow-low"
  | "device/flow-high"
  | "sump/over-rim"
  | "sump/does-not-fit"
  | "sump/too-small"
  | "sump/little-room"
  | "sump/return-chamber-low"
  | "sump/baffle-drowned"
  | "power/circuit-overload"
  | "heat/beyond-chiller"
  | "cost/over-budget"
  | "cost/mixed-currencies"
  | "sound/over-wish"
  | "service/no-union"
  | "service/no-valve"
  | "overTime/power-cut"
  | "overTime/restart"
  | "overTime/drain-blocked"
  | "overTime/two-drains-blocked"
  | "overTime/pump-fails"
  | "overTime/check-valve-stuck"
  | "overTime/siphon-break-clogged"
  | "overTime/overflow-siphon-lost"
  | "overTime/top-off-fails"
  | "overTime/top-off-stuck-open"
  | "overTime/tight"
  | "overTime/running"
  | "overTime/unsolved"
  | "caution/leakage-protection"
  | "caution/check-valve-alone"
  | "caution/plug-test";

/** Something the designer should know: data, not prose. */
export interface Finding {
  readonly code: FindingCode;
  readonly severity: Severity;
  /** JSON Pointer of the part it is about. */
  readonly at: string;
  /** What was found and the limit it broke, in SI; `dimension` says which. A bare number such as a Reynolds or Froude number has none:
   *  a "ratio" is a share, worded in per cent. */
  readonly value?: number;
  readonly limit?: number;
  readonly dimension?: string;
  /** Names and further numbers that the sentence needs. */
  readonly data?: Readonly<Record<string, string | number>>;
  /** Where the limit comes from: a publication, or "common practice, no source". */
  readonly source: string;
}
