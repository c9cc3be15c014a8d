import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readStart } from "./readStart.ts";

const mm = (value: number) => ({ value, unit: "mm" });
const paths = (input: unknown) => {
  const reading = readStart(input);
  return reading.ok ? [] : reading.problems.map((problem) => problem.path);
};

describe("answers at the start", () => {
  it("need the size of the tank and nothing else, as sides or as a volume", () => {
    expect(readStart({ tank: { length: mm(1200), width: mm(500), height: mm(550) } }).ok).toBe(true);
    expect(readStart({ tank: { volume: { value: 75, unit: "US gal" } } }).ok).toBe(true);
    expect(paths({})).toEqual(["/tank"]);
    expect(paths({ tank: {} })).toEqual(["/tank"]);
    expect(paths({ tank: { height: mm(500) } })).toEqual(["/tank/length", "/tank/width"]);
  });

  it("are told every problem at once, each with its place and a fix", () => {
    const reading = readStart({
      tank: { length: { value: -3, unit: "mm" }, width: { value: 50, unit: "kg" }, height: mm(9000) },
      animals: ["sharks"],
      overflow: { holes: { count: 1.5, diameter: mm(40) } },
      topOff: { kind: "sometimes", reservoir: { value: 20, unit: "mm" } },
      colour: "blue",
    });
    expect(reading.ok).toBe(false);
    if (reading.ok) return;
    expect(reading.problems.map((problem) => problem.path.split("/").slice(0, 3).join("/")).sort()).toEqual([
      "/animals/0",
      "/colour",
      "/overflow/holes",
      "/tank/height",
      "/tank/length",
      "/tank/width",
      "/topOff/kind",
      "/topOff/reservoir",
    ]);
    for (const problem of reading.problems) expect(problem.fix.length).toBeGreaterThan(5);
  });

  it("are refused where volume and sides contradict each other, or a wish is upside down", () => {
    const sides = { length: mm(1000), width: mm(500), height: mm(500) };
    expect(paths({ tank: { ...sides, volume: { value: 250, unit: "L" } } })).toEqual([]);
    expect(paths({ tank: { ...sides, volume: { value: 600, unit: "L" } } })).toEqual(["/tank/volume"]);
    const wish = (low: number, high: number) => ({
      tank: sides,
      wishes: {
        returnTurnover: [
          { value: low, unit: "1/h" },
          { value: high, unit: "1/h" },
        ],
      },
    });
    expect(paths(wish(5, 8))).toEqual([]);
    expect(paths(wish(9, 8))).toEqual(["/wishes/returnTurnover"]);
  });

  it("may be anything at all without breaking the reader", () => {
    fc.assert(
      fc.property(fc.oneof(fc.anything(), fc.record({ tank: fc.anything(), wishes: fc.anything() })), (input) => {
        const reading = readStart(input);
        if (!reading.ok) expect(reading.problems.length).toBeGreaterThan(0);
      }),
      { numRuns: 500 },
    );
  });
});
