import type { DrainKind } from "./drainFlow.ts";
import { type DrainLine, type DrainWater, drainLineHeadLoss } from "./drainLine.ts";
import { siphonFlow } from "./siphonFlow.ts";
import { type DrainControl, rimWeirFlow, throatFlow } from "./standpipeFlow.ts";

/** One drain rated at level after level, as a search does it: flow, what limits it, and how fast the flow grows with the level.
 *  It remembers what saves work and changes no answer: a flow whose loss is known to fit spares the loss of every smaller one,
 *  since losses rise with flow, and a pipe that ran full is asked first whether it still does. */
export class DrainRating {
  flow = 0;
  control: DrainControl = "dry";
  /** dQ/dlevel [m2/s], near enough to set the pace of a search. */
  slope = 0;
  readonly #kind: DrainKind;
  readonly #line: DrainLine;
  readonly #water: DrainWater;
  #fullFlow: number;
  #fittingFlow = 0;
  #fittingLoss = 0;

  /** guess [m3/s] a flow near by for the full pipe, 0 where none is known */
  constructor(kind: DrainKind, line: DrainLine, water: DrainWater, guess: number) {
    this.#kind = kind;
    this.#line = line;
    this.#water = water;
    this.#fullFlow = guess;
    // A siphon that ran is first asked whether it runs full.
    if (guess > 0 && kind === "throttledSiphon") this.control = "fullPipe";
  }

  /** Rates the drain at a level [m] and returns its flow [m3/s]: the smallest of rim weir, drowned throat (but for a siphon,
   *  which knows none) and full pipe. */
  rate(level: number): number {
    const line = this.#line;
    const head = level - line.inletElevation;
    if (!(head > 0)) return this.#set(0, "dry", 0);
    const crest = rimWeirFlow(line.inletDiameter, head);
    const throat = this.#kind === "throttledSiphon" ? Number.POSITIVE_INFINITY : throatFlow(line, head);
    const inlet = crest <= throat ? crest : throat;
    const fall = level - line.outletElevation;
    if (this.control === "fullPipe" || !(inlet <= this.#fittingFlow && this.#fittingLoss <= fall)) {
      let full = -1;
      if (this.control === "fullPipe") full = siphonFlow(line, level, this.#water, this.#fullFlow);
      if (full < 0 || full >= inlet) {
        const loss = drainLineHeadLoss(line, inlet, this.#water);
        if (loss <= fall) {
          this.#fittingFlow = inlet;
          this.#fittingLoss = loss;
          full = -1;
        } else if (full < 0) full = siphonFlow(line, level, this.#water, this.#fullFlow);
      }
      if (full >= 0) {
        if (full > 0) this.#fullFlow = full;
        // Turbulent friction and fittings: the flow goes with the square root of the fall, nearly.
        return this.#set(Math.min(inlet, full), "fullPipe", fall > 0 ? (0.53 * full) / fall : 0);
      }
    }
    if (crest <= throat) return this.#set(crest, "crest", (1.5 * crest) / head);
    return this.#set(throat, "throat", (0.5 * throat) / head);
  }

  #set(flow: number, control: DrainControl, slope: number): number {
    this.flow = flow;
    this.control = control;
    this.slope = slope;
    return flow;
  }
}
