import { describe, expect, it } from "vitest";
import { findPipeSeries, nextSizeDown, nextSizeUp, pipeSeries } from "./allPipeSeries.ts";
import { metricTable } from "./pipeTables.ts";

const inch = 0.0254;
const sizes = ["0.5", "0.75", "1", "1.25", "1.5", "2", "2.5", "3", "4"];
// Published Schedule 40 chart, average inside diameter in inches (ASTM D1785 pipe).
const publishedAverage40 = [0.602, 0.804, 1.029, 1.36, 1.59, 2.047, 2.445, 3.042, 3.998];
// ASTM D1785 as tabulated in the fluids library: bore at minimum wall in mm.
const nominal40 = [15.8, 20.93, 26.64, 35.05, 40.89, 52.5, 62.71, 77.93, 102.26];
const nominal80 = [13.87, 18.85, 24.31, 32.46, 38.1, 49.25, 59.0, 73.66, 97.18];
// Average Schedule 80 bores in mm: from memory of the published chart, which agrees with the rule.
const average80 = [13.36, 18.34, 23.77, 31.88, 37.49, 48.59, 58.17, 72.75, 96.16];
// EN ISO 1452-2 / EN ISO 15493 bores in mm at minimum wall.
const pn16 = { 20: 17.0, 25: 21.2, 32: 27.2, 40: 34.0, 50: 42.6, 63: 53.6, 75: 63.8, 90: 76.6, 110: 93.8 };
const pn10 = { 32: 28.8, 40: 36.2, 50: 45.2, 63: 57.0, 75: 67.8, 90: 81.4, 110: 99.4 };

describe("pipe bores", () => {
  it.each(sizes.map((size, i) => [size, publishedAverage40[i]!] as const))(
    "of Schedule 40 %s in pipe average %f in as published",
    (size, published) => {
      const bore = findPipeSeries(`sch40-${size}`)!.innerDiameter / inch;
      expect(Math.abs(bore - published)).toBeLessThan(0.00051);
    },
  );

  it.each(sizes.map((size, i) => [size, nominal40[i]!, nominal80[i]!, average80[i]!] as const))(
    "of %s in pipe at minimum wall agree with the tables for both schedules",
    (size, at40, at80, mean80) => {
      expect(findPipeSeries(`sch40-${size}`)!.nominalInnerDiameter * 1000).toBeCloseTo(at40, 1);
      expect(Math.abs(findPipeSeries(`sch40-${size}`)!.nominalInnerDiameter * 1000 - at40)).toBeLessThan(0.011);
      expect(Math.abs(findPipeSeries(`sch80-${size}`)!.nominalInnerDiameter * 1000 - at80)).toBeLessThan(0.011);
      expect(Math.abs(findPipeSeries(`sch80-${size}`)!.innerDiameter * 1000 - mean80)).toBeLessThan(0.02);
    },
  );

  it.each([
    ...Object.entries(pn16).map(([dn, bore]) => [`pn16-${dn}`, bore] as const),
    ...Object.entries(pn10).map(([dn, bore]) => [`pn10-${dn}`, bore] as const),
  ])("of metric pipe %s is %f mm", (id, bore) => {
    expect(findPipeSeries(id)!.innerDiameter * 1000).toBeCloseTo(bore, 6);
  });

  it("of metric pipe follow walls that are dn / SDR rounded up, but for 40 mm at SDR 21", () => {
    const up = (x: number) => Math.ceil(x * 10 - 1e-9) / 10;
    for (const row of metricTable) {
      expect(row.wall16).toBeCloseTo(up(row.outer / 13.6), 9);
      if (row.wall10 !== undefined && row.outer !== 40) expect(row.wall10).toBeCloseTo(up(row.outer / 21), 9);
    }
    expect(metricTable.find((row) => row.outer === 40)!.wall10).toBe(1.9);
  });

  it("grow with the size inside each family and stay inside the outer wall", () => {
    for (const series of pipeSeries) {
      expect(series.innerDiameter).toBeLessThan(series.outerDiameter);
      expect(series.innerDiameter).toBeLessThanOrEqual(series.nominalInnerDiameter);
      const larger = nextSizeUp(series.id);
      if (larger === undefined) continue;
      expect(larger.innerDiameter).toBeGreaterThan(series.innerDiameter);
      expect(larger.pricePerMetre).toBeGreaterThan(series.pricePerMetre);
      expect(nextSizeDown(larger.id)).toBe(series);
    }
  });

  it("are found under ids without spaces or slashes, each once", () => {
    expect(new Set(pipeSeries.map((series) => series.id)).size).toBe(pipeSeries.length);
    for (const series of pipeSeries) expect(series.id).toMatch(/^[a-z0-9.-]+$/);
    expect(nextSizeUp("hose-50")).toBeUndefined();
    expect(nextSizeDown("pn10-32")).toBeUndefined();
    expect(nextSizeUp("no such pipe")).toBeUndefined();
  });
});
