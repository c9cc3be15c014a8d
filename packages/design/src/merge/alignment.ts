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

/** Returns which entries of a list of numbers have certainly stayed where they are: the places that belong to every longest
 *  ascending subsequence. Where two neighbours changed places either may have moved, so neither is steady.
 *  Example: [...steady([1, 2, 0])]  ->  [0, 1]
 *  Example: [...steady([1, 0, 2])]  ->  [2] */
export function steady(numbers: readonly number[]): Set<number> {
  // The longest ascent that ends at each place, and the longest that begins there.
  const ending = ascents(numbers);
  const beginning = ascents(numbers.map((number) => -number).reverse()).reverse();
  const most = Math.max(0, ...ending);
  const at = new Map<number, number[]>();
  ending.forEach((rank, place) => {
    if (rank + beginning[place]! - 1 === most) at.set(rank, [...(at.get(rank) ?? []), place]);
  });
  // Every longest ascent has one entry of each rank; where there is but one candidate it belongs to all of them.
  return new Set([...at.values()].flatMap((places) => (places.length === 1 ? places : [])));
}

/** Length of the longest ascent that ends at each place. */
function ascents(numbers: readonly number[]): number[] {
  const tails: number[] = [];
  return numbers.map((number) => {
    let low = 0;
    let high = tails.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (tails[middle]! < number) low = middle + 1;
      else high = middle;
    }
    tails[low] = number;
    return low + 1;
  });
}
