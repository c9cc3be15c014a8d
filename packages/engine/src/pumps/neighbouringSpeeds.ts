/** The two of a maker's curves that a speed lies between, and the share of the upper one: the nearest alone outside them all.
 *  entries one or more, any order   speedRatio [-]   -> lower, upper, weight 0 to 1 */
export function neighbouringSpeeds<Entry extends { readonly speedRatio: number }>(
  entries: readonly Entry[],
  speedRatio: number,
): { readonly lower: Entry; readonly upper: Entry; readonly weight: number } {
  const sorted = entries.length === 1 ? entries : [...entries].sort((a, b) => a.speedRatio - b.speedRatio);
  let above = sorted.findIndex((entry) => entry.speedRatio >= speedRatio);
  if (above < 0) above = sorted.length - 1;
  const upper = sorted[above];
  const lower = sorted[Math.max(0, above - 1)];
  const span = upper.speedRatio - lower.speedRatio;
  const weight = span > 0 ? Math.min(1, Math.max(0, (speedRatio - lower.speedRatio) / span)) : 1;
  return { lower, upper, weight };
}
