import { demoCatalogue } from "@tidewright/catalogue";
import { describe, expect, it } from "vitest";
import type { Drain } from "../schema/loops.ts";
import type { Part } from "../schema/parts.ts";
import { type DrainModel, drainModel } from "./drainModel.ts";

const mm = (value: number) => ({ value, unit: "mm" });
const pipe = (series: string, length: number): Part => ({ kind: "pipe", series, length: mm(length) });
const fitting = (name: string, more: object = {}): Part => ({ kind: "fitting", fitting: name, ...more }) as Part;
const end: Part = { kind: "outlet", to: "sump.drain", depth: mm(30) };

function model(run: Part[], inlet: Drain["inlet"] = { elevation: mm(430) }): DrainModel {
  const drain: Drain = { name: "main", role: "main", kind: "ventedStandpipe", inlet, run };
  return drainModel(drain, 2, demoCatalogue, "crane", 0.85);
}

/** Summed over the stretches of one bore, so that it does not matter how the line is cut into stretches. */
function sumIn(drain: DrainModel, bore: number, of: "length" | "lossCoefficient"): number {
  return drain.line.segments
    .filter((segment) => Math.abs(segment.diameter - bore) < 1e-6)
    .reduce((sum, segment) => sum + segment[of], 0);
}

// EN ISO 1452-2: 32 x 2.4 has 27.2 mm, 40 x 3.0 has 34.0 mm.
describe("a drain as the engine rates it", () => {
  it("begins with a sharp entrance and ends with a whole velocity head", () => {
    // Published: Crane TP-410, entrance 0.5, exit 1.0.
    const drain = model([pipe("pn16-32", 800), end]);
    expect(sumIn(drain, 0.0272, "lossCoefficient")).toBeCloseTo(1.5, 12);
    expect(sumIn(drain, 0.0272, "length")).toBeCloseTo(0.8, 12);
  });

  it.each([
    // Published: Crane TP-410, rounded entrance 0.04, projecting 0.78. Strainer 2: common practice, no source.
    ["entranceRounded", 0.04],
    ["entranceProjecting", 0.78],
    ["strainer", 2],
  ])("has only its own inlet where it names one: %s, K %d", (name, k) => {
    const drain = model([fitting(name), pipe("pn16-32", 800), end]);
    expect(sumIn(drain, 0.0272, "lossCoefficient")).toBeCloseTo(k + 1, 12);
  });

  it("adds up lengths and losses in each bore", () => {
    // Published: Crane TP-410, two 45 degree elbows 2 x 16 fT, fT 0.0217 at 27.2 mm (0.022 at 1 in, 0.021 at 1 1/4 in).
    // Analytic: Borda-Carnot (1 - (27.2/34)^2)^2 = 0.1296 on the small bore.
    const drain = model([
      pipe("pn16-32", 300),
      pipe("pn16-32", 200),
      fitting("elbow45", { count: 2 }),
      pipe("pn16-40", 700),
      end,
    ]);
    expect(sumIn(drain, 0.0272, "length")).toBeCloseTo(0.5, 12);
    expect(sumIn(drain, 0.034, "length")).toBeCloseTo(0.7, 12);
    expect(sumIn(drain, 0.034, "lossCoefficient")).toBeCloseTo(1, 12);
    expect(Math.abs(sumIn(drain, 0.0272, "lossCoefficient") / (0.5 + 32 * 0.0217 + 0.1296) - 1)).toBeLessThan(0.02);
  });

  it("has its valve apart, on the velocity head of its narrowest bore", () => {
    const valve: Part = { kind: "valve", valve: "gate", opening: 1 };
    const even = model([pipe("pn16-32", 300), valve, end]);
    // Published: Crane TP-410, open gate valve 8 fT.
    expect(Math.abs(even.line.valveLoss / (8 * 0.0217) - 1)).toBeLessThan(0.03);
    expect(sumIn(even, 0.0272, "lossCoefficient")).toBeCloseTo(1.5, 12);
    expect(even.valve).toEqual({
      kind: "gate",
      opening: 1,
      diameter: expect.closeTo(0.0272, 9),
      path: "/drains/2/run/1",
    });
    // Analytic: at equal flow V^2/2g goes with D^-4, so K on 27.2 mm is K on 34 mm times (27.2/34)^4 = 0.4096.
    const wide = model([pipe("pn16-32", 300), pipe("pn16-40", 300), valve, end]);
    const onItsOwn = model([pipe("pn16-40", 300), valve, end]);
    expect(wide.line.valveLoss / onItsOwn.line.valveLoss).toBeCloseTo(0.4096, 9);
    expect(wide.valve?.diameter).toBeCloseTo(0.034, 9);
  });

  it("that is shut loses without end", () => {
    expect(model([pipe("pn16-32", 300), { kind: "valve", valve: "ball", opening: 0 }, end]).line.valveLoss).toBe(
      Number.POSITIVE_INFINITY,
    );
  });

  it("is as narrow as its narrowest pipe and takes water in over its pipe's rim, or a wider one", () => {
    const drain = model([pipe("pn16-40", 300), pipe("pn16-32", 300), end]);
    expect(drain.line.bore).toBeCloseTo(0.0272, 9);
    expect(drain.line.inletDiameter).toBeCloseTo(0.034, 9);
    const wide = model([pipe("pn16-32", 300), end], { elevation: mm(430), diameter: mm(75) });
    expect(wide.line.inletDiameter).toBeCloseTo(0.075, 12);
  });

  it("stands with its inlet above the display's floor and ends where it is led", () => {
    const drain = model([pipe("pn16-32", 800), end]);
    expect(drain.line.inletElevation).toBeCloseTo(0.85 + 0.43, 12);
    expect(drain).toMatchObject({ path: "/drains/2", place: "sump.drain", depth: 0.03, valve: undefined });
  });

  it("holds the water of its pipes", () => {
    // Analytic: pi/4 (0.0272^2 x 0.3 + 0.034^2 x 0.7) = 0.8099 L.
    const drain = model([pipe("pn16-32", 300), pipe("pn16-40", 700), end]);
    expect(drain.pipeVolume * 1000).toBeCloseTo(0.8099, 3);
  });
});
