import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { TimedAction, TransientModel } from "./model.ts";
import { simulate } from "./simulate.ts";
import { smallSystem } from "./smallSystem.fixture.ts";

const off: TimedAction = { at: 60, action: { kind: "pumpSpeed", circuit: 0, pump: 0, speed: 0 } };
const on: TimedAction = { at: 1860, action: { kind: "pumpSpeed", circuit: 0, pump: 0, speed: 1 } };
const codes = (run: ReturnType<typeof simulate>) => run.events.map((event) => `${event.code} ${event.at}`);

/** The small system started from where it comes to rest. */
function atRest(change: Partial<TransientModel> = {}): TransientModel {
  const model = smallSystem(change);
  const { finalLevels } = simulate(model, [], { duration: 3600, record: false });
  return {
    ...model,
    vessels: model.vessels.map((vessel, i) => ({ ...vessel, startLevel: finalLevels[i] ?? vessel.startLevel })),
  };
}

describe("simulate", () => {
  it("leaves a system that is in balance where it is", () => {
    const model = atRest();
    const run = simulate(model, [], { duration: 86400, record: false });
    expect(run.status).toBe("finished");
    run.finalLevels.forEach((level, i) => {
      expect(Math.abs(level - (model.vessels[i]?.startLevel ?? 0))).toBeLessThan(1e-5);
    });
  });

  it("brings back on a power cut what geometry says: display to the siphon break, box to its inlet, lines to the sump", () => {
    const model = atRest();
    const run = simulate(model, [off], { duration: 3600 });
    const [display, box, first, last] = model.vessels;
    const rise = (i: number) => (run.finalLevels[i] ?? 0) - (model.vessels[i]?.startLevel ?? 0);
    // Analytic: areas times falls. The siphon break lies at 1.43 m, the lowest inlet at 1.33 m.
    const fromDisplay = (display?.area ?? 0) * ((display?.startLevel ?? 0) - 1.43);
    const fromBox = (box?.area ?? 0) * ((box?.startLevel ?? 0) - 1.33);
    const siphonPipe = (Math.PI / 4) * 0.034 ** 2 * 1.2;
    // The riser, 2 m of 27 mm between intake at 0.10 and nozzle at 1.42 m, keeps what stands below the sump's surface.
    const surface = run.finalLevels[3] ?? 0;
    const riser = (Math.PI / 4) * 0.027 ** 2 * 2 * (1 - (surface - 0.1) / (1.42 - 0.1));
    const gained = (first?.area ?? 0) * rise(2) + (last?.area ?? 0) * rise(3);
    // The siphon's pipe keeps what stands below the sump's surface; a film in the open channel counts for under 0.2 L.
    const kept = siphonPipe * ((surface - 0.3) / (1.33 - 0.3) > 0 ? (surface - 0.2) / (1.33 - 0.2) : 0);
    expect(gained).toBeGreaterThan(fromDisplay + fromBox + riser + siphonPipe - kept - 0.3e-3);
    expect(gained).toBeLessThan(fromDisplay + fromBox + riser + siphonPipe + 0.3e-3);
    expect(run.finalLevels[0]).toBeCloseTo(1.43, 5);
    expect(codes(run)).toContain("outlet/uncovered nozzle");
    expect(codes(run)).toContain("siphon/lost siphon");
  });

  it("comes back to the same levels after a power cut and a restart, its siphon primed again", () => {
    const model = atRest();
    const run = simulate(model, [off, on], { duration: 7200, record: false });
    run.finalLevels.forEach((level, i) => {
      expect(Math.abs(level - (model.vessels[i]?.startLevel ?? 0))).toBeLessThan(1e-4);
    });
    expect(codes(run)).toContain("siphon/primed siphon");
    expect(codes(run)).toContain("circuit/full return");
  });

  it("lets the next drain join when one is blocked, and tells when it does", () => {
    const run = simulate(atRest(), [{ at: 10, action: { kind: "drainBlocked", drain: 0, share: 1 } }], {
      duration: 1800,
    });
    expect(codes(run)).toContain("drain/starts dry");
    expect(run.booked.spilled.every((volume) => volume === 0)).toBe(true);
    expect(run.drainPeak[2]).toBeGreaterThan(1e-4);
  });

  it("counts what goes over the rim when all drains are blocked", () => {
    const blocked = [0, 1, 2].map(
      (drain): TimedAction => ({ at: 10, action: { kind: "drainBlocked", drain, share: 1 } }),
    );
    const model = atRest();
    // A deep return chamber: the pump can empty itself into the display and over its rim.
    const vessels = model.vessels.map((vessel) => ({
      ...vessel,
      rim: vessel.id === "display" ? vessel.startLevel + 0.005 : vessel.rim,
    }));
    const run = simulate({ ...model, vessels }, blocked, { duration: 3600, record: false });
    const spilled = run.booked.spilled.reduce((sum, volume) => sum + volume, 0);
    expect(codes(run)).toContain("rim/over display");
    expect(codes(run)).toContain("pump/drawsAir return");
    expect(spilled).toBeGreaterThan(0.002);
    expect(run.volumeError).toBeLessThan(1e-9);
  });

  it("keeps the display full behind a check valve that holds, and not behind one that stands open", () => {
    const model = atRest();
    const circuits = model.circuits.map((circuit) => ({
      ...circuit,
      network: {
        ...circuit.network,
        links: circuit.network.links.map((link) => (link.kind === "pipe" ? { ...link, checkValve: true } : link)),
      },
      checkValves: ["riser"],
    }));
    const held = simulate({ ...model, circuits }, [off], { duration: 3600, record: false });
    expect(held.finalLevels[0]).toBeGreaterThan(1.4499);
    for (const leak of [1, 0.2]) {
      const stuck: TimedAction = { at: 0, action: { kind: "checkValves", circuit: 0, leak } };
      const leaking = simulate({ ...model, circuits }, [stuck, off], { duration: 3600, record: false });
      expect(leaking.finalLevels[0]).toBeCloseTo(1.43, 4);
    }
  });

  it("drains the display to the nozzle where the siphon break is clogged", () => {
    const clogged: TimedAction = { at: 0, action: { kind: "siphonBreak", circuit: 0, outlet: 0, works: false } };
    const run = simulate(atRest(), [clogged, off], { duration: 3600, record: false });
    expect(run.finalLevels[0]).toBeCloseTo(1.42, 5);
  });

  it("evaporates at the stated rate for ten days, then lets the pump draw air", () => {
    const flow = 8e-8;
    const model = atRest();
    const run = simulate({ ...model, evaporation: [{ vessel: 0, flow }] }, [], { duration: 864000, record: false });
    expect(run.status).toBe("finished");
    expect(run.booked.evaporated).toBeCloseTo(flow * 864000, 6);
    // Analytic: the return chamber pays for all but the little that display and box give up as the flow falls.
    const last = model.vessels[3];
    const inReach = (last?.area ?? 0) * ((last?.startLevel ?? 0) - 0.1);
    const dry = run.events.find((event) => event.code === "pump/drawsAir");
    expect(dry?.t).toBeGreaterThan((1 * inReach) / flow);
    expect(dry?.t).toBeLessThan((1.05 * inReach) / flow);
    // A pump given up lets the water in its line follow the sump without end: quiet days cost next to nothing.
    expect(run.events.filter((event) => event.code === "pump/givenUp").length).toBe(1);
    expect(run.steps).toBeLessThan(3000);
  });

  it("says the same at a hundredth of the tolerance, over a power cut, a day and ten days, to a tenth of a millimetre", () => {
    const model = atRest();
    const furs: TimedAction = { at: 0, action: { kind: "drainBlocked", drain: 0, share: 1, over: 80_000 } };
    const airy = { ...model, evaporation: [{ vessel: 0, flow: 3e-8 }] };
    const cases = [
      { of: model, actions: [off], duration: 600 },
      { of: model, actions: [off, on], duration: 2000 },
      { of: model, actions: [furs], duration: 40_000 },
      { of: airy, actions: [furs], duration: 86_400 },
      { of: airy, actions: [], duration: 864_000 },
    ];
    for (const { of, actions, duration } of cases) {
      const usual = simulate(of, actions, { duration, record: false });
      const fine = simulate(of, actions, { duration, record: false, levelTolerance: 1e-7 });
      usual.finalLevels.forEach((level, i) => {
        expect(Math.abs(level - (fine.finalLevels[i] ?? 0))).toBeLessThan(1e-4);
      });
      usual.ranges.forEach((range, i) => {
        expect(Math.abs(range.highest - (fine.ranges[i]?.highest ?? 0))).toBeLessThan(1e-4);
      });
    }
  });

  it("lets a line that leaves the display siphon it down to its intake and no further, whether or not its pump has power", () => {
    const model = atRest();
    const [back] = model.circuits;
    if (!back) throw new Error("no circuit");
    const { upper: _, ...line } = back;
    const feed = {
      ...line,
      id: "feed",
      source: 0,
      intakeElevation: 1.3,
      outlets: [{ id: "below", node: "out", vessel: 2, elevation: 0.2, breakElevation: 0.2 }],
      pumps: back.pumps.map((pump) => ({ ...pump, speed: 0 })),
    };
    const run = simulate({ ...model, circuits: [feed] }, [], { duration: 7200, record: false });
    // Analytic: nothing flows once the intake lies in the air.
    expect(run.finalLevels[0]).toBeCloseTo(1.3, 5);
    expect(run.ranges[0]?.lowest).toBeGreaterThan(1.3 - 1e-5);
    expect(codes(run)).not.toContain("pump/drawsAir feed");
    const start = { at: 3600, action: { kind: "pumpSpeed", circuit: 0, pump: 0, speed: 1 } } as const;
    const started = simulate({ ...model, circuits: [feed] }, [start], { duration: 7200, record: false });
    expect(started.finalLevels[0]).toBeCloseTo(1.3, 5);
    expect(started.events.find((event) => event.code === "pump/drawsAir")?.t).toBe(3600);
  });

  it("starts a top-off left to itself again where the level has fallen meanwhile, and stops it where it is too high", () => {
    const model = atRest({ evaporation: [{ vessel: 3, flow: 1e-6 }] });
    const reservoir = { id: "reservoir", floor: 0, area: 0.1, rim: Infinity, rimLength: 0, startLevel: 0.5 };
    const level = model.vessels[3]?.startLevel ?? 0;
    const topped = {
      ...model,
      vessels: [...model.vessels, reservoir],
      topOff: { reservoir: 4, to: 3, flow: 2e-5, onLevel: level - 0.004, offLevel: level },
    };
    const mode = (at: number, kind: "auto" | "off" | "open"): TimedAction => ({
      at,
      action: { kind: "topOff", mode: kind },
    });
    const late = simulate(topped, [mode(0, "off"), mode(7200, "auto")], { duration: 14_400, record: false });
    expect(late.events.find((event) => event.code === "topOff/on")?.t).toBe(7200);
    // Analytic: two hours' loss of 7.2 L, made good at 72 L/h less the 3.6 L/h that go on, takes seven minutes.
    expect(late.finalLevels[3]).toBeGreaterThan(level - 0.0045);
    const early = simulate(topped, [mode(0, "open"), mode(600, "auto")], { duration: 1200, record: false });
    expect(early.events.find((event) => event.code === "topOff/off")?.t).toBe(600);
    expect(early.finalLevels[4]).toBeCloseTo(0.5 - (2e-5 * 600) / 0.1, 6);
  });

  it("lets a pump that hunts go on while a top-off brings it water, until what it lifts runs over", () => {
    const model = atRest();
    const [display, box, first, last] = model.vessels;
    if (!display || !box || !first || !last) throw new Error("vessels");
    const reservoir = { id: "reservoir", floor: 0, area: 0.1, rim: Infinity, rimLength: 0, startLevel: 0.3 };
    const reach = last.area * (last.startLevel - 0.1);
    // Box and display drowned to one level by all that the pump can reach, and a rim five millimetres above that.
    const brimful = (reach + display.area * display.startLevel + box.area * box.startLevel) / (display.area + box.area);
    const vessels = [{ ...display, rim: brimful + 0.005 }, { ...box, rim: brimful + 0.2 }, first, last, reservoir];
    const topOff = { reservoir: 4, to: 3, flow: 2e-5, onLevel: last.startLevel - 0.004, offLevel: last.startLevel };
    const blocked = [0, 1, 2].map(
      (drain): TimedAction => ({ at: 10, action: { kind: "drainBlocked", drain, share: 1 } }),
    );
    const run = simulate({ ...model, vessels, topOff }, blocked, { duration: 3600, record: false });
    const alone = simulate({ ...model, vessels: vessels.slice(0, 4) }, blocked, { duration: 3600, record: false });
    expect(codes(alone)).toContain("pump/givenUp return");
    // Switched off and on again it tries anew.
    const again = [
      { ...off, at: 2000 },
      { ...on, at: 2600 },
    ];
    const tried = simulate({ ...model, vessels: vessels.slice(0, 4) }, [...blocked, ...again], {
      duration: 3600,
      record: false,
    });
    const givenUp = alone.events.find((event) => event.code === "pump/givenUp")?.t ?? Number.NaN;
    expect(givenUp).toBeLessThan(2000);
    expect(tried.events.some((event) => event.t > 2600 && event.code === "pump/drawsAir")).toBe(true);
    expect(alone.booked.spilled[0]).toBe(0);
    expect(run.events.filter((event) => event.code === "pump/drawsAir").length).toBeGreaterThan(3);
    // Analytic: the rim has room for 4.2 L more; the reservoir holds 30 L.
    expect(run.booked.spilled[0]).toBeGreaterThan(0.01);
    expect(run.booked.spilled[0]).toBeLessThan(0.03);
  });

  it("keeps every litre, no volume below nothing and every number finite, whatever happens in whatever order", () => {
    const action = fc.oneof(
      fc.record({
        kind: fc.constant("pumpSpeed" as const),
        circuit: fc.constant(0),
        pump: fc.constant(0),
        speed: fc.constantFrom(0, 0.4, 0.7, 1),
      }),
      fc.record({
        kind: fc.constant("drainBlocked" as const),
        drain: fc.integer({ min: 0, max: 2 }),
        share: fc.constantFrom(0, 0.3, 0.9, 1),
        over: fc.constantFrom(0, 100),
      }),
      fc.record({
        kind: fc.constant("checkValves" as const),
        circuit: fc.constant(0),
        leak: fc.constantFrom(0, 0.1, 1),
      }),
      fc.record({
        kind: fc.constant("siphonBreak" as const),
        circuit: fc.constant(0),
        outlet: fc.constant(0),
        works: fc.boolean(),
      }),
      fc.record({ kind: fc.constant("topOff" as const), mode: fc.constantFrom("auto", "off", "open") }),
    );
    const actions = fc.array(fc.record({ at: fc.double({ min: 0, max: 4000, noNaN: true }), action }), {
      maxLength: 12,
    });
    const share = fc.double({ min: 0.3, max: 2, noNaN: true });
    fc.assert(
      fc.property(actions, share, share, fc.double({ min: 0.2, max: 1, noNaN: true }), (list, areas, boxes, start) => {
        const model = smallSystem({
          evaporation: [
            { vessel: 0, flow: 1e-6 },
            { vessel: 3, flow: 1e-6 },
          ],
          topOff: { reservoir: 4, to: 3, flow: 2e-5, onLevel: 0.24, offLevel: 0.25 },
        });
        const vessels = model.vessels.map((vessel) => ({
          ...vessel,
          area: vessel.area * (vessel.id === "box" ? boxes : areas),
          startLevel: vessel.floor + (vessel.startLevel - vessel.floor) * start,
        }));
        const reservoir = { id: "reservoir", floor: 0, area: 0.05, rim: Infinity, rimLength: 0, startLevel: 0.3 };
        const run = simulate({ ...model, vessels: [...vessels, reservoir] }, list as TimedAction[], { duration: 4000 });
        expect(run.status).toBe("finished");
        expect(run.volumeError).toBeLessThan(1e-9);
        for (const range of run.ranges) expect(Number.isFinite(range.highest + range.lowest)).toBe(true);
        run.ranges.forEach((range, i) => {
          const floor = i === 4 ? 0 : (vessels[i]?.floor ?? 0);
          expect(range.lowest).toBeGreaterThan(floor - 1e-5);
        });
        for (const row of run.record?.levels ?? []) expect(row.every(Number.isFinite)).toBe(true);
      }),
      { numRuns: 60, seed: 20261125 },
    );
  }, 120_000);
});
