import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createOde, type OdeEvents, type OdeOptions, type OdeSystem } from "./index.ts";

const options = (size: number, more: Partial<OdeOptions> = {}): OdeOptions => ({
  relativeTolerance: 1e-9,
  absoluteTolerance: new Float64Array(size).fill(1e-10),
  maximumSteps: 100_000,
  ...more,
});

/** Turns on the unit circle: sin t and cos t. */
const circle: OdeSystem = {
  size: 2,
  derivative(y, out) {
    out[0] = y[1];
    out[1] = -y[0];
  },
};

/** Time itself: every event has a known time, whatever the steps. */
const clock: OdeSystem = {
  size: 1,
  derivative(_y, out) {
    out[0] = 1;
  },
};

function eventsOf(direction: readonly number[], ...functions: readonly ((y: Float64Array) => number)[]): OdeEvents {
  return {
    count: functions.length,
    direction: Int8Array.from(direction),
    values(y, out) {
      functions.forEach((value, i) => {
        out[i] = value(y);
      });
    },
  };
}

describe("events", () => {
  it("stop the run where a hole's head falls to a mark, at Torricelli's time", () => {
    // Analytic: t = (2/k) (sqrt h0 - sqrt h1), h' = -k sqrt h.
    const k = 0.003;
    const vessel: OdeSystem = {
      size: 1,
      derivative(y, out) {
        out[0] = -k * Math.sqrt(Math.max(0, y[0]));
      },
    };
    const y = new Float64Array([0.4]);
    const result = createOde(vessel).run(
      0,
      y,
      1e4,
      options(1),
      eventsOf([-1], (h) => h[0] - 0.1),
    );
    expect(result).toMatchObject({ status: "event", event: 0, events: [0] });
    expect(Math.abs(result.t - (2 / k) * (Math.sqrt(0.4) - Math.sqrt(0.1)))).toBeLessThan(1e-4);
    expect(y[0]).toBeLessThanOrEqual(0.1);
    expect(y[0]).toBeGreaterThan(0.1 - 1e-9);
  });

  it("heed the direction, stop just past the crossing and do not fire again on going on", () => {
    // Analytic: sin t passes 0.5 rising at pi/6, falling at 5 pi/6.
    const ode = createOde(circle);
    for (const [direction, times] of [
      [1, [Math.PI / 6, Math.PI / 6 + 2 * Math.PI]],
      [-1, [(5 * Math.PI) / 6, (5 * Math.PI) / 6 + 2 * Math.PI]],
      [0, [Math.PI / 6, (5 * Math.PI) / 6, Math.PI / 6 + 2 * Math.PI]],
    ] as const) {
      const y = new Float64Array([0, 1]);
      const watch = eventsOf([direction], (state) => state[0] - 0.5);
      let t = 0;
      for (const time of times) {
        const result = ode.run(t, y, 20, options(2), watch);
        expect(result.status).toBe("event");
        expect(result.t).toBeCloseTo(time, 7);
        // Past the crossing, or on it: the first quarter turn rises, the second falls.
        expect((y[0] - 0.5) * Math.sign(y[1])).toBeGreaterThanOrEqual(0);
        t = result.t;
      }
    }
  });

  it("that are zero at the start wait until they have left zero, on the far side until they have been back", () => {
    const ode = createOde(circle);
    const zero = new Float64Array([0, 1]);
    const watch = eventsOf([0], (state) => state[0]);
    const first = ode.run(0, zero, 20, options(2), watch);
    expect(first.t).toBeCloseTo(Math.PI, 7);
    // Rising only, and above already: the next rise is a turn later.
    const above = new Float64Array([Math.sin(1), Math.cos(1)]);
    expect(
      ode.run(
        1,
        above,
        20,
        options(2),
        eventsOf([1], (state) => state[0]),
      ).t,
    ).toBeCloseTo(2 * Math.PI, 7);
    const still = new Float64Array([0]);
    const never = eventsOf(
      [0, 0],
      () => 0,
      () => Number.NaN,
    );
    expect(createOde(clock).run(0, still, 5, options(1), never).status).toBe("end");
  });

  it("fire in order of time, however many a step holds, and each once", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.001, max: 9.9, noNaN: true }), { minLength: 1, maxLength: 6 }),
        (times) => {
          const y = new Float64Array([0]);
          const ode = createOde(clock);
          // Nonlinear values, so that the location has something to find.
          const watch = eventsOf(
            times.map(() => 1),
            ...times.map((time) => (state: Float64Array) => (state[0] - time) * (1 + (state[0] - time) ** 2)),
          );
          const fired: number[] = [];
          let t = 0;
          for (let i = 0; i < 20; i++) {
            const result = ode.run(t, y, 10, options(1, { firstStep: 10 }), watch);
            if (result.status !== "event") break;
            expect(result.events).toContain(result.event);
            for (const event of result.events) expect(Math.abs(result.t - times[event])).toBeLessThan(3e-9);
            fired.push(...result.events);
            expect(result.t).toBeGreaterThanOrEqual(t);
            t = result.t;
          }
          expect(fired.map((event) => event).sort((a, b) => a - b)).toEqual(times.map((_, i) => i));
        },
      ),
      { numRuns: 500, endOnFailure: true },
    );
  });

  it("name all that fall together", () => {
    const y = new Float64Array([0]);
    const watch = eventsOf(
      [1, -1, 1],
      (s) => s[0] - 2,
      (s) => 2 - s[0],
      (s) => s[0] - 3,
    );
    const result = createOde(clock).run(0, y, 10, options(1, { firstStep: 10 }), watch);
    expect(result.events).toEqual([0, 1]);
    expect(result.t).toBeCloseTo(2, 8);
  });

  it("cut the step that onStep sees at the event", () => {
    const y = new Float64Array([0, 1]);
    const state = new Float64Array(2);
    let end = 0;
    let check = 0;
    const result = createOde(circle).run(
      0,
      y,
      20,
      options(2),
      eventsOf([1], (s) => s[0] - 0.5),
      (step) => {
        end = step.t1;
        step.at(step.t1, state);
        check = step.keep().t1;
      },
    );
    expect(end).toBe(result.t);
    expect(check).toBe(result.t);
    expect(state[0]).toBeCloseTo(y[0], 14);
  });

  it("are found at the very end of a run", () => {
    const y = new Float64Array([0]);
    const result = createOde(clock).run(
      0,
      y,
      4,
      options(1),
      eventsOf([1], (s) => s[0] - (4 - 1e-12)),
    );
    expect(result).toMatchObject({ status: "event", event: 0 });
    expect(result.t).toBeCloseTo(4, 11);
  });
});
