import { describe, expect, it } from "vitest";
import { courseOf } from "./course.ts";
import { createPlayhead } from "./playhead.ts";
import { evenScale, type TimeScale } from "./timeScale.ts";

/** Frames that come when the test calls for them. */
function handFrames() {
  let waiting: ((now: number) => void)[] = [];
  return {
    ask: (step: (now: number) => void) => waiting.push(step),
    come(now: number) {
      const due = waiting;
      waiting = [];
      for (const step of due) step(now);
    },
  };
}

describe("the playhead of a film", () => {
  it("moves in the very first frame after play is pressed", () => {
    const frames = handFrames();
    const head = createPlayhead(() => courseOf(evenScale(200), 10), frames.ask);
    const seen: number[] = [];
    head.onMove((t) => seen.push(t));
    head.play();
    frames.come(1000);
    expect(seen).toHaveLength(1);
    expect(seen[0]).toBeCloseTo(10 / 60, 9);
  });

  it("plays ten times as fast as the water where asked to, whatever the rate of frames", () => {
    const frames = handFrames();
    const head = createPlayhead(() => courseOf(evenScale(200), 10), frames.ask);
    head.play();
    frames.come(0);
    const start = head.time;
    for (const now of [16, 50, 100, 180]) frames.come(now);
    expect(head.time - start).toBeCloseTo(1.8, 9);
  });

  it("stops at the end and tells so", () => {
    const frames = handFrames();
    const head = createPlayhead(() => courseOf(evenScale(5), 60), frames.ask);
    let told = 0;
    head.onPlay(() => {
      told += 1;
    });
    head.play();
    for (let now = 0; now < 1000; now += 50) frames.come(now);
    expect(head.time).toBe(5);
    expect(head.playing).toBe(false);
    expect(told).toBe(2);
  });

  it("does not run twice as fast when paused and played between two frames", () => {
    const frames = handFrames();
    const head = createPlayhead(() => courseOf(evenScale(200), 10), frames.ask);
    head.play();
    head.pause();
    head.play();
    frames.come(0);
    expect(head.time).toBeCloseTo(10 / 60, 9);
  });

  it("passes a shortened stretch within four seconds and keeps its pace elsewhere", () => {
    const scale: TimeScale = {
      ...evenScale(1800),
      stretches: [
        { t0: 0, t1: 100, u0: 0, u1: 0.8, shortened: false, stretched: false },
        { t0: 100, t1: 1800, u0: 0.8, u1: 1, shortened: true, stretched: false },
      ],
    };
    const { next } = courseOf(scale, 1);
    expect(next(50, 2)).toBeCloseTo(52, 9);
    // A second to the end of the first stretch, a second at 425 times the pace.
    expect(next(99, 2)).toBeCloseTo(100 + 1700 / 4, 9);
  });
});
