import { demoCatalogue } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import { describe, expect, it } from "vitest";
import { withValue } from "../levers/withValue.ts";
import { example } from "../testing/examples.ts";
import { safetyLevers } from "./safetyLevers.ts";
import { safetySweep } from "./safetySweep.ts";
import { scenariosOf } from "./scenariosOf.ts";
import { whatIf } from "./whatIf.ts";

const reef = example("waiting-room-reef.json");
const cut = (design: Design) => {
  const scenario = scenariosOf(design).find((each) => each.kind === "powerCut");
  if (!scenario) throw new Error("no power cut");
  return whatIf(design, demoCatalogue, scenario, false);
};
const sumpMargin = (design: Design) =>
  Math.min(
    ...cut(design)
      .vessels.filter(({ place }) => place.startsWith("sump."))
      .map((vessel) => vessel.margin ?? 0),
  );

describe("the safety sweep", () => {
  const sweep = safetySweep(reef, demoCatalogue);

  it("plays every scenario to its end and puts the worst first", () => {
    expect(sweep.rows.map((row) => row.scenario.id).sort()).toEqual(
      scenariosOf(reef)
        .map(({ id }) => id)
        .sort(),
    );
    expect(sweep.rows.every((row) => row.verdict !== "unsolved")).toBe(true);
    const order = sweep.rows.map((row) => ["wet", "unsolved", "dry", "tight", "safe"].indexOf(row.verdict));
    expect([...order].sort((a, b) => a - b)).toEqual(order);
  });

  it("finds the line up to which the sump takes a power cut: on it the margin is kept, above it no more", () => {
    const line = sweep.answers.highestSafeOperatingLevel as number;
    const at = (depth: number) => sumpMargin(withValue(reef, "/sump/operatingLevel", { value: depth, unit: "m" }));
    expect(at(line)).toBeGreaterThan(sweep.answers.margin - 1e-4);
    expect(at(line)).toBeLessThan(sweep.answers.margin + 1e-3);
    expect(at(line + 0.005)).toBeLessThan(sweep.answers.margin);
  });

  it("finds the smallest glass: with it the margin is kept, with less no more", () => {
    const height = sweep.answers.minimumSumpHeight;
    const at = (glass: number) => sumpMargin(withValue(reef, "/sump/height", { value: glass, unit: "m" }));
    expect(at(height)).toBeCloseTo(sweep.answers.margin, 3);
    expect(at(height - 0.005)).toBeLessThan(sweep.answers.margin - 0.004);
  });

  it("finds how deep the siphon breaks may lie", () => {
    const high = withValue(reef, "/sump/operatingLevel", { value: 330, unit: "mm" });
    const { answers } = safetySweep(high, demoCatalogue);
    const deepest = answers.deepestSiphonBreak as number;
    expect(deepest).toBeGreaterThan(0.005);
    const at = (depth: number) =>
      sumpMargin(
        answers.siphonBreaks.reduce((design, { path }) => {
          const outlet = path
            .split("/")
            .slice(1)
            .reduce<unknown>((o, key) => (o as never)[key], design);
          const opened = {
            ...(outlet as object),
            depth: { value: 200, unit: "mm" },
            siphonBreak: { value: depth, unit: "m" },
          };
          return withValue(design, path, opened);
        }, high),
      );
    expect(at(deepest)).toBeCloseTo(answers.margin, 2);
    expect(at(deepest + 0.01)).toBeLessThan(at(deepest) - 0.004);
  });

  it("lets the return chamber pay for evaporation day by day", () => {
    const { evaporationPerDay, days, daysUntilDry } = sweep.answers;
    const chamber = reef.sump.chambers.at(-1);
    const area = ((chamber?.length.value ?? 0) * (chamber?.width.value ?? 0)) / 1e6;
    // Analytic: area times the fall to the intake over the daily loss; display and box give up a little as the flow falls.
    const simple = (area * (0.2 - 0.03)) / evaporationPerDay;
    expect(days).toBe(10);
    expect(daysUntilDry).toBeGreaterThan(0.9 * simple);
    expect(daysUntilDry).toBeLessThan(1.25 * simple);
  });

  it("counts the days until the pump draws air, not until the first water on the floor", () => {
    const over = example("golden/07-seven-mistakes.json");
    const { answers, rows } = safetySweep(over, demoCatalogue);
    const failing = rows.find((row) => row.scenario.kind === "topOffFails");
    // It stands over its rim as drawn; 0.1225 m2 by 0.12 m above the intake, pumped at 0.67 L/s less what the drain gives back.
    expect(failing?.timeToTrouble).toBeLessThan(1);
    expect((answers.daysUntilDry ?? 0) * 86400).toBeGreaterThan(15);
    expect((answers.daysUntilDry ?? 0) * 86400).toBeLessThan(60);
  });
});

describe("safety levers", () => {
  it("find nothing to do where nothing is in trouble", () => {
    const calm = { ...safetySweep(reef, demoCatalogue), rows: [] };
    expect(safetyLevers(reef, demoCatalogue, calm)).toEqual([]);
  });

  it("lower the level, raise the siphon break or the glass where a power cut would wet the floor", () => {
    const full = withValue(reef, "/sump/operatingLevel", { value: 395, unit: "mm" });
    const sweep = safetySweep(full, demoCatalogue);
    expect(sweep.rows[0]?.verdict).toBe("wet");
    const levers = safetyLevers(full, demoCatalogue, sweep);
    const kinds = levers.map((lever) => lever.kind);
    expect(kinds).toContain("lower-operating-level");
    expect(kinds).toContain("taller-sump");
    const lower = levers.find((lever) => lever.kind === "lower-operating-level");
    expect(lower?.effects.find((effect) => effect.scenario === "powerCut")).toMatchObject({ before: "wet" });
    expect(cut(lower?.design as Design).spilled).toBe(0);
  });
});
