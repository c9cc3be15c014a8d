import { demoCatalogue } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import { toSI } from "@tidewright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import { firstDesign } from "../firstDesign/firstDesign.ts";
import { safetySweep } from "./safetySweep.ts";
import { scenariosOf } from "./scenariosOf.ts";
import { whatIf } from "./whatIf.ts";
import { withSweep } from "./withSweep.ts";

/** A pump that hunts as long as a top-off feeds it takes thousands of steps; on a busy machine that is a while [ms]. */
const patience = 300_000;
const litres = (value: number) => ({ value, unit: "L" });
const made = (volume: number, drains: "two" | "three" = "three") =>
  firstDesign({ tank: { volume: litres(volume) }, overflow: { glass: "keep", drains } }, demoCatalogue);
const play = (design: Design, kind: string) => {
  const scenario = scenariosOf(design).find((each) => each.kind === kind);
  if (scenario === undefined) throw new Error(kind);
  return whatIf(design, demoCatalogue, scenario, false);
};

const { design } = made(520);
const state = assess(design, demoCatalogue, { curves: false });
const siphon = state.overflow.siphon;
if (siphon === undefined) throw new Error("no siphon");

describe("an overflow that hangs on the glass", () => {
  it("stands inside by the head of its tubes above the box outside, and the display by the weir's above its crest", () => {
    expect(siphon.innerLevel - state.overflow.boxLevel).toBeCloseTo(siphon.head, 9);
    expect(state.overflow.fall).toBeGreaterThan(0);
    const crest = toSI(design.display.standHeight, "length") + toSI(design.overflow.weir.crest, "length");
    expect(state.overflow.displayLevel).toBeCloseTo(crest + state.overflow.weirHead, 6);
    // By hand for smooth tubes: Blasius 1913 with K 0.78 + 1 + 2 x 0.3 (Crane TP-410, fT 0.021 to 0.022); bends to 10 %.
    const reynolds = (siphon.velocity * siphon.bore) / state.water.kinematicViscosity;
    const length = toSI(design.overflow.siphon?.length ?? { value: 0, unit: "m" }, "length");
    const k = 2.38 + ((0.3164 / reynolds ** 0.25) * length) / siphon.bore;
    expect(Math.abs(siphon.head / ((k * siphon.velocity ** 2) / 19.6133) - 1)).toBeLessThan(0.05);
  });

  it("lifts the display where its tubes are too narrow, by what they ask for", () => {
    const narrow: Design = JSON.parse(JSON.stringify(design));
    const said = narrow.overflow.siphon;
    if (said) said.bore = { value: 1000 * siphon.bore * 0.7, unit: "mm" };
    const now = assess(narrow, demoCatalogue, { curves: false });
    expect(now.overflow.fall).toBeLessThan(0);
    expect(now.overflow.displayLevel).toBeGreaterThan(state.overflow.displayLevel + 0.01);
    expect(now.findings.map(({ code }) => code)).toContain("overflow/weir-drowned");
  });

  it("keeps its tubes under water through a power cut and comes back to where it ran", () => {
    const run = play(design, "restart");
    expect(run.events.map(({ code }) => code)).not.toContain("tubes/lost");
    expect(run.volumeError).toBeLessThan(1e-9);
    for (const vessel of run.vessels) {
      if (vessel.place !== "display" && vessel.place !== "innerBox" && vessel.place !== "overflowBox") continue;
      expect(Math.abs(vessel.end - vessel.start), vessel.place).toBeLessThan(2e-3);
    }
    const cut = play(design, "powerCut");
    const at = (place: string) => cut.vessels.find((vessel) => vessel.place === place)?.end ?? 0;
    // Communicating vessels: both boxes stand at one level, above the ends of the tubes.
    expect(Math.abs(at("innerBox") - at("overflowBox"))).toBeLessThan(1e-3);
  });

  it("loses its siphon at every power cut where the ends of the tubes hang higher than the drains, and says so", () => {
    const high: Design = JSON.parse(JSON.stringify(design));
    const said = high.overflow.siphon;
    const lowest = Math.min(...high.drains.map((drain) => toSI(drain.inlet.elevation, "length")));
    if (said) said.mouth = { value: 1000 * lowest + 15, unit: "mm" };
    expect(assess(high, demoCatalogue, { curves: false }).findings).toContainEqual(
      expect.objectContaining({ code: "overflow/siphon-runs-dry", severity: "danger" }),
    );
    expect(play(high, "powerCut").events.map(({ code }) => code)).toContain("tubes/lost");
  });

  it("fills the display within the time that its free volume and the flow give, once the siphon is lost", () => {
    const full: Design = JSON.parse(JSON.stringify(design));
    // A sump that is brimful gives more than the display can take.
    full.sump.operatingLevel = { value: 300, unit: "mm" };
    const first = full.loops[0];
    if (first) first.from = { place: "sump.return", depth: { value: 260, unit: "mm" } };
    const running = assess(full, demoCatalogue, { curves: false }).overflow.siphon;
    expect(running?.overflows).toBe(true);
    const lost = play(full, "overflowSiphonLost");
    expect(lost.verdict).toBe("wet");
    // Continuity: A (rim - level) / Q from the moment at 60 s; the flow falls a little as the level rises.
    const after = (lost.timeToTrouble ?? 0) - 60;
    expect(after / (running?.timeToTrouble ?? 1)).toBeGreaterThan(0.98);
    expect(after / (running?.timeToTrouble ?? 1)).toBeLessThan(1.25);
    const findings = withSweep(
      assess(full, demoCatalogue, { curves: false }),
      safetySweep(full, demoCatalogue),
    ).findings;
    expect(findings).toContainEqual(
      expect.objectContaining({ code: "overTime/overflow-siphon-lost", severity: "danger" }),
    );
  });
});

describe("a first design whose glass must not be drilled", () => {
  it.each([
    [60, "three"],
    [250, "two"],
    [520, "three"],
    [3000, "three"],
  ] as const)(
    "of %d L with %s drains hangs its overflow on the glass, without danger but with the honest warning",
    (volume, drains) => {
      const first = made(volume, drains);
      expect(first.design.overflow.kind).toBe("hangOn");
      const sweep = safetySweep(first.design, demoCatalogue);
      const all = withSweep(assess(first.design, demoCatalogue, { curves: false }), sweep).findings;
      expect(all.filter(({ severity }) => severity === "danger").map(({ code }) => code)).toEqual([]);
      const told = all.filter(
        ({ code }) => code === "overTime/overflow-siphon-lost" || code === "overflow/siphon-alone",
      );
      expect(told).toHaveLength(1);
      expect(told[0]?.severity).toBe("warning");
      expect(first.notes.map(({ code }) => code)).toContain("hangOn");
    },
    patience,
  );

  it(
    "gives finite numbers for whatever tank",
    () => {
      const side = (min: number, max: number) => fc.integer({ min, max }).map((value) => ({ value, unit: "mm" }));
      fc.assert(
        fc.property(
          side(400, 2500),
          side(250, 900),
          side(250, 800),
          fc.constantFrom("one" as const, "two" as const, "three" as const),
          (length, width, height, drains) => {
            const first = firstDesign(
              { tank: { length, width, height }, overflow: { glass: "keep", drains } },
              demoCatalogue,
            );
            const { overflow } = assess(first.design, demoCatalogue, { curves: false });
            expect(overflow.siphon).toBeDefined();
            for (const value of Object.values(overflow.siphon ?? {}))
              if (typeof value === "number") expect(Number.isFinite(value)).toBe(true);
            expect(Number.isFinite(overflow.displayLevel)).toBe(true);
            const lost = play(first.design, "overflowSiphonLost");
            expect(lost.status).toBe("finished");
            expect(lost.volumeError).toBeLessThan(1e-9);
          },
        ),
        { numRuns: 5, seed: 11, endOnFailure: true },
      );
    },
    patience,
  );
});
