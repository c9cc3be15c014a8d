import type { SafetyAnswers } from "@tidewright/advice";
import type { Design } from "@tidewright/design";
import { describe, expect, it } from "vitest";
import { answerSentences } from "./answerSentences.ts";

const design = {
  sump: {
    operatingLevel: { value: 230, unit: "mm" },
    height: { value: 400, unit: "mm" },
    floor: { value: 20, unit: "mm" },
  },
} as unknown as Design;
const answers: SafetyAnswers = {
  highestSafeOperatingLevel: 0.2,
  margin: 0.01,
  powerCutVolume: 0.0189,
  powerCutLevel: 0.3,
  minimumSumpVolume: 0.125,
  minimumSumpHeight: 0.29,
  siphonBreaks: [
    { path: "/a", depth: 0.015 },
    { path: "/b", depth: 0.04 },
  ],
  deepestSiphonBreak: 0.03,
  anySiphonBreak: false,
  evaporationPerDay: 0.0057,
  days: 10,
  minimumReturnVolume: 0.064,
  daysUntilDry: 3.4,
  emergencyFlow: 4e-4,
  emergencyCapacity: 9e-4,
  boxFreeboard: 0.08,
};
const format = (si: number) => `${Math.round(si * 1e4) / 10}`;
const told = (change: Partial<SafetyAnswers>, id: string) =>
  answerSentences({ ...answers, ...change }, design, format).find((sentence) => sentence.id === id)!;

// Expected numbers are analytic: differences of the given lengths.
describe("the answers of the safety sweep in words", () => {
  it("says by how much the sump runs above its highest safe line", () => {
    expect(told({}, "safe-line").text).toContain("runs at 230, 30 too high");
    expect(told({}, "safe-line").missed).toBe(true);
    expect(told({ highestSafeOperatingLevel: 0.25 }, "safe-line").text).toContain("20 below that");
    expect(told({ highestSafeOperatingLevel: 0.25 }, "safe-line").missed).toBe(false);
  });

  it("measures the power cut from the sump's own floor to its own rim", () => {
    // 300 mm above the room's floor is 280 mm deep, 120 mm below a rim of 400 mm.
    expect(told({}, "power-cut").text).toContain("280 deep, 120 below");
    expect(told({ powerCutLevel: 0.45 }, "power-cut").text).toContain("30 over");
  });

  it("judges siphon breaks by the deepest of them", () => {
    expect(told({}, "siphon-break").missed).toBe(true);
    expect(told({ deepestSiphonBreak: 0.05 }, "siphon-break").missed).toBe(false);
    expect(told({ anySiphonBreak: true }, "siphon-break").missed).toBe(false);
    expect(told({ siphonBreaks: [] }, "siphon-break").text).toContain("No outlet");
  });

  it("tells the drain that is missing from the one that is too small", () => {
    expect(told({}, "emergency-drain").missed).toBe(false);
    expect(told({ emergencyCapacity: 1e-4 }, "emergency-drain").missed).toBe(true);
    expect(told({ emergencyCapacity: 0 }, "emergency-drain").text).toContain("There is none");
  });

  it("leaves out the freeboard of a box that has none", () => {
    expect(answerSentences({ ...answers, boxFreeboard: Number.POSITIVE_INFINITY }, design, format)).toHaveLength(6);
  });
});
