import { readFileSync } from "node:fs";
import { assess, type Curve, type LoopState, type PumpState } from "@tidewright/advice";
import { demoCatalogue } from "@tidewright/catalogue";
import { readDesign } from "@tidewright/design";
import { formatQuantity, unitSystems } from "@tidewright/units";
import { describe, expect, it } from "vitest";
import { combinedCurve, headAt } from "./combinedCurve.ts";
import { type CurveInput, layoutCurves } from "./layoutCurves.ts";
import { unitOfFormat } from "./unitOfFormat.ts";

// h = 4 - 4e6 q^2, and the same pump at 0.8 of its speed by the affinity laws: heads x 0.64, flows x 0.8 (analytic).
const parabola = (speed: number): Curve => {
  const flow = Array.from({ length: 21 }, (_, i) => (speed * 1e-3 * i) / 20);
  return { flow, head: flow.map((q) => 4 * speed * speed - 4e6 * q * q) };
};
const systemFlow = Array.from({ length: 31 }, (_, i) => (1.5e-3 * i) / 30);
const system = { flow: systemFlow, head: systemFlow.map((q) => 1 + 2e6 * q * q), toDisplay: systemFlow };
// 2.56 - 4e6 q2 = 1 + 2e6 q2  ->  q = sqrt(1.56 / 6e6), h = 1.52 (analytic).
const flow = Math.sqrt(1.56 / 6e6);
const loop = {
  path: "/loops/0",
  name: "return",
  purpose: "return",
  flow,
  flowToDisplay: flow,
  staticHead: 1,
  totalHead: 1.52,
  systemCurve: system,
  flowRange: [flow * 0.95, flow * 1.06],
} as LoopState;
const pump = {
  path: "/loops/0/pumps/0",
  flow,
  speed: 0.8,
  placeOnCurve: 0.6,
  curves: [
    { speedRatio: 1, curve: parabola(1) },
    { speedRatio: 0.8, curve: parabola(0.8) },
  ],
} as unknown as PumpState;
const input: CurveInput = {
  loop,
  pumps: [pump],
  wish: { low: 4e-4, aim: 6e-4, high: 8e-4 },
  units: { flow: "L/h", head: "m" },
  width: 700,
  height: 300,
};

describe("the curve picture", () => {
  it("puts the operating point where pump and system curve cross", () => {
    const scene = layoutCurves(input);
    const now = scene.curves.find(({ kind }) => kind === "pumpNow")!;
    const asked = scene.curves.find(({ kind }) => kind === "system")!;
    expect(Math.abs(scene.y(headAt(now.curve, flow)) - scene.point!.y)).toBeLessThan(1);
    expect(Math.abs(scene.y(headAt(asked.curve, flow)) - scene.point!.y)).toBeLessThan(1);
    expect(scene.flowAt(scene.point!.x)).toBeCloseTo(flow, 9);
  });

  it("writes round numbers in the user's units: 3600 L/h is 1 L/s, 10 ft is 3.048 m", () => {
    const scene = layoutCurves(input);
    expect(scene.flowTicks.find(({ text }) => text === "2000")!.at).toBeCloseTo(scene.x(2 / 3600), 6);
    const feet = layoutCurves({ ...input, units: { flow: "US gal/h", head: "ft" } });
    expect(feet.headTicks.find(({ text }) => text === "10")!.at).toBeCloseTo(feet.y(3.048), 6);
  });

  it("finds the units of the axes in the user's format", () => {
    const of = (name: "metric" | "us" | "imperial") => {
      const format = (si: number, dimension: "flow" | "head") =>
        formatQuantity(si, dimension, unitSystems[name][dimension]);
      return [unitOfFormat(format as never, "flow"), unitOfFormat(format as never, "head")];
    };
    for (const name of ["metric", "us", "imperial"] as const)
      expect(of(name)).toEqual([unitSystems[name].flow, unitSystems[name].head]);
  });

  it("shows band, aim and the interval of the flow in order", () => {
    const { band, range, point } = layoutCurves(input);
    expect(band!.x0).toBeLessThan(band!.aim);
    expect(band!.aim).toBeLessThan(band!.x1);
    expect(range[0]).toBeLessThan(point!.x);
    expect(range[1]).toBeGreaterThan(point!.x);
  });

  it("asks more of the pumps where branches take half of what they give", () => {
    // Analytic: half of every pump flow arrives, so the aim of 6e-4 m3/s needs twice that.
    const split = { ...system, toDisplay: systemFlow.map((q) => q / 2) };
    const scene = layoutCurves({ ...input, loop: { ...loop, systemCurve: split } });
    expect(scene.band!.aim).toBeCloseTo(scene.x(2 * 6e-4), 6);
  });

  it("adds the flows of two pumps in parallel and the heads of two in series", () => {
    const twice = combinedCurve([parabola(1), parabola(1)], "parallel");
    twice.head.forEach((head, i) => expect(twice.flow[i]).toBeCloseTo(2 * Math.sqrt((4 - head) / 4e6), 9));
    const high = combinedCurve([parabola(1), parabola(1)], "series");
    high.flow.forEach((q, i) => expect(high.head[i]).toBeCloseTo(2 * (4 - 4e6 * q * q), 9));
  });

  it("lets a pump that is too weak add nothing in parallel", () => {
    const both = combinedCurve([parabola(1), parabola(0.5)], "parallel");
    const alone = both.head.filter((head) => head > 1);
    expect(alone.length).toBeGreaterThan(3);
    alone.forEach((head, i) => expect(both.flow[i]).toBeCloseTo(Math.sqrt((4 - head) / 4e6), 5));
  });

  it.each([
    ["on a narrow phone", { width: 300, height: 200 }],
    ["without a pump", { pumps: [] }],
    ["without a wish", { wish: undefined }],
    ["where nothing flows", { loop: { ...loop, flow: 0, totalHead: 4, flowRange: [0, 0] as const } }],
    ["with two pumps", { pumps: [pump, pump] }],
  ])("stays finite and inside its frame %s", (_, over) => {
    expectSound({ ...input, ...over } as CurveInput);
  });
});

function expectSound(given: CurveInput) {
  const scene = layoutCurves(given);
  for (const { d, labelAt } of scene.curves) {
    expect(d).not.toMatch(/NaN|Infinity/);
    expect(labelAt.x).toBeGreaterThanOrEqual(0);
    expect(labelAt.x).toBeLessThanOrEqual(given.width);
    expect(labelAt.y).toBeGreaterThan(0);
    expect(labelAt.y).toBeLessThan(given.height);
  }
  expect(scene.curves.map(({ labelAt }) => labelAt.y).every(Number.isFinite)).toBe(true);
  expect(Number.isFinite(scene.staticHead + (scene.point?.x ?? 0) + (scene.point?.y ?? 0))).toBe(true);
  expect(scene.flowTicks.length).toBeGreaterThan(1);
  expect(scene.headTicks.length).toBeGreaterThan(1);
  return scene;
}

const jobs = ["waiting-room-reef", "school-corridor-soft", "hotel-lobby", "first-tank-110"];

describe.each(jobs)("the curve picture of %s", (job) => {
  const reading = readDesign(readFileSync(new URL(`../../../../examples/${job}.json`, import.meta.url), "utf8"));
  if (!reading.ok) throw new Error("the demo job does not read");
  const state = assess(reading.design, demoCatalogue);

  // Analytic: the operating point is where both curves meet.
  it("puts the operating point on the pump curve and on the system curve", () => {
    state.loops.forEach((one, i) => {
      const pumps = state.pumps.filter(({ loop: index }) => index === i);
      const scene = expectSound({ ...input, loop: one, pumps, wish: state.turnover.returnFlowWish, width: 420 });
      const curve = (kind: string) => scene.curves.find((drawn) => drawn.kind === kind)!.curve;
      expect(Math.abs(headAt(curve("system"), one.flow) - one.totalHead)).toBeLessThan(0.02 * one.totalHead);
      expect(Math.abs(headAt(curve("pumpNow"), one.flow) - one.totalHead)).toBeLessThan(0.02 * one.totalHead);
    });
  });
});
