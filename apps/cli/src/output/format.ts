import { type Dimension, formatQuantity, unitSystems } from "@tidewright/units";

/** The unit systems that `--units` chooses from. */
export const systems = ["metric", "us", "imperial"] as const;

export type System = (typeof systems)[number];

/** Turns a number in SI into text with its unit. */
export type Format = (si: number, dimension: Dimension) => string;

/** Returns the formatter of a unit system; numbers that are not there become a dash. */
export function formatIn(system: System): Format {
  const units = unitSystems[system];
  return (si, dimension) => (Number.isFinite(si) ? formatQuantity(si, dimension, units[dimension]) : "—");
}

/** Returns a sum of money in its own currency, which no unit system changes. */
export function money(amount: number, currency: string): string {
  return Number.isFinite(amount) ? formatQuantity(amount, "money", currency) : "—";
}

/** Returns a share as whole per cent. */
export function percent(share: number): string {
  return Number.isFinite(share) ? `${Math.round(share * 100)}\u202f%` : "—";
}

/** Returns an interval as "low to high". */
export function between(format: Format, [low, high]: readonly [number, number], dimension: Dimension): string {
  return `${format(low, dimension)} to ${format(high, dimension)}`;
}

/** Returns a count with its word, in the plural where it is not one. */
export function counted(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? "" : "s"}`;
}
