import { readdirSync, readFileSync } from "node:fs";
import { demoCatalogue } from "@tidewright/catalogue";
import { readDesign } from "@tidewright/design";
import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import { scenariosOf } from "./scenariosOf.ts";
import { whatIf } from "./whatIf.ts";

const examples = new URL("../../../../examples/", import.meta.url);
const files = ["", "golden/"].flatMap((folder) =>
  readdirSync(new URL(folder, examples))
    .filter((name) => name.endsWith(".json"))
    .map((name) => folder + name),
);

/** Designs that do not come back to where they were, and why. */
const changed: Record<string, string> = {
  "golden/07-seven-mistakes.json":
    "its drain cannot carry the return, so there is no steady state: the display spills, the return chamber empties, the pump draws air",
};

describe("a power cut followed by a restart", () => {
  it.each(files)("brings every level of %s back to where assess has it, within 0.5 mm", (file) => {
    const reading = readDesign(readFileSync(new URL(file, examples), "utf8"), demoCatalogue);
    if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
    // The top-off would make good the low point after the restart, and so add water: that is told by its own events.
    const { topOff: _, ...design } = reading.design;
    const scenario = scenariosOf(design).find((each) => each.kind === "restart");
    if (!scenario) throw new Error("no restart");
    const state = assess(design, demoCatalogue, { curves: false });
    const played = whatIf(design, demoCatalogue, scenario, false);
    expect(played.status).toBe("finished");
    expect(played.volumeError).toBeLessThan(1e-9);
    if (changed[file] !== undefined) {
      expect(played.verdict).toBe("wet");
      return;
    }
    const steady = new Map([
      ["display", state.overflow.displayLevel],
      ["overflowBox", state.overflow.boxLevel],
      ...state.sump.chambers.map((chamber) => [`sump.${chamber.id}`, chamber.level] as const),
    ]);
    for (const vessel of played.vessels)
      expect.soft(Math.abs(vessel.end - (steady.get(vessel.place) ?? Number.NaN)), vessel.place).toBeLessThan(5e-4);
  });
});
