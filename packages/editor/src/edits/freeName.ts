/** Returns a name that is not taken yet: the wished one with the next free number behind it.
 *  Example: freeName("loop", ["loop", "loop 2"])  ->  "loop 3"
 *  Example: freeName("side", [])  ->  "side" */
export function freeName(wish: string, taken: readonly string[]): string {
  if (!taken.includes(wish)) return wish;
  const stem = wish.replace(/ \d+$/, "");
  for (let number = 2; ; number += 1) if (!taken.includes(`${stem} ${number}`)) return `${stem} ${number}`;
}
