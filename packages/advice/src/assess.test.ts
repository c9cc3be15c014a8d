import { demoCatalogue } from "@tidewright/catalogue";
import { describe, expect, it } from "vitest";
import { assess } from "./assess.ts";
import { example, exampleFiles } from "./testing/examples.ts";

function notFinite(value: unknown, path = ""): string[] {
  if (typeof value === "number") return Number.isFinite(value) ? [] : [path];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => notFinite(inner, `${path}/${key}`));
}

describe.each(exampleFiles)("the example %s", (file) => {
  const design = example(file);
  const state = assess(design, demoCatalogue);

  it("settles with finite numbers", () => {
    expect(notFinite(state)).toEqual([]);
    expect(state.solve.converged).toBe(true);
  });

  // Analytic: continuity. A box that spills over its rim loses the rest, which a finding says.
  it("drains what flows over the weir", () => {
    const drained = state.drains.reduce((sum, drain) => sum + drain.flow, 0);
    const spills = state.findings.some((finding) => finding.code === "overflow/box-over-rim");
    if (spills) expect(drained).toBeLessThan(state.overflow.flow);
    else expect(Math.abs(drained / state.overflow.flow - 1)).toBeLessThan(1e-9);
  });

  // Analytic: Bernoulli between two still surfaces; one run without tee and without suction.
  it("spends the pump's head on lift and losses", () => {
    state.loops.forEach((loop, i) => {
      const said = design.loops[i];
      if (!said || said.suction || said.run.some((part) => part.kind === "tee")) return;
      const losses = state.parts
        .filter((part) => part.path.startsWith(`${loop.path}/run/`))
        .reduce((sum, part) => sum + part.headLoss, 0);
      expect(Math.abs(loop.staticHead + losses - loop.totalHead)).toBeLessThan(1e-6);
    });
  });

  // Analytic: the engine states its year as 365 days, 8760 h.
  it("costs watts times 8760 hours times the tariff", () => {
    expect(design.power.tariff.unit).toMatch(/\/kWh$/);
    const year = (state.power.watts / 1000) * 8760 * design.power.tariff.value;
    expect(Math.abs(state.power.annualCost / year - 1)).toBeLessThan(1e-9);
  });

  // Analytic: upright walls.
  it("holds in the sump the sum of plan area times depth", () => {
    const sum = state.sump.chambers.reduce((total, chamber) => total + chamber.area * chamber.depth, 0);
    expect(Math.abs(state.volumes.sump / sum - 1)).toBeLessThan(1e-12);
    expect(state.sump.margin).toBeCloseTo(state.sump.room - state.sump.drainDown.total, 12);
  });
});

describe("a design with seven mistakes", () => {
  it("has all seven named", () => {
    const codes = assess(example("golden/07-seven-mistakes.json"), demoCatalogue).findings.map(
      (finding) => finding.code,
    );
    for (const code of [
      "flow/below-wish",
      "drain/beyond-siphon",
      "drain/no-emergency",
      "pipe/bulkhead-undersized",
      "sump/too-small",
      "pump/not-flooded",
      "power/circuit-overload",
    ])
      expect(codes).toContain(code);
  });
});
