/** The moment that a film shows. It moves many times a second, so it lives outside React and tells painters directly. */
export interface Playhead {
  readonly time: number;
  readonly playing: boolean;
  /** Goes to a moment [s] at once; play goes on from there. */
  seek(t: number): void;
  play(): void;
  pause(): void;
  /** Tells of every move, before the frame in which it is seen; returns how to stop listening. */
  onMove(listener: (t: number) => void): () => void;
  /** Tells when play begins and ends. */
  onPlay(listener: () => void): () => void;
}

/** How the playhead moves by itself. */
export interface Course {
  /** Moment reached from a moment after a span on the wall's clock [s]. */
  next(t: number, elapsed: number): number;
  readonly duration: number;
}

/** Longest span between two frames that counts [s]: a page that was hidden does not leap. */
const longestFrame = 0.1;

/** Returns a playhead at the start.
 *  course how it moves, asked at every frame   frames asks for a frame of the screen   -> Playhead */
export function createPlayhead(
  course: () => Course,
  frames: (step: (now: number) => void) => unknown = (step) => requestAnimationFrame(step),
): Playhead {
  const movers = new Set<(t: number) => void>();
  const players = new Set<() => void>();
  let time = 0;
  let playing = false;
  /** Counts plays, so that a frame asked for by an earlier one is not taken for this one's. */
  let turn = 0;

  const go = (t: number) => {
    time = Math.min(course().duration, Math.max(0, t));
    for (const listener of movers) listener(time);
  };
  const set = (now: boolean) => {
    if (playing === now) return;
    playing = now;
    turn += 1;
    for (const listener of players) listener();
  };
  const run = () => {
    const own = turn;
    let before: number | undefined;
    const step = (now: number) => {
      if (own !== turn) return;
      // The first frame already moves: whoever pressed play should see it.
      const elapsed = before === undefined ? 1 / 60 : Math.min(longestFrame, (now - before) / 1000);
      before = now;
      go(course().next(time, elapsed));
      if (time >= course().duration) set(false);
      else frames(step);
    };
    frames(step);
  };

  return {
    get time() {
      return time;
    },
    get playing() {
      return playing;
    },
    seek: go,
    play() {
      if (playing) return;
      set(true);
      run();
    },
    pause: () => set(false),
    onMove(listener) {
      movers.add(listener);
      return () => movers.delete(listener);
    },
    onPlay(listener) {
      players.add(listener);
      return () => players.delete(listener);
    },
  };
}
