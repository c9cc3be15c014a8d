/** Returns the level of several independent sounds together: L = 10 log10 sum 10^(Li/10).
 *  levels [dB or dB(A), all alike, any number]   -> level [dB]; -Infinity for none at all
 *  Findings: none. Throws: never.
 *  Valid: sounds without fixed phase, heard at the same place; a difference under 3 dB is hard to hear.
 *  Source: ISO 1683 and any acoustics text: sound powers add.
 *  Example: addSoundLevels([45, 40])  ->  46.19 */
export function addSoundLevels(levels: readonly number[]): number {
  // Taking the loudest out first keeps every power between 0 and 1, however large the levels.
  let loudest = Number.NEGATIVE_INFINITY;
  for (const level of levels) loudest = Math.max(loudest, level);
  if (!Number.isFinite(loudest)) return loudest;
  let power = 0;
  for (const level of levels) power += 10 ** ((level - loudest) / 10);
  return loudest + 10 * Math.log10(power);
}
