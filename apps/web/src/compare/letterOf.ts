/** Returns the letter of the n-th mark: A to Z, then A2.
 *  Example: letterOf(27)  ->  "B2" */
export function letterOf(place: number): string {
  const round = Math.floor(place / 26);
  return `${String.fromCharCode(65 + (place % 26))}${round === 0 ? "" : round + 1}`;
}
