import { describe, expect, it } from "vitest";
import { createOde, type KeptStep, keptStepAt, type OdeOptions, type OdeSystem } from "./index.ts";

/** Options with one tolerance for all. */
function within(size: number, tolerance: number, more: Partial<OdeOptions> = {}): OdeOptions {
  return {
    relativeTolerance: tolerance,
    absoluteTolerance: new Float64Array(size).fill(tolerance),
    maximumSteps: 100_000,
    ...more,
  };
}

/** Two coupled nonlinear components with the solution cos^2 t and sin t cos t in y0 = a, y1 = b: a' = -2 b, b' = 2 a - 1, made
 *  nonlinear by u = exp(a), v = b^3 + b. */
const nonlinear: OdeSystem = {
  size: 2,
  derivative(y, out) {
    const b = cubicRoot(y[1]);
    out[0] = -2 * b * y[0];
    out[1] = (3 * b * b + 1) * (2 * Math.log(y[0]) - 1);
  },
  jacobian(y, _f0, out) {
    const b = cubicRoot(y[1]);
    const byV = 1 / (3 * b * b + 1);
    out[0] = -2 * b;
    out[1] = -2 * y[0] * byV;
    out[2] = ((3 * b * b + 1) * 2) / y[0];
    out[3] = 6 * b * byV * (2 * Math.log(y[0]) - 1);
  },
};

/** The b of b^3 + b = v. */
function cubicRoot(v: number): number {
  let b = v / 2;
  for (let i = 0; i < 50; i++) b -= (b * b * b + b - v) / (3 * b * b + 1);
  return b;
}

function exact(t: number): [number, number] {
  const b = Math.sin(t) * Math.cos(t);
  return [Math.exp(Math.cos(t) ** 2), b ** 3 + b];
}

/** Errors at the end and, from dense output, the largest in between, with steps of fixed length. */
function errorsWithStep(h: number): { end: number; dense: number } {
  const y = Float64Array.from(exact(0));
  const state = new Float64Array(2);
  let dense = 0;
  createOde(nonlinear).run(0, y, 1.5, within(2, 1e6, { firstStep: h, largestStep: h }), undefined, (step) => {
    // Local error of the polynomial alone: the ends are taken as computed.
    for (const share of [0.2, 0.35, 0.5, 0.65, 0.8]) {
      const t = step.t0 + share * (step.t1 - step.t0);
      step.at(t, state);
      dense = Math.max(dense, Math.abs(state[0] - exact(t)[0]), Math.abs(state[1] - exact(t)[1]));
    }
  });
  return { end: Math.hypot(y[0] - exact(1.5)[0], y[1] - exact(1.5)[1]), dense };
}

/** Robertson's reaction, three components in the ratio 1 : 1e-5 : 1. */
const robertson: OdeSystem = {
  size: 3,
  derivative(y, out) {
    const slow = 0.04 * y[0];
    const back = 1e4 * y[1] * y[2];
    const fast = 3e7 * y[1] * y[1];
    out[0] = -slow + back;
    out[1] = slow - back - fast;
    out[2] = fast;
  },
};

/** A chain of open vessels joined by holes: volumes [m3], levels V/A, Torricelli flow with the root rounded off below 1 mm. */
function chain(areas: readonly number[], hole: number): OdeSystem {
  const flow = (difference: number): number =>
    (hole * Math.sqrt(19.6) * difference) / Math.sqrt(Math.sqrt(difference * difference + 1e-6));
  return {
    size: areas.length,
    derivative(y, out) {
      out.fill(0);
      for (let i = 0; i + 1 < areas.length; i++) {
        const q = flow(y[i] / areas[i] - y[i + 1] / areas[i + 1]);
        out[i] -= q;
        out[i + 1] += q;
      }
    },
  };
}

describe("the integrator", () => {
  it("is of order 4, and its dense output of order 3 or better, on a nonlinear problem", () => {
    // Analytic solution; order = log2 of the error ratio when the step is halved.
    const errors = [20, 40, 80, 160].map((count) => errorsWithStep(1.5 / count));
    for (let i = 1; i < errors.length; i++) {
      const order = Math.log2(errors[i - 1].end / errors[i].end);
      const denseOrder = Math.log2(errors[i - 1].dense / errors[i].dense);
      expect(order).toBeGreaterThan(3.8);
      expect(order).toBeLessThan(4.5);
      expect(denseOrder).toBeGreaterThan(3.5);
    }
  });

  it("keeps the error near the tolerance", () => {
    for (const tolerance of [1e-4, 1e-6, 1e-8]) {
      const y = Float64Array.from(exact(0));
      const result = createOde(nonlinear).run(0, y, 1.5, within(2, tolerance));
      expect(result.status).toBe("end");
      expect(Math.hypot(y[0] - exact(1.5)[0], y[1] - exact(1.5)[1])).toBeLessThan(20 * tolerance);
    }
  });

  it("follows Robertson's reaction over eleven decades of time in some hundred steps", () => {
    // Published: E. Hairer, G. Wanner, Solving ODEs II, 2nd ed. 1996, section IV.10, ROBER; Mazzia, Magherini, Test Set for IVP
    // Solvers 2.4 (2008), reference solution at t = 1e11. Values from memory; that at t = 40 computed apart from the project
    // (SciPy Radau, relative tolerance 1e-10), at 0.4 and 4e3 as printed by SUNDIALS' example cvRoberts_dns.
    const y = new Float64Array([1, 0, 0]);
    const ode = createOde(robertson);
    let t = 0;
    let steps = 0;
    const goTo = (end: number): void => {
      const result = ode.run(t, y, end, {
        relativeTolerance: 1e-8,
        absoluteTolerance: new Float64Array([1e-12, 1e-14, 1e-12]),
        maximumSteps: 10_000,
      });
      expect(result.status).toBe("end");
      steps += result.steps;
      t = end;
    };
    goTo(0.4);
    expect(y[0]).toBeCloseTo(0.98517, 5);
    expect(y[1] * 1e5).toBeCloseTo(3.3864, 3);
    goTo(40);
    expect(Math.abs(y[0] / 0.7158270687194 - 1)).toBeLessThan(1e-8);
    goTo(4e3);
    expect(y[0]).toBeCloseTo(0.1832, 4);
    goTo(1e11);
    expect(Math.abs(y[0] / 0.2083340149701255e-7 - 1)).toBeLessThan(1e-5);
    expect(Math.abs(y[1] / 0.8333360770334713e-13 - 1)).toBeLessThan(1e-5);
    expect(Math.abs(y[2] / 0.999999979166505 - 1)).toBeLessThan(1e-12);
    expect(steps).toBeLessThan(2000);
  });

  it("takes long steps where an explicit method could not", () => {
    // Analytic: y' = -1e8 (y - cos) would hold an explicit method to steps of 2e-8 s; time is a component, since f does not name it.
    const stiff: OdeSystem = {
      size: 2,
      derivative(y, out) {
        out[0] = 1;
        out[1] = -1e8 * (y[1] - Math.cos(y[0]));
      },
    };
    const y = new Float64Array([0, 0]);
    const result = createOde(stiff).run(0, y, 10, within(2, 1e-6));
    expect(result.steps).toBeLessThan(200);
    expect(y[1]).toBeCloseTo(Math.cos(10), 5);
  });

  it("keeps the water of a closed chain of vessels over 10,000 steps", () => {
    const areas = [0.3, 0.002, 0.1, 0.05, 0.2, 0.004, 0.15, 0.25];
    const start = Float64Array.from(areas, (area, i) => area * (0.1 + 0.05 * ((i * 5) % 8)));
    const total = start.reduce((sum, volume) => sum + volume, 0);
    const rough = chain(areas, 1e-4);
    // By differences with the sum named, and without.
    const drift = (system: OdeSystem, bound: number): void => {
      const y = start.slice();
      const state = new Float64Array(areas.length);
      let worst = 0;
      const result = createOde(system).run(0, y, 2000, within(8, 1e-7, { largestStep: 0.2 }), undefined, (step) => {
        step.at(step.t0 + 0.37 * (step.t1 - step.t0), state);
        worst = Math.max(worst, Math.abs(state.reduce((sum, volume) => sum + volume, 0) / total - 1));
      });
      expect(result.steps).toBeGreaterThan(10_000);
      expect(Math.abs(y.reduce((sum, volume) => sum + volume, 0) / total - 1)).toBeLessThan(bound);
      expect(worst).toBeLessThan(bound);
    };
    drift({ ...rough, invariants: [new Float64Array(8).fill(1)] }, 1e-13);
    drift(rough, 1e-10);
  });

  it("keeps weighted sums of separate parts, whichever vessel is empty", () => {
    // Two closed pairs, one counted in litres, one starting empty.
    const pairs: OdeSystem = {
      size: 4,
      derivative(y, out) {
        const first = Math.sin(y[0]) - 0.3 * y[1];
        out[0] = -first;
        out[1] = first;
        const second = 0.7 * y[2] - y[3] * y[3];
        out[2] = -second;
        out[3] = 1000 * second;
      },
      invariants: [new Float64Array([1, 1, 0, 0]), new Float64Array([0, 0, 1000, 1])],
    };
    const y = new Float64Array([0, 2, 0, 3]);
    createOde(pairs).run(0, y, 50, within(4, 1e-9));
    expect(y[0] + y[1]).toBeCloseTo(2, 13);
    expect(1000 * y[2] + y[3]).toBeCloseTo(3, 12);
  });

  it("empties a vessel through a hole whose root is rounded off, in few steps", () => {
    // Analytic: Torricelli, 0.27 m2, 20 mm hole, Cd 0.61, from 0.40 m to 0.10 m in 201.2 s.
    const opening = (0.61 * Math.PI * 0.01 ** 2 * Math.sqrt(2 * 9.80665)) / 0.27;
    const vessel: OdeSystem = {
      size: 1,
      derivative(y, out) {
        out[0] = y[0] > 0 ? (-opening * y[0]) / Math.sqrt(y[0] + 1e-12) : 0;
      },
    };
    const y = new Float64Array([0.4]);
    const ode = createOde(vessel);
    const time = (2 / opening) * (Math.sqrt(0.4) - Math.sqrt(0.1));
    expect(time).toBeCloseTo(201.2, 1);
    ode.run(0, y, time, within(1, 1e-9));
    expect(y[0]).toBeCloseTo(0.1, 7);
    const emptying = ode.run(time, y, 1000, within(1, 1e-7));
    expect(emptying.status).toBe("end");
    expect(emptying.steps).toBeLessThan(100);
    expect(Math.abs(y[0])).toBeLessThan(1e-6);
  });

  it("repeats itself to the last bit, and starts again where it stopped", () => {
    const first = Float64Array.from(exact(0));
    const second = Float64Array.from(exact(0));
    const ode = createOde(nonlinear);
    ode.run(0, first, 1, within(2, 1e-7));
    ode.run(0, second, 1, within(2, 1e-7));
    expect(second).toEqual(first);
    const half = Float64Array.from(exact(0));
    const stop = ode.run(0, half, 0.5, within(2, 1e-9));
    ode.run(0.5, half, 1, within(2, 1e-9, { firstStep: stop.nextStep }));
    expect(half[0]).toBeCloseTo(exact(1)[0], 7);
  });

  it("hands out steps that can be kept and read later", () => {
    const kept: KeptStep[] = [];
    const y = Float64Array.from(exact(0));
    const result = createOde(nonlinear).run(0, y, 1.5, within(2, 1e-7), undefined, (step) => kept.push(step.keep()));
    expect(kept.length).toBe(result.steps);
    const state = new Float64Array(2);
    for (const step of kept.map((one) => structuredClone(one))) {
      for (const t of [step.t0, 0.5 * (step.t0 + step.t1), step.t1]) {
        keptStepAt(step, t, state);
        expect(Math.abs(state[0] - exact(t)[0])).toBeLessThan(3e-6);
      }
    }
    expect(kept.at(-1)?.t1).toBe(1.5);
    keptStepAt(kept[kept.length - 1], 1.5, state);
    expect(state).toEqual(y);
  });
});

describe("an integration that cannot go on", () => {
  const growing: OdeSystem = {
    size: 1,
    derivative(y, out) {
      out[0] = y[0] * y[0];
    },
  };

  it("says so before a solution that leaves for infinity", () => {
    // Analytic: y = 1/(1 - t).
    const y = new Float64Array([1]);
    const result = createOde(growing).run(0, y, 2, within(1, 1e-6));
    expect(result.status).toBe("stepTooSmall");
    expect(result.t).toBeCloseTo(1, 5);
    expect(Number.isFinite(y[0])).toBe(true);
  });

  it("says so where the derivative is no number, and keeps the last good state", () => {
    const broken: OdeSystem = {
      size: 1,
      derivative(y, out) {
        out[0] = y[0] < 2 ? 1 : Number.NaN;
      },
    };
    const y = new Float64Array([1]);
    const result = createOde(broken).run(0, y, 5, within(1, 1e-6));
    expect(result.status).toBe("stepTooSmall");
    expect(result.t).toBeCloseTo(1, 6);
    expect(y[0]).toBeLessThan(2);
    expect(createOde(broken).run(0, new Float64Array([3]), 5, within(1, 1e-6)).status).toBe("stepTooSmall");
  });

  it("says so when its steps are used up", () => {
    const y = new Float64Array([1, 0, 0]);
    const result = createOde(robertson).run(0, y, 1e11, within(3, 1e-8, { maximumSteps: 7 }));
    expect(result.status).toBe("stepBudget");
    expect(result.steps + result.rejected).toBe(7);
    expect(result.t).toBeGreaterThan(0);
  });

  it("does nothing where there is no time to pass, and refuses a state of another size", () => {
    const y = new Float64Array([1]);
    expect(createOde(growing).run(3, y, 3, within(1, 1e-6))).toMatchObject({ status: "end", t: 3, steps: 0 });
    expect(() => createOde(growing).run(0, new Float64Array(2), 1, within(1, 1e-6))).toThrow(RangeError);
  });

  it("reaches an end that lies within rounding of its start", () => {
    const y = new Float64Array([1]);
    const t = 1800 * (1 - Number.EPSILON);
    expect(t).toBeLessThan(1800);
    expect(createOde(growing).run(t, y, 1800, within(1, 1e-6))).toMatchObject({ status: "end", t: 1800 });
    expect(y[0]).toBe(1);
  });

  it("stays at rest where nothing moves", () => {
    const y = new Float64Array([0.3, 0.3, 0.3]);
    const result = createOde(chain([1, 1, 1], 1e-3)).run(0, y, 864_000, within(3, 1e-9));
    expect(result).toMatchObject({ status: "end", steps: 1 });
    expect([...y]).toEqual([0.3, 0.3, 0.3]);
  });
});
