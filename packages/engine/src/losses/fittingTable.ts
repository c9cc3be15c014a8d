/** Published ways to reckon the loss of a fitting. */
export type FittingMethod = "crane" | "hooper" | "darby";

/** Fittings the engine knows. */
export type FittingKind =
  | "elbow90"
  | "elbow90Bend"
  | "elbow90Sweep"
  | "elbow45"
  | "teeRun"
  | "teeBranch"
  | "coupling"
  | "union"
  | "bulkhead"
  | "entranceSharp"
  | "entranceRounded"
  | "entranceProjecting"
  | "exit"
  | "ballValve"
  | "trueUnionBallValve"
  | "gateValve"
  | "globeValve"
  | "butterflyValve"
  | "diaphragmValve"
  | "swingCheck"
  | "liftCheck"
  | "springCheck"
  | "footValve"
  | "footValveHinged";

/** One fitting in the tables of the three methods. */
export interface FittingTableRow {
  /** Crane: K = n fT. */
  readonly crane?: number;
  /** Hooper: [K1, Kinf]. */
  readonly hooper?: readonly [number, number];
  /** Darby: [K1, Ki, Kd]. */
  readonly darby?: readonly [number, number, number];
  /** A K [-] that depends on neither size nor Reynolds number, with the range of the handbooks. */
  readonly fixed?: { readonly value: number; readonly low: number; readonly high: number };
  /** Whose figure `fixed` is. */
  readonly fixedFrom?: "crane" | "handbook";
  /** What the row stands for, and where its figures are. */
  readonly note: string;
}

const joint = {
  fixed: { value: 0.06, low: 0.04, high: 0.08 },
  fixedFrom: "handbook",
} as const;

/** Constants of every fitting in each method's table, with a note on what it stands for.
 *  Result: record of FittingTableRow; n, K and Ki [-], Hooper's and Darby's sizes in inches.
 *  Findings: none. Throws: never.
 *  Valid: constants as published; Crane's tee figures, bulkhead and spring check are from memory.
 *  Source: Crane TP-410 (2009) appendix A; W. B. Hooper, Chemical Engineering, 24 Aug 1981, 96-100; P. Silverberg and
 *  R. Darby, Chemical Engineering 106(7) (1999) 101; R. Darby, Chemical Engineering Fluid Mechanics, 2nd edition, table 7-3.
 *  Example: fittingTable.elbow90.crane  ->  30 */
export const fittingTable: Readonly<Record<FittingKind, FittingTableRow>> = {
  elbow90: {
    crane: 30,
    hooper: [800, 0.4],
    darby: [800, 0.14, 4.0],
    note: "Standard threaded elbow; a solvent-weld socket elbow has the same sharp inner corner.",
  },
  elbow90Bend: { crane: 20, hooper: [800, 0.25], darby: [800, 0.091, 4.0], note: "Smooth bore, r/D = 1." },
  elbow90Sweep: { crane: 14, hooper: [800, 0.2], darby: [800, 0.071, 4.2], note: "Long sweep, r/D = 1.5." },
  elbow45: { crane: 16, hooper: [500, 0.2], darby: [500, 0.071, 4.2], note: "Standard." },
  teeRun: { crane: 20, hooper: [200, 0.1], darby: [200, 0.091, 4.0], note: "All flow straight on. Crane from memory." },
  teeBranch: { crane: 60, hooper: [500, 0.7], darby: [500, 0.274, 4.0], note: "All flow turns. Crane from memory." },
  coupling: { ...joint, note: "0.04 in Perry's Chemical Engineers' Handbook; up to 0.08 in others." },
  union: { ...joint, note: "0.04 in Perry's Chemical Engineers' Handbook, 0.08 in Munson et al., table 8.2." },
  bulkhead: { ...joint, note: "As a joint of full bore, from memory; its entrance or exit counts apart." },
  entranceSharp: {
    fixed: { value: 0.5, low: 0.5, high: 0.57 },
    fixedFrom: "crane",
    note: "Flush with the wall. High: D. C. Rennels and H. M. Hudson, Pipe Flow (2012).",
  },
  entranceRounded: {
    fixed: { value: 0.04, low: 0, high: 0.148 },
    fixedFrom: "crane",
    note: "Lip radius of 0.15 bore or more. Low: Harris; high: Rennels and Hudson, both from fluids 1.0.22.",
  },
  entranceProjecting: {
    fixed: { value: 0.78, low: 0.78, high: 1 },
    fixedFrom: "crane",
    note: "Thin pipe standing in the water. High: I. E. Idelchik, Handbook of Hydraulic Resistance, thin edge.",
  },
  exit: { fixed: { value: 1, low: 1, high: 1 }, fixedFrom: "crane", note: "All the speed is lost." },
  ballValve: { crane: 3, hooper: [300, 0.1], darby: [300, 0.017, 3.5], note: "Full bore, full open." },
  trueUnionBallValve: {
    crane: 3,
    hooper: [300, 0.1],
    darby: [300, 0.017, 3.5],
    note: "As a full-bore ball valve; its two face-sealed joints are within the spread of the methods.",
  },
  gateValve: { crane: 8, hooper: [300, 0.1], darby: [300, 0.037, 3.9], note: "Full bore, full open." },
  globeValve: { crane: 340, hooper: [1500, 4.0], darby: [1500, 1.7, 3.6], note: "Full open." },
  butterflyValve: { crane: 45, hooper: [800, 0.25], note: "Full open, centred disc. Crane's row is for 2 to 8 in." },
  diaphragmValve: { crane: 149, hooper: [1000, 2.0], darby: [1000, 0.69, 4.9], note: "Weir type, full open." },
  swingCheck: {
    crane: 100,
    hooper: [1500, 1.5],
    darby: [1500, 0.46, 4.0],
    note: "Crane's 100 is for a slanted seat, 50 for a straight one. Full open only above Crane's lift velocity.",
  },
  liftCheck: { crane: 600, hooper: [2000, 10], darby: [2000, 2.85, 3.8], note: "Globe pattern, full open." },
  springCheck: {
    fixed: { value: 4, low: 2, high: 10 },
    fixedFrom: "handbook",
    note: "In line, fully lifted; no general value exists, from memory. Enter the maker's figure.",
  },
  footValve: { crane: 420, note: "Poppet disc with strainer." },
  footValveHinged: { crane: 75, note: "Hinged disc with strainer." },
};
