import { describe, expect, it } from "vitest";
import type { TransientModel } from "./model.ts";
import { simulate } from "./simulate.ts";

const g = 9.80665;

/** Two boxes of 0.02 and 0.03 m2 with one tube between them that loses K = 2 and has no friction. */
function boxes(change: Partial<TransientModel> = {}, outside = 0.3): TransientModel {
  return {
    water: { kinematicViscosity: 1e-6 },
    vessels: [
      { id: "inside", floor: 0, area: 0.02, rim: 1, rimLength: 1, startLevel: 0.5 },
      { id: "outside", floor: 0, area: 0.03, rim: 1, rimLength: 1, startLevel: outside },
    ],
    weirs: [],
    siphons: [
      {
        id: "siphon",
        from: 0,
        to: 1,
        tubes: { count: 1, bore: 0.02, length: 0, roughness: 0, lossCoefficient: 2, laminarLoss: 0 },
        mouth: 0.1,
      },
    ],
    drains: [],
    circuits: [],
    evaporation: [],
    pumpTimeConstant: 1,
    ...change,
  };
}

describe("a siphon between two boxes", () => {
  it("levels them in the time that an integral gives, and loses no water", () => {
    // Analytic: dz/dt = -(a/A) sqrt(2 g z / K), 1/A = 1/A1 + 1/A2, so t = 2 A (sqrt z0 - sqrt z1) / (a sqrt(2 g / K)).
    const area = 1 / (1 / 0.02 + 1 / 0.03);
    const bore = (Math.PI / 4) * 0.02 ** 2;
    const time = (2 * area * (Math.sqrt(0.2) - Math.sqrt(0.05))) / (bore * Math.sqrt((2 * g) / 2));
    const run = simulate(boxes(), [], { duration: time, record: false });
    expect((run.finalLevels[0] as number) - (run.finalLevels[1] as number)).toBeCloseTo(0.05, 4);
    expect(run.volumeError).toBeLessThan(1e-12);
    const rest = simulate(boxes(), [], { duration: 3600, record: false });
    // Analytic: (0.02 x 0.5 + 0.03 x 0.3) / 0.05 = 0.38 m.
    for (const level of rest.finalLevels) expect(level).toBeCloseTo(0.38, 5);
  });

  it("runs back where the box outside is the higher", () => {
    const run = simulate(boxes({}, 0.7), [], { duration: 3600, record: false });
    // Analytic: (0.02 x 0.5 + 0.03 x 0.7) / 0.05 = 0.62 m.
    for (const level of run.finalLevels) expect(level).toBeCloseTo(0.62, 5);
  });

  it("carries nothing once air has got in", () => {
    const lost = { at: 5, action: { kind: "siphonAir", siphon: 0 } } as const;
    const before = simulate(boxes(), [], { duration: 5, record: false });
    const run = simulate(boxes(), [lost], { duration: 600, record: false });
    run.finalLevels.forEach((level, i) => {
      expect(level).toBeCloseTo(before.finalLevels[i] as number, 5);
    });
  });

  it("draws air by itself when the water falls to its ends, and is not primed again by water that comes back", () => {
    // The box outside empties to the air (evaporation stands in for a drain) until the mouths are bare at 0.1 m.
    const run = simulate(boxes({ evaporation: [{ vessel: 1, flow: 1e-4 }] }), [], { duration: 3600, record: false });
    expect(run.events.map((event) => `${event.code} ${event.at}`)).toContain("tubes/lost siphon");
    // The box inside keeps what stood at the ends when they came out.
    expect(run.finalLevels[0]).toBeGreaterThan(0.099);
    expect(run.finalLevels[1]).toBeLessThan(0.01);
    const bare = simulate(boxes({}, 0.05), [], { duration: 600, record: false });
    expect(bare.finalLevels).toEqual([0.5, 0.05]);
  });
});
