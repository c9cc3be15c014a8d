import { demoCatalogue } from "@tidewright/catalogue";
import { describe, expect, it } from "vitest";
import { assess } from "./assess.ts";
import { rank } from "./rank.ts";
import { example } from "./testing/examples.ts";

const ranking = rank(example("waiting-room-reef.json"), demoCatalogue);

describe("ranking pumps", () => {
  it("accounts for every pump and pair", () => {
    expect(ranking.candidates.length).toBeGreaterThan(0);
    expect(ranking.candidates.length + ranking.rejections.length).toBe(ranking.considered);
    expect(ranking.considered).toBe(2 * demoCatalogue.pumps.length);
    for (const rejection of ranking.rejections) expect(rejection.causes.length).toBeGreaterThan(0);
  });

  // Self-consistency: two ways through the code, one with the pump in the network and one on the system curve.
  it.each([
    "first-tank-110.json",
    "hotel-lobby.json",
    "school-corridor-soft.json",
    "golden/04-closed-loop.json",
    "golden/06-ball-valve-throttled.json",
    "golden/09-basement-sump.json",
    "waiting-room-reef.json",
    "golden/08-hooper-method.json",
    "golden/10-eight-branches.json",
  ])("gives the flow that %s has with that pump in it", (file) => {
    const design = example(file);
    const { candidates, loop: index } = rank(design, demoCatalogue);
    for (const arrangement of ["single", "parallel"] as const) {
      const best = candidates.find((candidate) => candidate.arrangement === arrangement);
      const copy = structuredClone(design);
      const loop = copy.loops[index];
      const pump = loop?.pumps[0];
      if (!best || !loop || !pump) throw new Error(`no ${arrangement} candidate`);
      loop.arrangement = "parallel";
      loop.pumps = best.pumpIds.map((ref) => ({ ...pump, ref, speed: best.speed }));
      const again = assess(copy, demoCatalogue, { curves: false }).loops[index];
      expect(Math.abs((again?.flow ?? 0) / best.flow - 1)).toBeLessThan(1e-8);
    }
  });

  // Definition of Pareto dominance, by brute force.
  it("puts on the front whom nobody dominates", () => {
    const terms = ranking.candidates.map((c) => [
      c.price,
      c.horizonCost as number,
      c.watts,
      c.soundLevel,
      -c.flowMargin,
    ]);
    ranking.candidates.forEach((candidate, i) => {
      const mine = terms[i] as number[];
      const dominated = terms.some(
        (other) => other.every((x, k) => x <= (mine[k] as number)) && other.some((x, k) => x < (mine[k] as number)),
      );
      expect(candidate.paretoFront).toBe(!dominated);
    });
  });
});
