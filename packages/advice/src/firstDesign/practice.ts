/** Where a value comes from that nobody has published. */
export const practiceOnly = "common practice, no source";
/** Where a value comes from that was found by solving this design. */
export const ownReckoning = "found by solving this design";

/** What is usual where nothing is said; SI. All of it common practice without a source, but for the salinity. */
export const practice = {
  /** Length and height of a tank in widths. */
  lengthPerWidth: 2.2,
  heightPerWidth: 1.1,
  highestGlass: 0.75,
  rockShare: 0.12,
  standHeight: 0.8,
  /** Display volumes an hour through the sump. */
  returnTurnover: [5, 10],
  /** Head over the teeth of the crest that is looked for first, and the most [m]. */
  weirHeads: [0.014, 0.016, 0.018, 0.021, 0.025, 0.03, 0.035, 0.045],
  /** Share of the back wall that a box may take before the water is let stand higher on its crest. */
  boxShare: 0.42,
  mostBoxShare: 0.75,
  toothOpenShare: 0.6,
  /** Siphon tubes over the glass and their bores [m], fewest and narrowest first. */
  siphonTubes: [2, 3, 4, 5, 6],
  siphonBores: [0.016, 0.018, 0.02, 0.022, 0.025, 0.028, 0.032, 0.036, 0.04, 0.045, 0.05],
  /** Tubes carry this many times the aimed flow. */
  siphonSpare: 1.15,
  /** Usual box inside, front to back [m]. */
  innerWidth: 0.08,
  /** The box inside stays this far below the crest [m]. */
  siphonFall: 0.008,
  /** Floor of the box outside under the ends of the tubes, and its rim over the display's [m]. */
  underMouth: 0.05,
  boxOverRim: 0.02,
  /** From the running level to the rim of the glass [m]. */
  freeboard: 0.03,
  /** A siphon's share of the flow: the open channel has to carry the rest quietly. */
  siphonShares: [0.85, 0.9, 0.95],
  /** An open siphon carries this many times the largest wished flow, so that its valve has something to do. */
  siphonReserve: 1.3,
  /** The dry inlet stands this far above the running level [m]. */
  dryGap: 0.015,
  /** Water over a siphon's inlet, at least [m]. */
  siphonCover: 0.08,
  /** Falls from the crest to the dry inlet, least first: a longer fall splashes, a shorter one leaves less head [m]. */
  dryFalls: [0.04, 0.05, 0.06, 0.08, 0.1, 0.13, 0.16, 0.2, 0.25],
  nozzleDepth: 0.03,
  siphonBreak: 0.015,
  horizontal: 0.3,
  elbows: 2,
  /** Speed in the return pipe at the aimed flow [m/s]: below the 1.5 m/s of the findings. */
  returnSpeed: 1.2,
  sumpFloor: 0.02,
  /** Shares of a sump's length: for the drains, for skimmer and media, for the return pump. */
  chamberShares: [0.22, 0.36, 0.42],
  /** Most length and width of a sump, in those of the tank, that is grown into for the sake of days alone. */
  mostSump: { length: 0.74, width: 0.8 },
  /** The pump's intake above the sump's floor [m]. */
  intakeHeight: 0.04,
  /** Days without top-off that the return chamber should hold out, a little over the long weekend of the findings. */
  daysInHand: 4.2,
  /** Days of evaporation that a top-off's reservoir holds where the sump has room for it. */
  reservoirDays: 7,
  /** A top-off makes good what a day takes in this long [s]: hours pass before one that sticks open has emptied its reservoir. */
  topOffTime: 1800,
  /** Free height over a sump for hands and a skimmer, and what a stand's frame takes off its plan [m]. */
  overSump: 0.2,
  standFrame: 0.1,
  /** Watts of heaters, light and skimmer on the stand's circuits for each litre. */
  otherWattsPerLitre: 1,
} as const;

/** Outer diameter of the pipe that the bulkhead in a hole takes [m]: hole = 1.1 OD + 7.5 mm. Common practice, no source: a straight line
 *  through the holes that bulkheads of 25 to 60 mm pipe usually ask for. */
export function pipeOfHole(hole: number): number {
  return (hole - 0.0075) / 1.1;
}

/** Hole that the bulkhead of a pipe asks for [m]; the inverse of `pipeOfHole`. */
export function holeOfPipe(outerDiameter: number): number {
  return 1.1 * outerDiameter + 0.0075;
}
