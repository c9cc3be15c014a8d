/** What falls back into the sump when the pumps stop. Elevations share one datum. */
export interface DrainBack {
  /** Water surface of the display [m2], rock taken off. */
  readonly displayArea: number;
  /** Level of the display while running [m]. */
  readonly displayLevel: number;
  /** Crest of the display's overflow [m]. */
  readonly weirCrest: number;
  /** For every return outlet that can siphon back: the height [m] of its siphon-break hole, or of the nozzle's top edge without one. */
  readonly siphonBreaks: readonly number[];
  /** Water surface of the overflow box [m2]; 0 without a box. */
  readonly boxArea: number;
  /** Level of the box while running [m]. */
  readonly boxLevel: number;
  /** Level at which the box stops draining [m]: its lowest drain inlet. */
  readonly boxStopLevel: number;
  /** Water in return and drain pipes that empties into the sump [m3]. */
  readonly pipeVolume: number;
}

/** The parts of a power-cut volume [m3] and the level [m] at which the display comes to rest. */
export interface DrainBackVolume {
  readonly display: number;
  readonly box: number;
  readonly pipes: number;
  readonly total: number;
  readonly displayRestLevel: number;
}

/** Returns the water that falls into the sump on a power cut: display area times the fall to the lowest of crest and siphon breaks,
 *  plus the box down to its lowest inlet, plus the pipes.
 *  back DrainBack   -> DrainBackVolume, all parts 0 or more
 *  Findings: none. Throws: never.
 *  Valid: a static estimate: every siphon break works, check valves count for nothing (leave out an outlet to count on its valve),
 *  the film that stays on the crest and the water lost meanwhile are not taken off, so it errs on the safe side.
 *  Source: geometry.
 *  Example: drainBackVolume({ displayArea: 0.9, displayLevel: 0.575, weirCrest: 0.56, siphonBreaks: [0.54], boxArea: 0.03, boxLevel: 0.4, boxStopLevel: 0.3, pipeVolume: 0.002 }).total  ->  0.0365 */
export function drainBackVolume(back: DrainBack): DrainBackVolume {
  const displayRestLevel = Math.min(back.displayLevel, back.weirCrest, ...back.siphonBreaks);
  const display = back.displayArea * (back.displayLevel - displayRestLevel);
  const box = back.boxArea * Math.max(0, back.boxLevel - back.boxStopLevel);
  const pipes = Math.max(0, back.pipeVolume);
  return { display, box, pipes, total: display + box + pipes, displayRestLevel };
}
