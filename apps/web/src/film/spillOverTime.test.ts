import { describe, expect, it } from "vitest";
import { spillOverTime } from "./spillOverTime.ts";

const times = [0, 10, 20, 30];

// Expected values are analytic: the whole volume at the end, shares by the integral of depth^1.5.
describe("water over a rim as a film goes on", () => {
  it("adds up to what the simulation booked", () => {
    const [spilled] = spillOverTime({ times, levels: [[0.1, 0.3, 0.3, 0.1]] }, [
      { rim: 0.2, spilled: 0.004, highestAt: 10 },
    ]);
    expect(spilled?.[0]).toBe(0);
    expect(spilled?.at(-1)).toBeCloseTo(0.004, 15);
    // Symmetric in time: half of it by the middle.
    expect((spilled![1]! + spilled![2]!) / 2).toBeCloseTo(0.002, 12);
  });

  it("is nothing for a vessel that stays below its rim or has none", () => {
    const levels = [
      [0.1, 0.1, 0.1, 0.1],
      [0.1, 0.1, 0.1, 0.1],
    ];
    expect(
      spillOverTime({ times, levels }, [
        { rim: 0.2, spilled: 0, highestAt: 0 },
        { spilled: 0, highestAt: 0 },
      ]),
    ).toEqual([[], []]);
  });

  it("comes at the highest moment where no row shows it", () => {
    const [spilled] = spillOverTime({ times, levels: [[0.1, 0.2, 0.1, 0.1]] }, [
      { rim: 0.2, spilled: 0.001, highestAt: 10 },
    ]);
    expect(spilled).toEqual([0, 0.001, 0.001, 0.001]);
  });
});
