import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  addSoundLevels,
  annualCost,
  annualEnergy,
  atmosphericPressure,
  circuitCurrent,
  continuousLoadLimit,
  hydraulicPower,
  npshAvailable,
  pumpHeatToWater,
  temperatureRiseRate,
  tonOfRefrigeration,
  wattsPerBtuPerHour,
} from "./index.ts";

const gallonPerMinute = 3.785411784e-3 / 60;

describe("power in water", () => {
  it("is rho g Q H: 3 m3/h of sea water through 2.5 m take 20.91 W", () => {
    // Analytic: 1023.34 x 9.80665 x 3/3600 x 2.5.
    expect(hydraulicPower(1023.34, 3 / 3600, 2.5)).toBeCloseTo(20.91, 2);
  });

  it("agrees with Crane TP-410 example 7-15: 100 US gal/min through 421 ft at 70 % take 15.2 hp", () => {
    // Published: Crane TP-410 (2009) example 7-15, as repeated in the documentation of fluids; water at 62.37 lb/ft3.
    const watts = hydraulicPower(999.1, 100 * gallonPerMinute, 421 * 0.3048) / 0.7;
    expect(watts / 745.69987 / 15.2).toBeCloseTo(1, 2);
  });
});

describe("suction head available", () => {
  it("is 9.89 m for a pump 0.30 m below an open sump with 0.20 m of loss", () => {
    // Analytic: (101325 - 3105.2)/(1023.34 g) + 0.3 - 0.2; vapour pressure from IAPWS with Raoult's law at 25 C, 35 g/kg.
    const suction = { surfacePressure: 101325, vapourPressure: 3105.2, density: 1023.34 };
    const head = npshAvailable({ ...suction, surfaceElevation: 0.3, pumpElevation: 0, headLoss: 0.2 });
    expect(head / 9.89).toBeCloseTo(1, 2);
    expect(Math.abs(head / 9.89 - 1)).toBeLessThan(0.005);
  });

  it("falls metre for metre as the pump is raised", () => {
    const suction = { surfacePressure: 101325, vapourPressure: 3000, density: 1020, surfaceElevation: 0, headLoss: 0 };
    const low = npshAvailable({ ...suction, pumpElevation: -1 });
    expect(low - npshAvailable({ ...suction, pumpElevation: 2 })).toBeCloseTo(3, 12);
  });
});

describe("air pressure", () => {
  it.each([
    // Published: US Standard Atmosphere 1976, table 1 (geometric altitude), equal to ISO 2533 here; values as fluids 1.0.22 gives.
    [0, 101325],
    [500, 95461.28949694506],
    [1000, 89876.28518727123],
    [2000, 79501.42464166698],
    [3000, 70121.16223642998],
    [5000, 54048.28614576141],
  ])("at %d m is that of the standard atmosphere", (altitude, pressure) => {
    expect(Math.abs(atmosphericPressure(altitude) / pressure - 1)).toBeLessThan(1e-6);
  });
});

describe("sound levels", () => {
  it.each([
    // Analytic: 10 log10 of summed powers.
    [[40, 40], 43.01],
    [[45, 40], 46.19],
    [[42, 40, 38], 45.07],
  ])("%j dB together give %d dB", (levels, sum) => {
    expect(Math.abs(addSoundLevels(levels) - sum)).toBeLessThan(0.005);
  });

  it("of nothing is silence, and of one source is that source", () => {
    expect(addSoundLevels([])).toBe(Number.NEGATIVE_INFINITY);
    expect(addSoundLevels([38])).toBe(38);
  });

  it("never fall when a source is added, and do not depend on order", () => {
    const level = fc.double({ min: -20, max: 140, noNaN: true });
    fc.assert(
      fc.property(fc.array(level, { minLength: 1, maxLength: 6 }), level, (levels, extra) => {
        const before = addSoundLevels(levels);
        expect(addSoundLevels([...levels, extra])).toBeGreaterThanOrEqual(before);
        expect(addSoundLevels([...levels].reverse())).toBeCloseTo(before, 10);
      }),
    );
  });
});

describe("energy, cost and current", () => {
  it("a 40 W pump takes 350.4 kWh a year, and half of that at twelve hours a day", () => {
    // Analytic: 0.040 kW x 8760 h.
    expect(annualEnergy(40) / 3.6e6).toBeCloseTo(350.4, 9);
    expect(annualEnergy(40, 12) / 3.6e6).toBeCloseTo(175.2, 9);
    expect(annualCost(40, 0.31)).toBeCloseTo(350.4 * 0.31, 9);
  });

  it("a poor power factor raises the current", () => {
    // Analytic: 460 W / (230 V x 0.8).
    expect(circuitCurrent(460, 230, 0.8)).toBeCloseTo(2.5, 12);
    expect(circuitCurrent(0, 0)).toBe(0);
  });

  it("15 A and 20 A breakers carry 12 A and 16 A continuously", () => {
    // Published: US National Electrical Code 210.20(A), from a secondary source.
    expect(continuousLoadLimit(15)).toBeCloseTo(12, 12);
    expect(continuousLoadLimit(20)).toBeCloseTo(16, 12);
  });
});

describe("heat", () => {
  it("1 W is 3.412142 BTU/h and a ton of refrigeration 3516.85 W", () => {
    // Published: NIST Special Publication 811 (2008) appendix B.
    expect(1 / wattsPerBtuPerHour).toBeCloseTo(3.412142, 6);
    expect(tonOfRefrigeration).toBeCloseTo(3516.85, 2);
  });

  it("340.9 W, 1163 BTU/h, warm 300 L of sea water by 1 K in an hour", () => {
    // Published properties: UNESCO 44 density 1023.34 kg/m3 and specific heat 3997.7 J/(kg K) at 35, 25 C.
    expect(Math.abs(temperatureRiseRate(340.9, 0.3, 1023.34, 3997.7) * 3600 - 1)).toBeLessThan(0.002);
    expect(Math.abs(340.9 / wattsPerBtuPerHour / 1163 - 1)).toBeLessThan(0.002);
  });

  it("a drowned pump warms the water with all it takes", () => {
    expect(
      pumpHeatToWater({ electricalPower: 60, hydraulicPower: 20, placed: "inWater", motorLossShareToWater: 0 }),
    ).toBe(60);
  });

  it("an external pump warms it with the hydraulic power and its share of the losses, never with more than it takes", () => {
    // Analytic: 20 + 0.25 x 40.
    const pump = { electricalPower: 60, hydraulicPower: 20, placed: "external", motorLossShareToWater: 0.25 } as const;
    expect(pumpHeatToWater(pump)).toBe(30);
    expect(pumpHeatToWater({ ...pump, hydraulicPower: 90 })).toBe(60);
  });
});
