import type { Course } from "./playhead.ts";
import type { TimeScale } from "./timeScale.ts";

/** How fast a film plays: so many times as fast as the water, or the whole film in a set time. */
export type Speed = 1 | 10 | 60 | "fit";
/** Every speed, in the order of the buttons. */
export const speeds: readonly Speed[] = [1, 10, 60, "fit"];

/** Time in which a fitted film plays [s]. */
const fitted = 20;
/** Most time on the wall's clock that a shortened stretch takes [s]. */
const longestQuiet = 4;

/** Returns how the playhead moves: fitted, evenly along the bar; else so many times as fast as the water, but through shortened
 *  stretches in four seconds at most.
 *  scale of the time bar   speed   -> Course
 *  Findings: none. Throws: never.
 *  Valid: any scale.
 *  Source: own construction.
 *  Example: courseOf(evenScale(200), "fit").next(0, 1)  ->  10 */
export function courseOf(scale: TimeScale, speed: Speed): Course {
  const { duration, stretches } = scale;
  if (speed === "fit") return { duration, next: (t, elapsed) => scale.toTime(scale.toShare(t) + elapsed / fitted) };
  return {
    duration,
    next(t, elapsed) {
      let left = elapsed;
      let now = t;
      for (const { t0, t1, shortened } of stretches) {
        if (now >= t1 || now < t0) continue;
        const pace = shortened ? Math.max(speed, (t1 - t0) / longestQuiet) : speed;
        const step = Math.min(left, (t1 - now) / pace);
        now = step < left ? t1 : now + step * pace;
        left -= step;
        if (left <= 0) break;
      }
      return Math.min(duration, now);
    },
  };
}
