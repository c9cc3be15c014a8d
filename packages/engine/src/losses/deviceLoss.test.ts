import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { deviceHeadLoss, deviceLoss } from "./deviceLoss.ts";

const points = [
  { flow: 0.0002, headLoss: 0.05 },
  { flow: 0.0005, headLoss: 0.3 },
  { flow: 0.0008, headLoss: 0.75 },
];

describe("a device with its own loss curve", () => {
  it("loses what the maker's points say, nothing without flow, and the same backward", () => {
    for (const { flow, headLoss } of points) {
      expect(deviceHeadLoss(points, flow).headLoss).toBeCloseTo(headLoss, 12);
      expect(deviceHeadLoss(points, -flow).headLoss).toBeCloseTo(-headLoss, 12);
    }
    expect(deviceHeadLoss(points, 0).headLoss).toBe(0);
  });

  it("follows the square law through one point (analytic)", () => {
    const one = deviceLoss([{ flow: 0.001, headLoss: 0.5 }]);
    expect(deviceHeadLoss(one, 0.0005)).toEqual({ headLoss: 0.125, slope: 500, extrapolated: false });
  });

  it("goes on beyond its last point at least as the square of the flow grows there, and says so", () => {
    const last = deviceHeadLoss(points, 0.0008);
    const beyond = deviceHeadLoss(points, 0.0016);
    expect(last.extrapolated).toBe(false);
    expect(beyond.extrapolated).toBe(true);
    expect(beyond.headLoss).toBeCloseTo(0.75 + 0.0008 * (last.slope + (0.75 / 0.0008 ** 2) * 0.0008), 12);
  });

  it("never loses less with more flow, has no step, and states its slope", () => {
    const device = deviceLoss(points);
    fc.assert(
      fc.property(fc.double({ min: -0.002, max: 0.002, noNaN: true }), (flow) => {
        const h = 1e-10;
        const numeric =
          (deviceHeadLoss(device, flow + h).headLoss - deviceHeadLoss(device, flow - h).headLoss) / (2 * h);
        const { slope } = deviceHeadLoss(device, flow);
        expect(slope).toBeGreaterThanOrEqual(0);
        expect(Math.abs(numeric - slope)).toBeLessThan(0.01);
      }),
    );
  });

  it("takes its points in any order and a (0, 0) among them", () => {
    const shuffled = [points[2], { flow: 0, headLoss: 0 }, points[0], points[1]] as const;
    expect(deviceHeadLoss(shuffled, 0.0004)).toEqual(deviceHeadLoss(points, 0.0004));
  });

  it("without any point loses nothing", () => {
    expect(deviceHeadLoss([], 0.001).headLoss).toBe(0);
  });

  it("refuses a loss that falls with flow, naming the point", () => {
    expect(() => deviceLoss([points[0], { flow: 0.0004, headLoss: 0.02 }])).toThrow(/0\.0004 m3\/s is 0\.02 m/);
    expect(() => deviceLoss([{ flow: -0.1, headLoss: 0.02 }])).toThrow(/rising flows above 0/);
  });
});
