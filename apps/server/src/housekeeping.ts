import type { Store } from "@tidewright/store";

const day = 24 * 60 * 60 * 1000;
/** How long a link that expired stays in the list of a job, so that the shop can see what it gave out [ms]. */
const linkStays = 30 * day;
/** How long a place that somebody signed in from is known; waits themselves are over within a day [ms]. */
const waitStays = 30 * day;

/** Where time comes from: now [ms since 1970], and something that is done again and again until it is stopped. */
export interface Clock {
  readonly now: () => number;
  readonly every: (milliseconds: number, work: () => void) => () => void;
}

/** The time of this machine; a server that has nothing else to do is not kept alive by it. */
const realClock: Clock = {
  now: Date.now,
  every: (milliseconds, work) => {
    const timer = setInterval(work, milliseconds);
    timer.unref();
    return () => clearInterval(timer);
  },
};

/** Forgets what is over: sessions that expired, links that expired thirty days ago, and places that nobody signed in from for
 *  as long.
 *  store; at now [ms since 1970]   -> nothing; a failure is told on the standard error and tried again the next day */
export async function keepHouse(store: Store, at: number): Promise<void> {
  try {
    await store.sessions.removeExpired(new Date(at).toISOString());
    await store.links.removeExpired(new Date(at - linkStays).toISOString());
    await store.waits.removeBefore(new Date(at - waitStays).toISOString());
  } catch (error) {
    process.stderr.write(`What is over could not be cleared away: ${String(error)}\n`);
  }
}

/** Keeps house at once and then every day.
 *  store; clock   -> what stops it */
export function keepHouseDaily(store: Store, clock: Clock = realClock): () => void {
  void keepHouse(store, clock.now());
  return clock.every(day, () => void keepHouse(store, clock.now()));
}
