import { demoCatalogue } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import { describe, expect, it } from "vitest";
import { example } from "../testing/examples.ts";
import { scenariosOf } from "./scenariosOf.ts";
import { whatIf } from "./whatIf.ts";

function reef(change: (design: Design) => void): Design {
  const design = example("waiting-room-reef.json");
  change(design);
  return design;
}

const play = (design: Design, id: string) => {
  const scenario = scenariosOf(design).find((each) => each.id === id);
  if (!scenario) throw new Error(`no ${id}`);
  return whatIf(design, demoCatalogue, scenario, false);
};

/** A line from the display to the sump with a pump of its own. */
function withFeed(design: Design, depth?: number): void {
  design.loops.push({
    name: "feed",
    from: { place: "display", ...(depth === undefined ? {} : { depth: { value: depth, unit: "m" } }) },
    pumps: [{ ref: "ferrow-c40", speed: 0.1, placed: "inTank" }],
    run: [
      { kind: "pipe", series: "pn16-25", length: { value: 1, unit: "m" } },
      { kind: "outlet", to: "sump.drain", depth: { value: 20, unit: "mm" } },
    ],
  });
}

describe("the scenarios of a design", () => {
  it("let each of two pumps that fill and empty the display fail, though each has a loop of its own", () => {
    const alone = reef(() => {});
    const fed = reef((design) => withFeed(design, 0.1));
    const failing = (design: Design) =>
      scenariosOf(design).flatMap(({ id }) => (id.startsWith("pumpFails") ? [id] : []));
    expect(failing(alone)).toEqual([]);
    expect(failing(fed)).toEqual(["pumpFails:0.0", "pumpFails:1.0"]);
  });

  it("siphon the display through a line without its pump's power, down to its intake: as deep as said, or the floor", () => {
    const floor = 0.85;
    const at = (depth?: number) =>
      play(
        reef((design) => withFeed(design, depth)),
        "powerCut",
      );
    const shallow = at(0.1);
    // Analytic: the intake lies 0.1 m below the running level.
    expect(shallow.vessels[0]?.end).toBeCloseTo((shallow.vessels[0]?.start ?? 0) - 0.1, 4);
    const unsaid = at();
    expect(unsaid.vessels[0]?.end).toBeCloseTo(floor + 0.03, 4);
    expect(unsaid.verdict).toBe("wet");
  });

  it("empty no vessel below its floor where an outlet is said to lie deeper", () => {
    const design = reef((each) => {
      each.loops[0] = {
        name: "return",
        from: { place: "sump.return" },
        pumps: [{ ref: "ferrow-c40", placed: "inSump" }],
        run: [
          { kind: "pipe", series: "pn16-25", length: { value: 1.4, unit: "m" }, rise: { value: 1.2, unit: "m" } },
          { kind: "outlet", to: "display", depth: { value: 2, unit: "m" } },
        ],
      };
    });
    expect(play(design, "powerCut").vessels[0]?.lowest).toBeGreaterThan(0.85 - 1e-5);
  });

  it("follow a top-off that is stuck open until its reservoir is empty, and let nothing of it evaporate", () => {
    const slow = reef((design) => {
      design.topOff = { reservoir: { value: 80, unit: "L" }, flow: { value: 1.5, unit: "L/h" } };
    });
    const played = play(slow, "topOffStuckOpen");
    expect(played.toppedUp).toBeCloseTo(0.08, 4);
    expect(played.evaporated).toBe(0);
    // Analytic: three chambers of 0.129, 0.172 and 0.129 m2 under a rim of 0.42 m have no room for 80 L.
    const room = played.vessels
      .filter(({ place }) => place.startsWith("sump."))
      .reduce((sum, { area, start }) => sum + area * (0.42 - start), 0);
    expect(room).toBeLessThan(0.08);
    expect(played.verdict).toBe("wet");
    expect(played.spilled).toBeLessThan(0.08 - room);
    expect(played.spilled).toBeGreaterThan(0.08 - room - 0.005);
  });
});
