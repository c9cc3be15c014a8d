import type { Words } from "@tidewright/words";

/** Returns an instant as short as its nearness allows: the time today, else the day, with the year where it is another.
 *  at instant, ISO 8601   now   words of the reader's language   -> text */
export function whenWords(at: string, now: Date, words: Words): string {
  const then = new Date(at);
  const sameYear = then.getFullYear() === now.getFullYear();
  const sameDay = sameYear && then.getMonth() === now.getMonth() && then.getDate() === now.getDate();
  if (sameDay) return words.instant(then, { hour: "2-digit", minute: "2-digit", hourCycle: "h23" });
  if (sameYear) return words.instant(then, { day: "numeric", month: "short" });
  return words.instant(then, { day: "numeric", month: "short", year: "numeric" });
}

/** Returns the day of an instant. */
export function dayWords(at: string, words: Words): string {
  return words.instant(at, { day: "numeric", month: "short", year: "numeric" });
}

/** Returns the size of a file in the unit that fits it, decimal multiples (IEC 80000-13).
 *  bytes   words   -> text such as "1.4 MB" */
export function sizeWords(bytes: number, words: Words): string {
  if (bytes < 1000) return `${words.number(bytes)}\u00a0B`;
  const [value, unit] = bytes < 1e6 ? [bytes / 1e3, "kB"] : [bytes / 1e6, "MB"];
  return `${words.number(value, { maximumFractionDigits: value < 10 ? 1 : 0 })}\u00a0${unit}`;
}
