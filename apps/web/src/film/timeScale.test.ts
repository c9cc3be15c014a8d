import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { evenScale, shortenedScale } from "./timeScale.ts";

/** A power cut as a film has it: still for a minute, movement for another, then nothing. */
const times = [0, 60, 60, 70, 90, 120, 1800];
const levels = [[0.5, 0.5, 0.5, 0.48, 0.46, 0.458, 0.458]];
const events = [{ t: 60 }, { t: 72 }, { t: 118 }];

describe("the time bar of a film", () => {
  it("runs evenly where nothing is shortened", () => {
    const scale = evenScale(400);
    expect(scale.toShare(100)).toBe(0.25);
    expect(scale.toTime(0.25)).toBe(100);
  });

  it("gives most of the bar to the minute in which levels move, and says what it shortens", () => {
    const scale = shortenedScale({ times, levels }, events, 1800);
    expect(scale.toShare(120) - scale.toShare(60)).toBeGreaterThan(0.5);
    const quiet = scale.stretches.filter(({ shortened }) => shortened);
    expect(quiet.length).toBeGreaterThan(0);
    expect(quiet.at(-1)?.t1).toBe(1800);
    expect(quiet.at(-1)!.t0).toBeLessThan(200);
  });

  it("lets time run at one pace wherever it is not shortened", () => {
    const { stretches } = shortenedScale({ times, levels }, events, 1800);
    const paces = stretches
      .filter(({ shortened, stretched }) => !shortened && !stretched)
      .map(({ t0, t1, u0, u1 }) => (t1 - t0) / (u1 - u0));
    for (const pace of paces) expect(pace).toBeCloseTo(paces[0]!, 6);
  });

  it("shortens nothing where a level falls evenly from end to end", () => {
    const even = Array.from({ length: 50 }, (_, i) => i * 36);
    const scale = shortenedScale({ times: even, levels: [even.map((t) => 1 - t / 1e4)] }, [], 1764);
    expect(scale.stretches).toEqual([{ t0: 0, t1: 1764, u0: 0, u1: 1, shortened: false, stretched: false }]);
  });

  it("stretches a minute of trouble after days of slow fall, and does not call the days quiet", () => {
    const days = [0, 60, 100_000, 200_000, 300_000, 300_020, 300_040, 300_060, 864_000];
    const falls = [[0.2, 0.2, 0.15, 0.1, 0.05, 0.06, 0.05, 0.06, 0.06]];
    const trouble = [{ t: 60 }, { t: 300_000 }, { t: 300_020 }, { t: 300_040 }, { t: 300_060 }];
    const { stretches } = shortenedScale({ times: days, levels: falls }, trouble, 864_000);
    const fall = stretches.find(({ t0, t1 }) => t0 <= 100_000 && t1 >= 200_000);
    expect(fall?.shortened).toBe(false);
    expect(stretches.find(({ t0 }) => t0 === 300_000)?.stretched).toBe(true);
  });

  it("keeps every moment's order and finds it again, whatever happens when", () => {
    const film = fc.record({
      moments: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 2, maxLength: 40 }),
      moves: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 40, maxLength: 40 }),
      events: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 60 }),
      duration: fc.double({ min: 1, max: 1e6, noNaN: true }),
    });
    fc.assert(
      fc.property(film, ({ moments, moves, events: happening, duration }) => {
        const rows = [0, ...moments.map((share) => share * duration).sort((a, b) => a - b), duration];
        const level = rows.map((_, i) => moves[i % moves.length]!);
        const scale = shortenedScale(
          { times: rows, levels: [level] },
          happening.map((share) => ({ t: share * duration })),
          duration,
        );
        expect(scale.toShare(0)).toBe(0);
        expect(scale.toShare(duration)).toBeCloseTo(1, 9);
        let before = -1;
        for (let i = 0; i <= 50; i += 1) {
          const t = (i / 50) * duration;
          const share = scale.toShare(t);
          expect(share).toBeGreaterThanOrEqual(before);
          expect(Math.abs(scale.toTime(share) - t)).toBeLessThan(1e-6 * duration);
          before = share;
        }
      }),
    );
  });
});
