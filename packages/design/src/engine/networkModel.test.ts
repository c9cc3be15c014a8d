import { evaluateMonotoneCubic, type MonotoneCubic, pumpHeadAtSpeed } from "@tidewright/engine";
import { describe, expect, it } from "vitest";
import type { NetworkDocument } from "../schema/network.ts";
import { networkModel } from "./networkModel.ts";

type Links = NetworkDocument["network"]["links"];

const fresh = { density: 998.2, kinematicViscosity: 1.004e-6 };
const ends = { from: "a", to: "b" } as const;

function documentOf(links: Links, water: NetworkDocument["water"] = fresh): NetworkDocument {
  return {
    tidewright: 1,
    water,
    network: {
      nodes: [
        { id: "a", kind: "fixedHead", head: { value: 500, unit: "mm" }, elevation: 0.2 },
        { id: "b", kind: "junction", demand: { value: 360, unit: "L/h" } },
        { id: "c", kind: "junction", elevation: { value: 1, unit: "ft" } },
      ],
      links,
    },
  };
}

function only(link: Links[number]) {
  const found = networkModel(documentOf([link])).links[0];
  if (!found) throw new Error("no link");
  return found;
}

describe("a network document as the solver takes it", () => {
  it("has heads, elevations and demands in metres and cubic metres a second", () => {
    // Exact by definition: 1 ft = 0.3048 m, 1 L/h = 1/3.6e6 m3/s.
    expect(networkModel(documentOf([])).nodes).toEqual([
      { id: "a", kind: "fixedHead", head: 0.5, elevation: 0.2 },
      { id: "b", kind: "junction", elevation: 0, demand: expect.closeTo(1e-4, 15) },
      { id: "c", kind: "junction", elevation: expect.closeTo(0.3048, 15), demand: 0 },
    ]);
  });

  it("has the water that is given, or the sea water of a salinity and a temperature", () => {
    expect(networkModel(documentOf([])).liquid).toEqual(fresh);
    const sea = networkModel(
      documentOf([], { salinity: { value: 35, unit: "ppt" }, temperature: { value: 25, unit: "C" } }),
    ).liquid;
    // Published: UNESCO Technical Papers in Marine Science 44 (1983), 35 and 25 C: 1023.343 kg/m3.
    expect(sea.density).toBeCloseTo(1023.343, 2);
    expect(sea.kinematicViscosity).toBeGreaterThan(8e-7);
    expect(sea.kinematicViscosity).toBeLessThan(1e-6);
  });

  it("has pipes in metres, smooth as plastic and free of fittings where nothing is said", () => {
    // Roughness of drawn tubing 1.5e-6 m: Moody 1944.
    expect(only({ id: "p", kind: "pipe", ...ends, length: 3, diameter: { value: 1, unit: "in" } })).toEqual({
      id: "p",
      kind: "pipe",
      ...ends,
      length: 3,
      diameter: expect.closeTo(0.0254, 15),
      roughness: 1.5e-6,
      minorLoss: 0,
      checkValve: false,
    });
    const said = { roughness: { value: 0.05, unit: "mm" }, minorLoss: 2.5, checkValve: true };
    expect(only({ id: "p", kind: "pipe", ...ends, length: 3, diameter: 0.03, ...said })).toMatchObject({
      roughness: expect.closeTo(5e-5, 15),
      minorLoss: 2.5,
      checkValve: true,
    });
  });

  it("has pumps at their speed, by affinity", () => {
    const points = [
      { flow: 0, head: 4 },
      { flow: 0.002, head: 0 },
    ];
    // Analytic: H = 4 - 1e6 Q2; at 0.7 speed 1.96 m at rest and 1.47 m at 0.7e-3 m3/s.
    const link = only({ id: "p", kind: "pump", ...ends, curve: { points }, speedRatio: 0.7 });
    if (link.kind !== "pump") throw new Error("no pump");
    expect(pumpHeadAtSpeed(link.pump, 0)).toBeCloseTo(1.96, 12);
    expect(pumpHeadAtSpeed(link.pump, 0.0007)).toBeCloseTo(1.47, 12);
    expect(link.reverseFlow).toBe(false);
    expect(only({ id: "p", kind: "pump", ...ends, curve: { points }, reverseFlow: true })).toMatchObject({
      reverseFlow: true,
    });
  });

  it("has valves by their K, shut where it is null, or by type and opening", () => {
    const valve = { id: "v", kind: "valve", ...ends, diameter: 0.02664 } as const;
    expect(only({ ...valve, lossCoefficient: 7.5 })).toMatchObject({ lossCoefficient: 7.5, checkValve: false });
    expect(only({ ...valve, lossCoefficient: null })).toMatchObject({ lossCoefficient: Number.POSITIVE_INFINITY });
    expect(only({ ...valve, valve: "gate", opening: 0 })).toMatchObject({ lossCoefficient: Number.POSITIVE_INFINITY });
    expect(only(valve)).toMatchObject({ lossCoefficient: 0 });
    // Darby's 3-K, large Reynolds number, open gate valve at 1 in: 0.037 (1 + 3.9) = 0.1813.
    expect(only({ ...valve, valve: "gate" })).toMatchObject({ lossCoefficient: expect.closeTo(0.1813, 4) });
  });

  it("has devices as a square law through one point and as a curve through several", () => {
    const device = { id: "d", kind: "device", ...ends } as const;
    const one = only({ ...device, lossPoints: [{ flow: 0.001, headLoss: { value: 500, unit: "mm" } }] });
    // Analytic: 0.5 / 0.001^2.
    expect(one).toMatchObject({ coefficient: expect.closeTo(5e5, 6), checkValve: false });
    expect(one).not.toHaveProperty("curve");
    const two = only({
      ...device,
      lossPoints: [
        { flow: 0.0005, headLoss: 0.2 },
        { flow: 0.001, headLoss: 0.5 },
      ],
      checkValve: true,
    });
    if (two.kind !== "device" || !two.curve) throw new Error("no curve");
    expect(two.checkValve).toBe(true);
    // Its own points, and nothing lost at rest.
    expect([0, 0.0005, 0.001].map((flow) => evaluateMonotoneCubic(two.curve as MonotoneCubic, flow))).toEqual([
      0,
      expect.closeTo(0.2, 12),
      expect.closeTo(0.5, 12),
    ]);
  });
});
