import { describe, expect, it } from "vitest";
import { findController, findDevice, findPump } from "../catalogue.ts";
import { readPumpCsv } from "../csv/readPumpCsv.ts";
import { findFitting, fittingPrice, fittings } from "../parts/fittings.ts";
import { valves } from "../parts/valves.ts";
import type { PumpRow } from "../pumps/pump.ts";
import { demoCatalogue } from "./demoCatalogue.ts";
import { demoPumpTable } from "./demoPumpTable.ts";

const pumps = demoCatalogue.pumps;
const some = (claim: (pump: PumpRow) => boolean) => pumps.filter(claim).length;
const largestFlow = (pump: PumpRow) => pump.curves[0]!.points.at(-1)!.flow * 3_600_000;
const shutOff = (pump: PumpRow) => pump.curves[0]!.points[0]!.head;
const only = (pump: PumpRow, place: string) => pump.placements.length === 1 && pump.placements[0] === place;

describe("the demonstration catalogue", () => {
  it("reads from its own table without a problem: at least 60 pumps of five makers", () => {
    expect(readPumpCsv(demoPumpTable).problems).toEqual([]);
    expect(pumps.length).toBeGreaterThanOrEqual(60);
    expect([...new Set(pumps.map((pump) => pump.maker))].sort()).toEqual([
      "Brayne",
      "Calder Fold",
      "Ferrow",
      "Ostwick",
      "Tarnhelm",
    ]);
  });

  it("covers every placement, control, mains, chart and length of curve", () => {
    for (const place of ["inSump", "external", "inTank"]) expect(some((pump) => only(pump, place))).toBeGreaterThan(3);
    expect(some((p) => p.placements.includes("inSump") && p.placements.includes("external"))).toBeGreaterThan(3);
    for (const control of ["constant", "controllable"]) expect(some((p) => p.control === control)).toBeGreaterThan(15);
    expect(some((pump) => pump.controller?.included === false)).toBeGreaterThan(5);
    expect(some((pump) => pump.controller?.included === true)).toBeGreaterThan(5);
    for (const volts of [230, 120, 24]) expect(some((pump) => pump.voltage === volts)).toBeGreaterThan(5);
    for (const hertz of [0, 50, 60]) expect(some((pump) => pump.frequency === hertz)).toBeGreaterThan(5);
    for (const count of [2, 3, 14]) expect(some((p) => p.curves[0]!.points.length === count)).toBeGreaterThan(2);
    for (const speeds of [1, 3, 4]) expect(some((pump) => pump.curves.length === speeds)).toBeGreaterThan(2);
    expect(some((pump) => pump.curves[0]!.power !== undefined)).toBeGreaterThan(5);
    expect(some((pump) => pump.externalCooling === "water")).toBeGreaterThan(0);
    expect(some((pump) => pump.selfPriming)).toBeGreaterThan(0);
    expect(some((pump) => pump.chart === "reading")).toBeGreaterThan(0);
  });

  it("spans return pumps from 800 to 25,000 L/h and 1.2 to 14 m, and low-headed stream pumps", () => {
    const returns = pumps.filter((pump) => !pump.placements.includes("inTank"));
    const flows = returns.map(largestFlow);
    const heads = returns.map(shutOff);
    expect(Math.min(...flows)).toBeLessThanOrEqual(800 + 1e-6);
    expect(Math.max(...flows)).toBeGreaterThan(22_000);
    expect(Math.min(...heads)).toBeCloseTo(1.2, 6);
    expect(Math.max(...heads)).toBeCloseTo(14, 6);
    const streams = pumps.filter((pump) => pump.placements.includes("inTank"));
    expect(streams.length).toBeGreaterThan(8);
    for (const pump of streams) {
      expect(largestFlow(pump)).toBeGreaterThanOrEqual(2000 - 1e-6);
      expect(largestFlow(pump)).toBeLessThanOrEqual(25_000 + 1e-6);
      expect(shutOff(pump)).toBeLessThan(1.5);
    }
  });

  it("prices pumps between 35 and 1200 EUR and gives them 28 to 62 dB(A)", () => {
    for (const pump of pumps) {
      expect(pump.price).toBeGreaterThanOrEqual(35);
      expect(pump.price).toBeLessThanOrEqual(1200);
      expect(pump.soundLevel).toBeGreaterThanOrEqual(28);
      expect(pump.soundLevel).toBeLessThanOrEqual(62);
      expect(pump.source.status).toBe("invented");
    }
  });

  it("turns 14 to 56 % of the rated power into water power at the best printed point", () => {
    for (const pump of pumps) {
      const best = Math.max(
        ...pump.curves[0]!.points.map((point) => (1023.34 * 9.80665 * point.flow * point.head) / pump.ratedPower),
      );
      // Two or three points may all lie far from the best one: those curves have no lower bound.
      expect(best, pump.id).toBeLessThan(0.56);
      if (pump.curves[0]!.points.length > 3) expect(best, pump.id).toBeGreaterThan(0.14);
    }
  });

  it("holds the pump of the worked examples", () => {
    const pump = findPump(demoCatalogue, "ferrow-c40")!;
    expect(pump.placements).toEqual(["inSump", "external"]);
    expect(pump.control).toBe("controllable");
    expect(largestFlow(pump)).toBeCloseTo(4000, 6);
    expect(shutOff(pump)).toBe(4);
    expect(findPump(demoCatalogue, "no such pump")).toBeUndefined();
  });

  it("lists devices of every kind, and the controllers its pumps refer to", () => {
    const count = (kind: string) => demoCatalogue.devices.filter((device) => device.kind === kind).length;
    for (const kind of ["chiller", "uv", "reactor"]) expect(count(kind)).toBeGreaterThanOrEqual(3);
    for (const kind of ["skimmerFeed", "mediaCanister", "heater"]) expect(count(kind)).toBeGreaterThanOrEqual(1);
    for (const id of ["uv-36", "chiller-600", "reactor-2"]) expect(findDevice(demoCatalogue, id)?.id).toBe(id);
    for (const pump of pumps) {
      if (pump.controller?.ref !== undefined) {
        expect(findController(demoCatalogue, pump.controller.ref)?.label).toBe(pump.controller.label);
      }
    }
  });
});

describe("fittings and valves", () => {
  it("each name a loss of the engine, a source and a price that grows with the bore", () => {
    for (const fitting of fittings) {
      expect(fitting.engineKind).not.toBe("");
      expect(fitting.source.title).not.toBe("");
      expect(fittingPrice(fitting.priceAt25mm, 0.05)).toBeGreaterThanOrEqual(fitting.priceAt25mm);
    }
    expect(findFitting("union")?.service).toBe(true);
    expect(fittings.filter((fitting) => fitting.isCheckValve).map((fitting) => fitting.id)).toEqual([
      "swingCheck",
      "springCheck",
      "footValve",
    ]);
    expect(valves.filter((valve) => valve.hasUnions).length).toBeGreaterThan(0);
  });
});
