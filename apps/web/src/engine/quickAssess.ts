import { type Assessment, assess } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import { currentCatalogue } from "../catalogue/currentCatalogue.ts";

/** An answer given on the page's own thread, and the time it took [ms]. */
export interface QuickAnswer {
  readonly assessment: Assessment;
  readonly took: number;
}

/** Answers on the page's own thread for as long as that is a small share of a frame. */
export interface QuickAssess {
  /** The answer, or undefined where the worker must be asked. The curve picture keeps the curves of `curves`. */
  ask(design: Design, curves: Assessment | undefined): QuickAnswer | undefined;
  /** The whole answer with its curves for the first picture, whatever it takes; undefined where it cannot be had. */
  first(design: Design): QuickAnswer | undefined;
  /** Tells what an assessment costs elsewhere, by which a page that had given up may begin again. */
  hear(took: number): void;
  /** Lets the compiler see the code before a hand is on the drawing; to be called when the page is idle. */
  warm(design: Design): void;
}

/** Most time that an answer may take on the page's thread [ms]: a quarter of a 60 Hz frame, so that drawing has the rest. */
export const quickAllowance = 4;
/** How much of the expectation each new measurement makes up. */
const weight = 0.3;
const mostWarmUps = 12;

type Solve = (design: Design) => Assessment;
const whole: Solve = (design) => assess(design, currentCatalogue());
const withoutCurves: Solve = (design) => assess(design, currentCatalogue(), { curves: false });

/** Returns the page's own way to numbers: the very `assess` of the worker, but without curves and only while it is quick.
 *  An answer from the worker comes one task and so one frame later than the pointer that asked (decision 0014).
 *  solve, now for tests: what is measured and the clock [ms]   -> QuickAssess; nothing is answered before it was warmed */
export function quickAssess(solve: Solve = withoutCurves, now = () => performance.now()): QuickAssess {
  let expected = Infinity;

  const timed = (design: Design): QuickAnswer | undefined => {
    const started = now();
    try {
      const assessment = solve(design);
      const took = now() - started;
      expected = Number.isFinite(expected) ? expected + weight * (took - expected) : took;
      return { assessment, took };
    } catch {
      // The worker meets the same broken invariant and its answer names it.
      return undefined;
    }
  };

  return {
    ask(design, curves) {
      if (expected > quickAllowance) return undefined;
      const answer = timed(design);
      if (answer === undefined || curves === undefined) return undefined;
      const assessment = withCurvesOf(answer.assessment, curves);
      return assessment && { ...answer, assessment };
    },
    first(design) {
      const started = now();
      try {
        const assessment = whole(design);
        return { assessment, took: now() - started };
      } catch {
        // As above.
        return undefined;
      }
    },
    hear(took) {
      if (expected > quickAllowance) expected = took;
    },
    warm(design) {
      for (let run = 0; run < mostWarmUps; run += 1) if (timed(design) === undefined) return;
    },
  };
}

/** Returns an assessment with the curves of an earlier one, for a picture that follows at its leisure; undefined where the
 *  two have other loops or pumps. Example: the curves of one drag's beginning under the numbers of its end. */
export function withCurvesOf(assessment: Assessment, earlier: Assessment): Assessment | undefined {
  if (!alike(assessment.loops, earlier.loops) || !alike(assessment.pumps, earlier.pumps)) return undefined;
  return {
    ...assessment,
    loops: assessment.loops.map((loop, i) => {
      const { systemCurve, flowRange, flow } = earlier.loops[i]!;
      // The interval keeps its width in proportion until it is reckoned anew.
      const scale = flow > 0 ? loop.flow / flow : 1;
      return { ...loop, systemCurve, flowRange: [flowRange[0] * scale, flowRange[1] * scale] as const };
    }),
    pumps: assessment.pumps.map((pump, i) => ({ ...pump, curves: earlier.pumps[i]!.curves })),
  };
}

const alike = (a: readonly { readonly path: string }[], b: readonly { readonly path: string }[]) =>
  a.length === b.length && a.every(({ path }, i) => path === b[i]!.path);
