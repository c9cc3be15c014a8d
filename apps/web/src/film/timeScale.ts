import type { Film, WhatIfEvent } from "@tidewright/advice";

/** A stretch of time with an even scale: from t0 to t1 [s] it takes the shares u0 to u1 of the bar. */
export interface Stretch {
  readonly t0: number;
  readonly t1: number;
  readonly u0: number;
  readonly u1: number;
  /** True where time is drawn, and played, shorter than where most happens. */
  readonly shortened: boolean;
  /** True where time is drawn longer, so that events close together can be told apart. */
  readonly stretched: boolean;
}

/** Where a moment stands on the time bar, and back. */
export interface TimeScale {
  readonly duration: number;
  readonly stretches: readonly Stretch[];
  /** Place of a moment [s] along the bar, 0 to 1. */
  toShare(t: number): number;
  /** Moment [s] at a place along the bar. */
  toTime(share: number): number;
}

/** Returns a bar on which time runs evenly.
 *  duration [s]   -> scale
 *  Findings: none. Throws: never.
 *  Valid: any duration above 0.
 *  Source: analytic.
 *  Example: evenScale(200).toShare(50)  ->  0.25 */
export function evenScale(duration: number): TimeScale {
  return scaleOf(duration, [{ t0: 0, t1: duration, u0: 0, u1: 1, shortened: false, stretched: false }]);
}

/** Share of the bar that goes by time, by movement of the levels, and by the number of events. Own choice. */
const byTime = 0.15;
const byMovement = 0.5;
const byEvents = 0.35;
/** Least share of a stretch, so that none is lost to sight. */
const leastShare = 0.045;
/** Time runs this much faster or slower than where most happens before a stretch is called shortened or stretched. */
const differsBy = 3;
/** Events nearer than this share of the film belong together; with more groups than `mostGroups` it grows. */
const together = 0.02;
const mostGroups = 5;
/** The middle part of a gap's movement: what lies before and after is quiet where it takes `quietShare` of the gap. */
const [fromShare, toShare] = [0.03, 0.97];
const quietShare = 0.35;

/** Returns a bar on which long stretches without movement or events are shortened; in all others time runs at one pace.
 *  film its times and levels   events what happens   duration [s]   -> scale; even where nothing is worth shortening
 *  Findings: none. Throws: never.
 *  Valid: any film; the order of moments is kept and each keeps a place of its own.
 *  Source: own construction. */
export function shortenedScale(
  { times, levels }: Pick<Film, "times" | "levels">,
  events: readonly Pick<WhatIfEvent, "t">[],
  duration: number,
): TimeScale {
  const moved = movement(times, levels);
  const marks = [0, ...groupsOf(events, duration).flat(), duration].sort((a, b) => a - b);
  const cuts = new Set(marks);
  for (let i = 1; i < marks.length; i += 1) for (const cut of quietCuts(marks[i - 1]!, marks[i]!, moved)) cuts.add(cut);
  const knots = spaced(
    [...cuts].sort((a, b) => a - b),
    duration,
  );
  const total = moved.upTo(duration);
  const weights = knots.slice(1).map((t1, i) => {
    const t0 = knots[i]!;
    const happening = events.filter(({ t }) => t >= t0 && (t < t1 || t1 === duration)).length;
    return (
      (byTime * (t1 - t0)) / duration +
      (total > 0 ? (byMovement * (moved.upTo(t1) - moved.upTo(t0))) / total : 0) +
      (events.length > 0 ? (byEvents * happening) / events.length : 0)
    );
  });
  const shares = normalised(weights);
  const paces = shares.map((share, i) => (knots[i + 1]! - knots[i]!) / share);
  // The stretch with most of the bar sets the pace that the others are measured by.
  const pace = paces[shares.indexOf(Math.max(...shares))]!;
  const short = paces.map((own) => own > pace * differsBy);
  const long = paces.map((own) => own < pace / differsBy);
  if (!short.includes(true) && !long.includes(true)) return evenScale(duration);
  // All that is neither shares one pace, so that slopes in the plot can be compared.
  const even = shares.map((_, i) => !short[i] && !long[i]);
  const rest = sum(shares.filter((_, i) => even[i]));
  const restTime = sum(shares.map((_, i) => (even[i] ? knots[i + 1]! - knots[i]! : 0)));
  const stretches: Stretch[] = [];
  let u = 0;
  for (let i = 0; i < shares.length; i += 1) {
    const [t0, t1] = [knots[i]!, knots[i + 1]!];
    const share = even[i] ? (rest * (t1 - t0)) / restTime : shares[i]!;
    const before = stretches.at(-1);
    if (before !== undefined && !before.shortened && !before.stretched && even[i])
      stretches[stretches.length - 1] = { ...before, t1, u1: u + share };
    else stretches.push({ t0, t1, u0: u, u1: u + share, shortened: short[i]!, stretched: long[i]! });
    u += share;
  }
  return scaleOf(duration, stretches);
}

function scaleOf(duration: number, stretches: readonly Stretch[]): TimeScale {
  return {
    duration,
    stretches,
    toShare(t) {
      const { t0, t1, u0, u1 } = stretches.find((stretch) => t < stretch.t1) ?? stretches.at(-1)!;
      return Math.min(1, Math.max(0, u0 + ((u1 - u0) * (t - t0)) / (t1 - t0)));
    },
    toTime(share) {
      const { t0, t1, u0, u1 } = stretches.find((stretch) => share < stretch.u1) ?? stretches.at(-1)!;
      return Math.min(duration, Math.max(0, t0 + ((t1 - t0) * (share - u0)) / (u1 - u0)));
    },
  };
}

/** How far the level that moves most has moved up to a moment, summed over the rows [m]. */
function movement(times: readonly number[], levels: Film["levels"]) {
  const sums = [0];
  for (let i = 1; i < times.length; i += 1)
    sums.push(sums[i - 1]! + Math.max(0, ...levels.map((list) => Math.abs(list[i]! - list[i - 1]!))));
  const at = (t: number): number => {
    let row = 0;
    while (row < times.length - 1 && times[row + 1]! <= t) row += 1;
    const span = (times[row + 1] ?? times[row]!) - times[row]!;
    const share = span > 0 ? Math.max(0, t - times[row]!) / span : 0;
    return sums[row]! + ((sums[row + 1] ?? sums[row]!) - sums[row]!) * Math.min(1, share);
  };
  /** Moment at which a sum is reached, not before `from` [s]. */
  const when = (wanted: number): number => {
    const row = sums.findIndex((entry) => entry >= wanted);
    if (row <= 0) return times[0] ?? 0;
    const step = sums[row]! - sums[row - 1]!;
    const share = step > 0 ? (wanted - sums[row - 1]!) / step : 0;
    return times[row - 1]! + (times[row]! - times[row - 1]!) * share;
  };
  return { upTo: at, when };
}

/** First and last moment of each group of events that follow each other closely. */
function groupsOf(events: readonly { readonly t: number }[], duration: number): [number, number][] {
  const moments = events.map(({ t }) => t).sort((a, b) => a - b);
  for (let gap = together * duration; ; gap *= 1.5) {
    const groups: [number, number][] = [];
    for (const t of moments) {
      const last = groups.at(-1);
      if (last !== undefined && t - last[1] < gap) last[1] = t;
      else groups.push([t, t]);
    }
    if (groups.length <= mostGroups) return groups;
  }
}

/** Moments at which a gap between events falls quiet or wakes. */
function quietCuts(from: number, to: number, moved: ReturnType<typeof movement>): number[] {
  const [start, end] = [moved.upTo(from), moved.upTo(to)];
  // Half a millimetre over the whole gap is no movement that anybody sees.
  if (end - start < 5e-4) return [];
  const wakes = Math.max(from, moved.when(start + fromShare * (end - start)));
  const sleeps = Math.min(to, moved.when(start + toShare * (end - start)));
  return [
    ...(wakes - from > quietShare * (to - from) ? [wakes] : []),
    ...(to - sleeps > quietShare * (to - from) ? [sleeps] : []),
  ];
}

/** Knots apart from each other: a stretch of no length would have no place on the bar. */
function spaced(knots: readonly number[], duration: number): number[] {
  const least = duration * 1e-6;
  const kept = [0];
  for (const t of knots) if (t - kept.at(-1)! > least && duration - t > least) kept.push(t);
  return [...kept, duration];
}

/** Shares that add up to one, none below the least. */
function normalised(weights: readonly number[]): number[] {
  const all = sum(weights);
  const shares = weights.map((weight) => Math.max(leastShare, all > 0 ? weight / all : 1));
  return shares.map((share) => share / sum(shares));
}

const sum = (list: readonly number[]): number => list.reduce((total, entry) => total + entry, 0);
