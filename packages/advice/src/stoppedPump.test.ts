import { demoCatalogue } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assess } from "./assess.ts";
import { example } from "./testing/examples.ts";

function lobby(change: (pumps: Design["loops"][number]["pumps"], design: Design) => void) {
  const design = example("hotel-lobby.json");
  const pumps = design.loops[0]?.pumps;
  if (pumps?.length !== 2) throw new Error("the lobby has two return pumps");
  change(pumps, design);
  return assess(design, demoCatalogue, { curves: false });
}

// Analytic: a pump that keeps water back and does not run might as well not be there.
describe("two pumps side by side of which one stands still", () => {
  it("give what the other gives alone, whichever it is and however fast it runs", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(0, 1),
        fc.double({ min: 0.55, max: 1, noNaN: true }),
        fc.double({ min: 0.7, max: 1.3, noNaN: true }),
        (still, speed, stand) => {
          const both = lobby((pumps, design) => {
            pumps.forEach((pump, i) => {
              pump.speed = i === still ? 0 : speed;
            });
            design.display.standHeight.value *= stand;
          });
          const alone = lobby((pumps, design) => {
            pumps.splice(still, 1);
            for (const pump of pumps) pump.speed = speed;
            design.display.standHeight.value *= stand;
          });
          expect(both.solve.converged && alone.solve.converged).toBe(true);
          expect(both.pumps[still]?.flow).toBe(0);
          expect(Math.abs(both.overflow.flow - alone.overflow.flow)).toBeLessThan(1e-6 * 2e-3);
          expect(Math.abs((both.pumps[1 - still]?.head ?? 0) - (alone.pumps[0]?.head ?? 1))).toBeLessThan(1e-5);
          expect(both.findings.filter((finding) => finding.at === `/loops/0/pumps/${still}`)[0]?.code).toBe(
            "flow/no-lift",
          );
        },
      ),
      { numRuns: 40, seed: 5 },
    );
  });

  it("give nothing where both stand still", () => {
    const state = lobby((pumps) => {
      for (const pump of pumps) pump.speed = 0;
    });
    expect(state.solve.converged).toBe(true);
    expect(state.overflow.flow).toBe(0);
    for (const pump of state.pumps.slice(0, 2)) {
      expect(pump.flow).toBe(0);
      expect(Math.abs(pump.head)).toBeLessThan(10);
    }
  });
});
