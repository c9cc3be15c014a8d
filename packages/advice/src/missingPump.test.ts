import { readdirSync, readFileSync } from "node:fs";
import { demoCatalogue } from "@tidewright/catalogue";
import { type Design, readDesign } from "@tidewright/design";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assess } from "./assess.ts";
import { rank } from "./rank.ts";

const root = new URL("../../../examples/", import.meta.url);
const texts = ["", "golden/"].flatMap((folder) =>
  readdirSync(new URL(folder || ".", root))
    .filter((name) => name.endsWith(".json"))
    .map((name) => readFileSync(new URL(folder + name, root), "utf8")),
);

function notFinite(value: unknown, path = ""): string[] {
  if (typeof value === "number") return Number.isFinite(value) ? [] : [path];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => notFinite(inner, `${path}/${key}`));
}

function scale(value: unknown, factor: () => number): void {
  if (typeof value !== "object" || value === null) return;
  const quantity = value as { value?: number; unit?: string };
  if (typeof quantity.value === "number" && /^(mm|in|cm|m)$/.test(quantity.unit ?? "")) quantity.value *= factor();
  for (const inner of Object.values(value)) scale(inner, factor);
}

/** Designs with some of their sizes changed and with no pump chosen in some or all places. */
const waiting = fc
  .tuple(
    fc.constantFrom(...texts),
    fc.array(fc.boolean(), { minLength: 8, maxLength: 8 }),
    fc.infiniteStream(fc.double({ min: -1, max: 1, noNaN: true })),
  )
  .map(([text, gone, sizes]) => {
    const design = JSON.parse(text) as Design;
    scale(design, () => {
      const x = sizes.next().value as number;
      return Math.abs(x) < 0.97 ? 1 : 10 ** (((Math.abs(x) - 0.97) / 0.06) * Math.sign(x));
    });
    const places: string[] = [];
    design.loops.forEach((loop, i) => {
      loop.pumps.forEach((pump, j) => {
        if (places.length > 0 && !gone[places.length + j]) return;
        delete pump.ref;
        places.push(`/loops/${i}/pumps/${j}`);
      });
    });
    return { design, places };
  });

describe("a design that waits for its pump", () => {
  it("is assessed with finite numbers and says of every empty place that it is empty, and nothing else of it", () => {
    let assessed = 0;
    fc.assert(
      fc.property(waiting, ({ design, places }) => {
        const reading = readDesign(JSON.stringify(design), demoCatalogue);
        if (!reading.ok) return;
        assessed++;
        const state = assess(reading.design, demoCatalogue);
        expect(notFinite(state)).toEqual([]);
        for (const place of places) {
          const codes = state.findings.filter((finding) => finding.at === place).map((finding) => finding.code);
          expect(codes).toEqual(["pump/missing"]);
          const pump = state.pumps.find((entry) => entry.path === place);
          // It draws no power, costs nothing and makes no noise; it moves no water to speak of, but a pump that is there may draw
          // water through an empty place before it.
          const loop = reading.design.loops[pump?.loop ?? 0];
          if (loop?.arrangement !== "series" || loop.pumps.every((entry) => entry.ref === undefined))
            expect(Math.abs(pump?.flow ?? 1)).toBeLessThan(1e-5);
          expect(pump).toMatchObject({ electricalPower: 0, heatToWater: 0, price: 0, soundLevel: 0, efficiency: 0 });
        }
        const chosen = state.pumps.filter((pump) => pump.ref !== undefined).map((pump) => pump.path);
        const missing = state.findings
          .filter((finding) => finding.code === "pump/missing")
          .map((finding) => finding.at);
        expect([...chosen, ...missing].sort()).toEqual(state.pumps.map((pump) => pump.path).sort());
        // Continuity: what stands still lifts nothing over the weir.
        if (chosen.length === 0) {
          expect(state.overflow.flow).toBeLessThan(1e-5);
          if (state.turnover.returnFlowWish)
            expect(state.findings.map((finding) => finding.code)).toContain("flow/below-wish");
        }
      }),
      { numRuns: 150, seed: 3 },
    );
    expect(assessed).toBeGreaterThan(50);
  });

  it("names the pumps that are gone from the catalogue, those of the display too", () => {
    const text = texts.find((each) => each.includes("tankPumps")) as string;
    const design = JSON.parse(text) as Design;
    const loop = design.loops[0];
    if (loop?.pumps[0] === undefined || design.tankPumps?.[0] === undefined) throw new Error("the example has changed");
    loop.pumps[0].ref = "house-1";
    design.tankPumps[0].ref = "house-2";
    const { findings, pumps, power, loops } = assess(design, demoCatalogue);
    expect(findings.filter(({ code }) => code === "pump/missing")).toMatchObject([
      { at: "/loops/0/pumps/0", data: { name: "house-1", one: `loop ${loop.name}` } },
      { at: "/tankPumps/0", data: { name: "house-2", place: "display" } },
    ]);
    expect(pumps[0]).toMatchObject({ label: "house-1", electricalPower: 0, price: 0 });
    expect(notFinite({ pumps, power, loops })).toEqual([]);
  });

  it("is given pumps that give in its place what the ranking says", () => {
    for (const text of texts) {
      const reading = readDesign(text, demoCatalogue);
      if (!reading.ok) throw new Error("an example cannot be read");
      const { design } = reading;
      const loop = design.loops.findIndex((entry) => entry.purpose === "return");
      for (const pump of design.loops[loop]?.pumps ?? []) delete pump.ref;
      const ranking = rank(design, demoCatalogue, { loop });
      expect(notFinite(ranking)).toEqual([]);
      expect(ranking.candidates.length + ranking.rejections.length).toBe(2 * demoCatalogue.pumps.length);
      // Ranking holds the sump's levels as they are without flow; with the pump they are some millimetres higher, out of metres.
      const best = ranking.candidates.find((candidate) => candidate.arrangement === "single");
      const place = design.loops[loop]?.pumps;
      if (!best || !place?.[0]) continue;
      place.splice(0, place.length, { ...place[0], ref: best.pumpIds[0] ?? "", speed: best.speed, controller: true });
      const flow = assess(design, demoCatalogue, { curves: false }).loops[loop]?.flow ?? 0;
      expect(Math.abs(flow / best.flow - 1)).toBeLessThan(0.005);
    }
  });
});
