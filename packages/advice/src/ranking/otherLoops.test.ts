import { demoCatalogue } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import { describe, expect, it } from "vitest";
import { rank } from "../rank.ts";
import { example } from "../testing/examples.ts";

function reef(change: (loops: Design["loops"]) => void) {
  const design = example("waiting-room-reef.json", ({ loops }) => change(loops));
  return rank(design, demoCatalogue, { pairs: false });
}

// Analytic: with no other loop the wish is the turnover times the display's volume, whatever pump hangs there now. Without one
// the display stands at its crest, some 15 mm lower, which is less than 3 % of its volume.
describe("what a loop's pumps are asked for", () => {
  it("is the same where no pump is chosen yet, though water then runs back through the branches", () => {
    const chosen = reef(() => {});
    const open = reef((loops) => {
      delete loops[0]?.pumps[0]?.ref;
    });
    expect(open.wish.low).toBeLessThan(chosen.wish.low);
    expect(open.wish.low).toBeGreaterThan(0.97 * chosen.wish.low);
    expect(open.wish.high).toBeGreaterThan(0.97 * chosen.wish.high);
    expect(open.candidates[0]?.label).toBe(chosen.candidates[0]?.label);
  });
});
