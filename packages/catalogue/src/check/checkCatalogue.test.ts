import { describe, expect, it } from "vitest";
import { type Catalogue, findPump } from "../catalogue.ts";
import { demoCatalogue } from "../demo/demoCatalogue.ts";
import type { PumpRow } from "../pumps/pump.ts";
import { checkCatalogue } from "./checkCatalogue.ts";
import { checkPump } from "./checkPump.ts";

const base = findPump(demoCatalogue, "ferrow-c40")!;
const constant = findPump(demoCatalogue, "brayne-k18")!;
const columns = (pump: PumpRow, severity: "error" | "doubt" = "error") =>
  checkPump(pump, 1)
    .filter((problem) => problem.severity === severity)
    .map((problem) => problem.column);
const withPoints = (points: { flow: number; head: number }[]): PumpRow => ({
  ...constant,
  curves: [{ speedRatio: 1, points }],
});

describe("a pump is refused", () => {
  it.each<[string, PumpRow, string]>([
    [
      "whose head rises with flow",
      withPoints([
        { flow: 0, head: 1 },
        { flow: 1e-4, head: 1.1 },
      ]),
      "curve 1.00",
    ],
    [
      "whose flow does not rise",
      withPoints([
        { flow: 1e-4, head: 1 },
        { flow: 1e-4, head: 0.5 },
      ]),
      "curve 1.00",
    ],
    [
      "with a head below zero",
      withPoints([
        { flow: 0, head: 1 },
        { flow: 1e-4, head: -0.1 },
      ]),
      "curve 1.00",
    ],
    [
      "with a flow below zero",
      withPoints([
        { flow: -1e-4, head: 1 },
        { flow: 1e-4, head: 0.5 },
      ]),
      "curve 1.00",
    ],
    ["with a curve of one point", withPoints([{ flow: 0, head: 1 }]), "curve 1.00"],
    [
      "with a curve of 51 points",
      withPoints(Array.from({ length: 51 }, (_, i) => ({ flow: i * 1e-6, head: 60 - i }))),
      "curve 1.00",
    ],
    [
      "with a point that is no number",
      withPoints([
        { flow: 0, head: 1 },
        { flow: Number.NaN, head: 0.5 },
      ]),
      "curve 1.00",
    ],
    ["without a curve", { ...constant, curves: [] }, "curve 1.00"],
    [
      "whose speeds are out of order",
      { ...base, curves: [base.curves[0]!, base.curves[2]!, base.curves[1]!] },
      "curve 0.80",
    ],
    ["whose first curve is not at full speed", { ...base, curves: base.curves.slice(1) }, "curve 0.80"],
    [
      "whose slow curve lies above the fast one",
      {
        ...base,
        curves: [
          base.curves[0]!,
          { speedRatio: 0.5, points: base.curves[0]!.points.map((p) => ({ flow: p.flow, head: p.head + 1 })) },
        ],
      },
      "curve 0.50",
    ],
    ["with watts of zero", { ...constant, ratedPower: 0 }, "rated power"],
    ["with a power factor above one", { ...constant, powerFactor: 1.2 }, "power factor"],
    ["with a bore of zero", { ...constant, outletBore: 0 }, "outlet bore"],
    ["with a voltage of zero", { ...constant, voltage: 0 }, "voltage"],
    ["with an infinite price", { ...constant, price: Number.POSITIVE_INFINITY }, "price"],
    ["with a sound level below zero", { ...constant, soundLevel: -3 }, "sound"],
    ["that is constant and yet slows down", { ...constant, minimumSpeed: 0.5 }, "minimum speed"],
    ["that is controllable with an unknown controller", { ...base, controller: { included: false } }, "controller"],
    ["that goes nowhere", { ...constant, placements: [] }, "placements"],
    ["with blanks in its id", { ...constant, id: "k 18" }, "id"],
    ["whose best flow lies beyond its curve", { ...constant, bestEfficiencyFlow: 1 }, "best efficiency flow"],
  ])("%s", (_, pump, column) => {
    expect(columns(pump)).toContain(column);
  });

  it("that gives the water more power than it takes from the wall", () => {
    // 3.0 m3/h against 2.5 m in sea water of 1023.34 kg/m3 is 20.91 W (rho g Q H, python fluids).
    const points = [
      { flow: 0, head: 2.6 },
      { flow: 3 / 3600, head: 2.5 },
    ];
    expect(columns({ ...withPoints(points), ratedPower: 20.8 })).toEqual(["rated power"]);
    expect(columns({ ...withPoints(points), ratedPower: 21.0 })).toEqual([]);
    expect(columns({ ...withPoints(points), ratedPower: 21.0 }, "doubt")).toContain("rated power");
    expect(columns({ ...withPoints(points), ratedPower: 40 }, "doubt")).toEqual([]);
  });

  it("with every one of its faults named, not the first only", () => {
    const broken: PumpRow = { ...constant, maker: "", voltage: -1, price: -1, powerFactor: 0, ratedPower: Number.NaN };
    expect(columns(broken).sort()).toEqual(["maker", "power factor", "price", "rated power", "voltage"]);
  });
});

describe("a pump is doubted", () => {
  it.each<[string, PumpRow, string]>([
    ["at an unusual voltage", { ...constant, voltage: 75 }, "voltage"],
    ["at 400 Hz", { ...constant, frequency: 400 }, "frequency"],
    ["at 120 dB(A)", { ...constant, soundLevel: 120 }, "sound"],
    ["whose outlet is a pinhole", { ...constant, outletBore: 0.005 }, "outlet bore"],
    [
      "whose slow curve is far off the affinity law",
      { ...base, curves: [base.curves[0]!, { ...base.curves[2]!, speedRatio: 0.9 }] },
      "curve 0.90",
    ],
    ["whose power curve exceeds its rating", { ...base, ratedPower: 40 }, "rated power"],
  ])("%s", (_, pump, column) => {
    expect(columns(pump, "doubt")).toContain(column);
  });
});

describe("a catalogue", () => {
  it("for demonstration has nothing wrong and nothing doubtful", () => {
    expect(checkCatalogue(demoCatalogue)).toEqual([]);
  });

  it("names every doubled id, lost controller and impossible part", () => {
    const device = demoCatalogue.devices[0]!;
    const pipe = demoCatalogue.pipeSeries[0]!;
    const broken: Catalogue = {
      pumps: [constant, constant, findPump(demoCatalogue, "ferrow-c80")!],
      devices: [
        device,
        { ...device, id: "falling", lossPoints: [...device.lossPoints].reverse() },
        { ...device, id: "magic", coolingWatts: 50_000 },
      ],
      controllers: [],
      pipeSeries: [{ ...pipe, innerDiameter: pipe.outerDiameter }],
      fittings: [{ ...demoCatalogue.fittings[0]!, fixedLoss: -1 }],
      valves: [{ ...demoCatalogue.valves[0]!, priceAt25mm: Number.NaN }],
    };
    const found = checkCatalogue(broken).map(({ list, row, column }) => `${list} ${row} ${column}`);
    expect(new Set(found)).toEqual(
      new Set([
        "pumps 3 controller ref",
        "devices 2 lossPoints",
        "devices 3 coolingWatts",
        "pipeSeries 1 innerDiameter",
        "fittings 1 fixedLoss",
        "valves 1 priceAt25mm",
        "pumps 2 id",
      ]),
    );
  });
});
