import type { Film } from "@tidewright/advice";

/** One moment of a film, kept and written over so that playing makes no garbage. SI, in the order of the film's lists. */
export interface FilmFrame {
  /** Moment [s]. */
  time: number;
  readonly levels: Float64Array;
  weirFlow: number;
  readonly drainFlow: Float64Array;
  readonly drainFill: Float64Array;
  readonly outletFlow: readonly Float64Array[];
  readonly lineFill: Float64Array;
}

/** Returns an empty moment with room for all that a film tells.
 *  film   -> frame of zeros; lines that the film leaves out count as full
 *  Findings: none. Throws: never.
 *  Valid: any film.
 *  Source: own construction. */
export function startFrame(film: Film): FilmFrame {
  return {
    time: 0,
    levels: new Float64Array(film.levels.length),
    weirFlow: 0,
    drainFlow: new Float64Array(film.drainFlow.length),
    drainFill: new Float64Array(film.drainFill.length),
    outletFlow: film.outletFlow.map((outlets) => new Float64Array(outlets.length)),
    lineFill: new Float64Array(film.lineFill.length).fill(1),
  };
}

/** Returns the last row that is not later than a moment; of a moment that stands twice the later, as things are after it.
 *  times moments, rising [s]   t moment [s]   -> index, 0 before the first
 *  Findings: none. Throws: never.
 *  Valid: one moment or more.
 *  Source: binary search.
 *  Example: rowAt([0, 5, 5, 9], 5)  ->  2 */
export function rowAt(times: readonly number[], t: number): number {
  let low = 0;
  let high = times.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (times[middle]! <= t) low = middle;
    else high = middle;
  }
  return low;
}

/** Reads a film at a moment into a frame, on straight lines between its rows.
 *  film   t moment [s]; before the first and after the last row these count   frame written over
 *  Findings: none. Throws: never.
 *  Valid: a frame made for this film.
 *  Source: linear interpolation; the film's rows lie so close that it is good to 0.2 mm. */
export function readFrame(film: Film, t: number, frame: FilmFrame): void {
  const { times } = film;
  const row = rowAt(times, t);
  const next = Math.min(row + 1, times.length - 1);
  const span = times[next]! - times[row]!;
  const share = span > 0 ? Math.min(1, Math.max(0, (t - times[row]!) / span)) : 0;
  const read = (list: readonly number[]): number => {
    const from = list[row] ?? 0;
    return from + ((list[next] ?? from) - from) * share;
  };
  const fill = (into: Float64Array, lists: readonly (readonly number[])[]) => {
    for (let i = 0; i < into.length; i += 1) if (lists[i]!.length > 0) into[i] = read(lists[i]!);
  };
  frame.time = t;
  frame.weirFlow = read(film.weirFlow);
  fill(frame.levels, film.levels);
  fill(frame.drainFlow, film.drainFlow);
  fill(frame.drainFill, film.drainFill);
  fill(frame.lineFill, film.lineFill);
  for (let i = 0; i < frame.outletFlow.length; i += 1) fill(frame.outletFlow[i]!, film.outletFlow[i]!);
}
