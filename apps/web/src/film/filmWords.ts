import { describeWhatIfEvent, type Verdict, type WhatIf, type WhatIfEvent } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import type { Format } from "@tidewright/editor";
import { englishWords, type Words } from "@tidewright/words";

/** Returns a moment as a clock shows it: "1:12", "0:31:00", "3 d 10:42:04".
 *  seconds [s]   -> text, whole seconds, cut off and not rounded: a clock never runs ahead
 *  Findings: none. Throws: never.
 *  Valid: 0 or more.
 *  Source: own words.
 *  Example: clockText(72.9)  ->  "1:12"
 *  Example: clockText(298324)  ->  "3 d 10:52:04" */
export function clockText(seconds: number): string {
  // A hair before a whole second counts as there: 60 reached by steps is 59.999…
  const whole = Math.max(0, Math.floor(seconds + 1e-6));
  const two = (n: number) => String(n).padStart(2, "0");
  const days = Math.floor(whole / 86_400);
  const hours = Math.floor((whole % 86_400) / 3600);
  const minutes = Math.floor((whole % 3600) / 60);
  const rest = two(whole % 60);
  if (days > 0) return `${days}\u00a0d ${two(hours)}:${two(minutes)}:${rest}`;
  return hours > 0 ? `${hours}:${two(minutes)}:${rest}` : `${minutes}:${rest}`;
}

/** Less than this counts as no change [m]. */
const unmoved = 5e-4;

/** Returns how far a level is from its rim, and how far from where it ran.
 *  level [m]   rim of the vessel, if any   start level while running   format units   words of the reader   -> words, and whether it is over
 *  Findings: none. Throws: never.
 *  Valid: any levels above one datum.
 *  Source: own words. */
export function levelWords(
  level: number,
  rim: number | undefined,
  start: number,
  format: Format,
  { say }: Words = englishWords,
): { readonly margin: string; readonly change: string; readonly over: boolean } {
  const over = rim !== undefined && level > rim;
  const moved = level - start;
  return {
    margin:
      rim === undefined
        ? ""
        : say(over ? "film.overRim" : "film.toRim", { length: format(Math.abs(rim - level), "length") }),
    change:
      Math.abs(moved) < unmoved
        ? say("film.asRunning")
        : say(moved > 0 ? "film.up" : "film.down", { length: format(Math.abs(moved), "length") }),
    over,
  };
}

/** Returns what happened last at a moment, in a sentence, and its place in the list; -1 before anything happened. */
export function latestEvent(events: readonly WhatIfEvent[], t: number): number {
  let last = -1;
  // A moment reached by steps may miss an event by rounding.
  for (const [i, event] of events.entries()) if (event.t <= t + 1e-6) last = i;
  return last;
}

/** Returns an event of a film in a sentence with a capital and without a full stop. */
export function eventSentence(event: WhatIfEvent, result: WhatIf, design: Design, words: Words = englishWords): string {
  return capital(describeWhatIfEvent(event, result.scenario, design, words));
}

/** Returns a text with its first letter large. Example: capital("the mains fail")  ->  "The mains fail" */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** How bad each verdict is, in the marks of the findings; nothing for what is well. */
export const verdictSeverity = {
  wet: "danger",
  unsolved: "danger",
  dry: "warning",
  tight: "warning",
  safe: undefined,
} as const satisfies Readonly<Record<Verdict, string | undefined>>;
