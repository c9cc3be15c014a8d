import { readdirSync, readFileSync } from "node:fs";
import { demoCatalogue } from "@tidewright/catalogue";
import { type Design, readDesign } from "@tidewright/design";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Scenario, ScenarioAction } from "./scenario.ts";
import { whatIf } from "./whatIf.ts";

const examples = new URL("../../../../examples/", import.meta.url);
const designs = ["", "golden/"].flatMap((folder) =>
  readdirSync(new URL(folder, examples))
    .filter((name) => name.endsWith(".json"))
    .map((name): Design => {
      const reading = readDesign(readFileSync(new URL(folder + name, examples), "utf8"), demoCatalogue);
      if (!reading.ok) throw new Error(name);
      return reading.design;
    }),
);

/** A design with its sizes pulled about: what a user drags. */
function pulled(design: Design, shares: readonly number[]): Design {
  const by = (q: { value: number; unit: string }, i: number) => ({ ...q, value: q.value * (shares[i] ?? 1) });
  return {
    ...design,
    overflow: { ...design.overflow, weir: { ...design.overflow.weir, length: by(design.overflow.weir.length, 0) } },
    sump: {
      ...design.sump,
      operatingLevel: by(design.sump.operatingLevel, 1),
      chambers: design.sump.chambers.map((chamber) => ({ ...chamber, length: by(chamber.length, 2) })),
    },
    loops: design.loops.map((loop) => ({
      ...loop,
      pumps: loop.pumps.map((pump) => ({ ...pump, speed: Math.min(1, (pump.speed ?? 1) * (shares[3] ?? 1)) })),
    })),
    topOff: { reservoir: { value: 20, unit: "L" }, flow: { value: 30, unit: "L/h" } },
  };
}

const action = (design: Design): fc.Arbitrary<ScenarioAction> => {
  const loop = fc.integer({ min: 0, max: design.loops.length - 1 });
  const drain = fc.integer({ min: 0, max: design.drains.length - 1 });
  return fc.oneof(
    fc.constantFrom<ScenarioAction>(
      { kind: "powerOff" },
      { kind: "powerOn" },
      { kind: "topOffStops" },
      { kind: "topOffRuns" },
      { kind: "topOffSticksOpen" },
    ),
    fc.record({ kind: fc.constant("drainBlocks" as const), drain, share: fc.constantFrom(0, 0.4, 0.95, 1) }),
    fc.record({
      kind: fc.constant("drainBlocks" as const),
      drain,
      share: fc.constant(1),
      over: fc.double({ min: 10, max: 4000, noNaN: true }),
    }),
    fc.record({ kind: fc.constant("checkValvesLeak" as const), loop, share: fc.constantFrom(0, 0.05, 1) }),
    fc.record({ kind: fc.constant("siphonBreaksClog" as const), loop }),
    fc.record({
      kind: fc.constant("pumpSpeed" as const),
      loop,
      pump: fc.constant(0),
      speed: fc.constantFrom(0, 0.5, 1),
    }),
  );
};

const day = 86400;
const own = (duration: number, events: Scenario["events"], evaporation = true): Scenario => ({
  id: "own",
  kind: "own",
  subjects: [],
  duration,
  evaporation,
  events,
});
const named = (part: string): Design => {
  const design = designs.find(({ name }) => name.includes(part));
  if (!design) throw new Error(`no ${part}`);
  return design;
};

/** Designs and courses that once ran for ever, or did not end, and what they may cost now. */
const hard: readonly [string, () => Design, Scenario, number][] = [
  [
    "eight branches, no top-off for sixty days: a column a hair off the sump's level, and steps of days",
    () => named("ight branches"),
    own(60 * day, [{ at: 60, action: { kind: "topOffStops" } }]),
    3000,
  ],
  [
    "a return of a millimetre of pipe, power off: nothing but the pump itself to slow it",
    () => {
      const reef = named("Waiting-room");
      const [line] = reef.loops;
      if (!line) throw new Error("no loop");
      const run = [
        { kind: "pipe", series: "pn16-40", length: { value: 1, unit: "mm" } },
        { kind: "outlet", to: "display", depth: { value: 0, unit: "mm" }, siphonBreak: { value: 0, unit: "mm" } },
      ] as const;
      return { ...reef, loops: [{ ...line, run: [...run] }] };
    },
    own(1800, [{ at: 60, action: { kind: "powerOff" } }], false),
    2000,
  ],
  [
    "all drains blocked for sixty days: a pump that hunts as long as the top-off feeds it",
    () => named("Waiting-room"),
    own(
      60 * day,
      [0, 1, 2].map((drain) => ({ at: 10, action: { kind: "drainBlocks", drain, share: 1 } })),
    ),
    6000,
  ],
  [
    "power that flickers every five seconds",
    () => named("Waiting-room"),
    own(
      1200,
      Array.from({ length: 60 }, (_, i) => ({ at: 60 + 5 * i, action: { kind: i % 2 ? "powerOn" : "powerOff" } })),
      false,
    ),
    6000,
  ],
];

describe("what-if over hard courses", () => {
  it.each(hard)("comes to an end in steps that can be counted: %s", (_name, design, scenario, most) => {
    const played = whatIf(design(), demoCatalogue, scenario, false);
    expect(played.status).toBe("finished");
    expect(played.volumeError).toBeLessThan(1e-9);
    expect(played.steps).toBeLessThan(most);
    for (const vessel of played.vessels) expect(vessel.lowest).toBeGreaterThan(vessel.floor - 1e-5);
  });
});

describe("what-if over random designs and random events", () => {
  it("keeps every litre to 1e-9, no level below its floor, every number finite, and always ends", () => {
    const share = fc.double({ min: 0.5, max: 1.8, noNaN: true });
    const arbitrary = fc.integer({ min: 0, max: designs.length - 1 }).chain((index) => {
      const design = designs[index] as Design;
      return fc.record({
        design: fc.array(share, { minLength: 4, maxLength: 4 }).map((shares) => pulled(design, shares)),
        events: fc.array(fc.record({ at: fc.double({ min: 0, max: 5000, noNaN: true }), action: action(design) }), {
          maxLength: 8,
        }),
        evaporation: fc.boolean(),
      });
    });
    fc.assert(
      fc.property(arbitrary, ({ design, events, evaporation }) => {
        const scenario: Scenario = { id: "own", kind: "own", subjects: [], duration: 6000, evaporation, events };
        const played = whatIf(design, demoCatalogue, scenario, true);
        expect(played.status).toBe("finished");
        expect(played.volumeError).toBeLessThan(1e-9);
        for (const vessel of played.vessels) {
          expect(Number.isFinite(vessel.highest + vessel.lowest + vessel.end)).toBe(true);
          expect(vessel.lowest).toBeGreaterThan(vessel.floor - 1e-5);
        }
        for (const row of played.film?.levels ?? []) expect(row.every(Number.isFinite)).toBe(true);
        expect(played.spilled).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 60, seed: 3 },
    );
  }, 120_000);
});
