import { demoCatalogue } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import { rank } from "../rank.ts";
import { example } from "../testing/examples.ts";

/** The golden design with a small return and a closed loop, which is its loop 1. */
const closedLoop = (change: (design: Design) => void) => example("golden/04-closed-loop.json", change);

/** Its closed loop without a pump that runs. */
const ways: readonly (readonly [string, (design: Design) => void])[] = [
  ["whose pump is not chosen yet", (design) => void delete design.loops[1]?.pumps[0]?.ref],
  ["whose pump stands still", (design) => void Object.assign(design.loops[1]?.pumps[0] ?? {}, standing)],
];
const standing = { ref: "ferrow-c150", speed: 0, controller: true };

describe.each(ways)("a closed loop %s", (_, empty) => {
  // Continuity: 15 to 30 display volumes an hour are wished of all water; the return moves 4088 L/h of them, on 645 L.
  it("is asked for what the wished movement of all water still lacks", () => {
    const design = closedLoop(empty);
    const { aim, wish, candidates, rejections, considered } = rank(design, demoCatalogue, { loop: 1 });
    const { volumes, overflow } = assess(design, demoCatalogue, { curves: false });
    const lacks = (turnover: number) => (turnover * volumes.display) / 3600 - overflow.flow;
    expect(wish.low / lacks(15)).toBeCloseTo(1, 9);
    expect(wish.high / lacks(30)).toBeCloseTo(1, 9);
    expect(aim / lacks(22.5)).toBeCloseTo(1, 9);
    expect(candidates.length).toBeGreaterThan(0);
    expect(candidates.length + rejections.length).toBe(considered);
    for (const { flow, reasons } of candidates) {
      expect(flow).toBeGreaterThan(0.998 * wish.low);
      expect(flow).toBeLessThan(1.002 * wish.high);
      expect(reasons.find(({ code }) => code === "lacking-movement")?.value).toBe(aim);
    }
    // With the best of them in it, the design has what it wishes.
    const copy = structuredClone(design);
    const [best] = candidates;
    const place = { placed: "external" as const, speed: best?.speed ?? 1 };
    if (copy.loops[1]) copy.loops[1].pumps = (best?.pumpIds ?? []).map((ref) => ({ ...place, ref }));
    if (copy.loops[1]) copy.loops[1].arrangement = "parallel";
    const codes = assess(copy, demoCatalogue, { curves: false }).findings.map(({ code }) => code);
    expect(codes).not.toContain("flow/total-turnover-low");
    expect(codes).not.toContain("flow/total-turnover-high");
  });

  it("takes every pump that meets it where no movement is wished, and says so", () => {
    const design = closedLoop((changed) => {
      empty(changed);
      delete changed.wishes.totalTurnover;
      delete changed.wishes.budget;
    });
    const { wish, candidates, rejections } = rank(design, demoCatalogue, { loop: 1 });
    expect(candidates.length).toBeGreaterThan(20);
    for (const { causes } of rejections)
      for (const { code } of causes) expect(["below-wish", "above-wish"]).not.toContain(code);
    for (const { flow, reasons } of candidates) {
      expect(flow).toBeGreaterThan(0);
      expect(flow).toBeLessThanOrEqual(wish.high);
      expect(reasons.map(({ code }) => code)).toContain("no-wish");
    }
  });

  it("takes any pump where the water moves enough already", () => {
    const design = closedLoop((changed) => {
      empty(changed);
      changed.wishes.totalTurnover = [
        { value: 2, unit: "1/h" },
        { value: 4, unit: "1/h" },
      ];
    });
    const { candidates } = rank(design, demoCatalogue, { loop: 1 });
    expect(candidates.length).toBeGreaterThan(0);
    expect(candidates[0]?.reasons.map(({ code }) => code)).toContain("no-wish");
  });
});

describe("a closed loop with a pump that runs", () => {
  it("is asked for what it gives, a fifth either way", () => {
    const design = closedLoop(() => {});
    const now = assess(design, demoCatalogue, { curves: false }).loops[1]?.flow ?? 0;
    const { aim, wish } = rank(design, demoCatalogue, { loop: 1 });
    expect(aim / now).toBeCloseTo(1, 9);
    expect(wish.low / now).toBeCloseTo(0.8, 9);
    expect(wish.high / now).toBeCloseTo(1.2, 9);
  });
});
