import { englishWords, type Words } from "@tidewright/words";

/** Returns a time as a person says it, in at most two units: "8.4 s", "12 min 5 s", "5 h 12 min", "6 d 4 h".
 *  seconds [s]   words of the reader's language, English where left out   -> text with narrow no-break spaces between number and unit; "—" where the number is not finite
 *  Source: own words.
 *  Example: timeWords(725)  ->  "12\u202fmin 5\u202fs"
 *  Example: timeWords(864000)  ->  "10\u202fd" */
export function timeWords(seconds: number, words: Words = englishWords): string {
  if (!Number.isFinite(seconds)) return "—";
  const size = Math.abs(seconds);
  const sign = seconds < 0 ? "−" : "";
  if (size < 9.95) return words.decimal(`${sign}${Number(size.toFixed(1))}${space}s`);
  // The unit is chosen by the rounded time: 119.6 s is two minutes.
  for (const [unit, next, from] of scales) {
    const whole = Math.round(size / unit.size);
    if (whole * unit.size < from) return `${sign}${pair(whole, unit, next)}`;
  }
  return `${sign}${Math.round(size / day)}${space}d`;
}

const space = "\u202f";
const day = 86_400;

interface Scale {
  readonly size: number;
  readonly label: string;
  /** How many make one of the next. */
  readonly count: number;
}

const second: Scale = { size: 1, label: "s", count: 60 };
const minute: Scale = { size: 60, label: "min", count: 60 };
const hour: Scale = { size: 3600, label: "h", count: 24 };

/** Small unit, its larger neighbour's label, and the time from which the next pair says it better [s]. */
const scales: readonly (readonly [Scale, string, number])[] = [
  [second, "min", 2 * 3600],
  [minute, "h", 2 * day],
  [hour, "d", 100 * day],
];

function pair(whole: number, { label, count }: Scale, larger: string): string {
  const many = Math.floor(whole / count);
  const rest = whole - many * count;
  // Up to two minutes, seconds alone are easier to compare.
  if (many === 0 || (label === "s" && whole < 120)) return `${whole}${space}${label}`;
  return rest === 0 ? `${many}${space}${larger}` : `${many}${space}${larger} ${rest}${space}${label}`;
}
