import { demoCatalogue } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import { describe, expect, it } from "vitest";
import { rank } from "./rank.ts";
import type { Reason, ReasonCode } from "./ranking.ts";
import { example, exampleFiles } from "./testing/examples.ts";
import { describeReason } from "./wording/describeReason.ts";

const mm = (value: number) => ({ value, unit: "mm" });

/** A short wide lift of 300 mm, beside the sump, that asks for a flow. */
function easyLift(litresPerHour: number): Design {
  return example("first-tank-110.json", (design) => {
    design.display.standHeight = mm(100);
    design.sump.operatingLevel = mm(160);
    design.wishes.returnFlow = { value: litresPerHour, unit: "L/h" };
    delete design.wishes.budget;
    for (const drain of design.drains) for (const part of drain.run) if (part.kind === "pipe") part.series = "pn16-50";
    const loop = design.loops[0];
    if (!loop) throw new Error("no loop");
    loop.suction = [{ kind: "pipe", series: "pn16-50", length: mm(200) }];
    loop.pumps = [{ ref: "calder-fold-p30", placed: "external" }];
    loop.run = [
      { kind: "pipe", series: "pn16-50", length: mm(600), rise: mm(300) },
      { kind: "outlet", to: "display", depth: mm(20) },
    ];
  });
}

const designs: readonly Design[] = [
  ...exampleFiles.map((file) => example(file)),
  // A trickle through pumps for much more.
  example("first-tank-110.json", (design) => {
    design.wishes.returnFlow = { value: 80, unit: "L/h" };
    delete design.wishes.budget;
  }),
  // More than the last point, at 2760 L/h and 0.73 m.
  easyLift(2850),
];

/** The closed loop round the display, its pump not chosen yet, with and without a wish for all water movement. */
const closedLoops: readonly Design[] = [[15, 30], undefined].map((wish) =>
  example("golden/04-closed-loop.json", (design) => {
    design.loops = design.loops.slice(1).concat(design.loops.slice(0, 1));
    delete design.loops[0]?.pumps[0]?.ref;
    delete design.wishes.totalTurnover;
    if (wish)
      design.wishes.totalTurnover = [
        { value: 15, unit: "1/h" },
        { value: 30, unit: "1/h" },
      ];
  }),
);

/** Every reason there is, checked by the compiler. */
const given: Readonly<Record<ReasonCode, true>> = {
  "meets-aim": true,
  "within-wish": true,
  "below-wish": true,
  "above-wish": true,
  "lacking-movement": true,
  "no-wish": true,
  "too-weak-to-lift": true,
  "wrong-place": true,
  "wrong-voltage": true,
  "over-budget": true,
  "over-sound": true,
  "near-shutoff": true,
  "near-runout": true,
  "beyond-curve": true,
  "needs-controller": true,
  "efficient-point": true,
  "spare-flow": true,
  cheapest: true,
  "lowest-cost-over-horizon": true,
  quietest: true,
  "least-power": true,
  "two-pumps-redundant": true,
  "drain-cannot-carry": true,
  "circuit-overload": true,
  "in-tank-pump": true,
};

describe("the reasons of a ranking", () => {
  const reasons = new Map<ReasonCode, Reason>();
  for (const design of [...designs, ...closedLoops]) {
    const { candidates, rejections } = rank(design, demoCatalogue, closedLoops.includes(design) ? { loop: 0 } : {});
    const all = [...candidates.flatMap((entry) => entry.reasons), ...rejections.flatMap((entry) => entry.causes)];
    for (const reason of all) if (!reasons.has(reason.code)) reasons.set(reason.code, reason);
  }

  it.each(Object.entries(given))("name %s where it is so", (code) => {
    const reason = reasons.get(code as ReasonCode);
    expect([...reasons.keys()]).toContain(code);
    if (!reason) return;
    const words = describeReason(reason, (si, dimension) => `${si.toPrecision(4)} [${dimension}]`);
    expect(words).not.toMatch(/[{}—]|NaN|undefined/);
    expect(words).not.toMatch(/-\d/);
  });

  // Arithmetic: 80 % of a breaker (NFPA 70 section 210.20(A)) less what else hangs there is what a pump may draw. A 16 A circuit
  // carries 12.8 A for hours, 2944 W at 230 V; no pump for this tank draws what is left at 2943 W, some draw less than at 2900 W.
  it("tell a circuit that a pump would load beyond its limit, and no other", () => {
    const loaded = (watts: number) =>
      rank(
        example("first-tank-110.json", (design) => {
          const circuit = design.power.circuits?.[0];
          if (!circuit) throw new Error("no circuit");
          circuit.otherLoad = { value: watts, unit: "W" };
          design.power.voltage = { value: 230, unit: "V" };
        }),
        demoCatalogue,
      );
    const overloads = (watts: number) =>
      loaded(watts).rejections.flatMap(({ causes }) => causes.filter(({ code }) => code === "circuit-overload"));
    expect(overloads(1000)).toEqual([]);
    expect(loaded(1000).candidates.length).toBeGreaterThan(0);
    const full = loaded(2943);
    expect(full.candidates).toEqual([]);
    for (const { value, limit } of overloads(2943)) {
      expect(limit).toBeCloseTo(12.8, 12);
      expect(value).toBeGreaterThan(12.8);
    }
    expect(overloads(2943).length).toBeGreaterThan(overloads(2900).length);
    expect(overloads(2900).length).toBeGreaterThan(0);
  });
});
