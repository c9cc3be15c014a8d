/** Most cells of an alignment table; longer lists are matched by their unique entries alone. */
const mostCells = 1_000_000;

/** Returns the pairs, in order and never crossing, with the greatest sum of worth: a longest common subsequence where
 *  worth is 1 for equal entries and 0 for others. Nothing of no worth is paired; of equal sums the earliest pairs win. */
export function alignment(n: number, m: number, worth: (i: number, j: number) => number): [number, number][] {
  if (n === 0 || m === 0 || n * m > mostCells) return [];
  // best[i][j]: greatest sum from entries i and j on.
  const width = m + 1;
  const best = new Float64Array((n + 1) * width);
  for (let i = n - 1; i >= 0; i--)
    for (let j = m - 1; j >= 0; j--) {
      const skip = Math.max(best[(i + 1) * width + j]!, best[i * width + j + 1]!);
      const w = worth(i, j);
      best[i * width + j] = w > 0 ? Math.max(skip, w + best[(i + 1) * width + j + 1]!) : skip;
    }
  const pairs: [number, number][] = [];
  let i = 0;
  let j = 0;
  while (i < n && j < m) {
    const here = best[i * width + j]!;
    const w = worth(i, j);
    if (w > 0 && here === w + best[(i + 1) * width + j + 1]!) pairs.push([i++, j++]);
    else if (here === best[(i + 1) * width + j]) i++;
    else j++;
  }
  return pairs;
}

/** Returns which entries of a list of numbers stay where they are when the others are moved until it ascends: the places
 *  of a longest ascending subsequence, by the patience method (D. E. Knuth, TAOCP vol. 3, section 5.1.4). */
export function ascending(numbers: readonly number[]): Set<number> {
  const tails: number[] = [];
  const before: number[] = [];
  numbers.forEach((number, place) => {
    let low = 0;
    let high = tails.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (numbers[tails[middle]!]! < number) low = middle + 1;
      else high = middle;
    }
    before[place] = low > 0 ? tails[low - 1]! : -1;
    tails[low] = place;
  });
  const stay = new Set<number>();
  for (let place = tails.at(-1) ?? -1; place >= 0; place = before[place]!) stay.add(place);
  return stay;
}
