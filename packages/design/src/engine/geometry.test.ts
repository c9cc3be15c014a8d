import { readFileSync } from "node:fs";
import { demoCatalogue } from "@tidewright/catalogue";
import { describe, expect, it } from "vitest";
import { readDesign } from "../read/readDesign.ts";
import type { Design } from "../schema/design.ts";
import { geometryOf } from "./geometry.ts";

const text = readFileSync(new URL("../../../../examples/waiting-room-reef.json", import.meta.url), "utf8");

function demo(change: (design: Design) => void = () => {}): Design {
  const reading = readDesign(text, demoCatalogue);
  if (!reading.ok) throw new Error("the demo cannot be read");
  change(reading.design);
  return reading.design;
}

// Analytic: sums and products of the demo's own measures, 1500 x 600 x 600 mm on a stand of 850 mm.
describe("the vessels of a design", () => {
  const geometry = geometryOf(demo());

  it("stand at their heights above the room's floor", () => {
    expect(geometry.displayFloor).toBeCloseTo(0.85, 12);
    expect(geometry.displayRim).toBeCloseTo(0.85 + 0.6, 12);
    expect(geometry.weirCrest).toBeCloseTo(0.85 + 0.568, 12);
    expect(geometry.boxFloor).toBeCloseTo(0.85, 12);
    expect(geometry.boxRim).toBeCloseTo(0.85 + 0.6, 12);
    expect(geometry.sumpFloor).toBeCloseTo(0.02, 12);
    expect(geometry.sumpRim).toBeCloseTo(0.02 + 0.4, 12);
  });

  it("have the plan areas of their sides", () => {
    expect(geometry.displayGrossArea).toBeCloseTo(1.5 * 0.6, 12);
    expect(geometry.boxArea).toBeCloseTo(0.35 * 0.15, 12);
    expect(geometry.chambers.map((chamber) => chamber.area)).toEqual([
      expect.closeTo(0.3 * 0.43, 12),
      expect.closeTo(0.4 * 0.43, 12),
      expect.closeTo(0.3 * 0.43, 12),
    ]);
  });

  it("lose an internal box and the rock from the display's water", () => {
    // (1.5 x 0.6 - 0.35 x 0.15) x 0.88
    expect(geometry.displayWaterArea).toBeCloseTo(0.7458, 12);
  });

  it.each(["externalBox", "throughWall"] as const)(
    "keep the display whole where the box is outside it (%s)",
    (kind) => {
      const outside = geometryOf(
        demo((design) => {
          design.overflow.kind = kind;
        }),
      );
      expect(outside.displayWaterArea).toBeCloseTo(0.9 * 0.88, 12);
    },
  );

  it("have no less than no water where the box is larger than the display", () => {
    const silly = geometryOf(
      demo((design) => {
        design.overflow.box.length = { value: 3, unit: "m" };
        design.overflow.box.width = { value: 1, unit: "m" };
      }),
    );
    expect(silly.displayWaterArea).toBe(0);
  });

  it("keep the baffles' heights above the sump's floor, and none after the last chamber", () => {
    expect(geometry.chambers.map((chamber) => chamber.baffle)).toEqual([0.26, 0.23, undefined]);
    expect(geometry.chambers.map((chamber) => chamber.baffleWidth)).toEqual([0.43, 0.43, 0.43]);
    expect(geometry.operatingLevel).toBeCloseTo(0.2, 12);
  });

  it("have a plain crest and no rock where nothing is said", () => {
    const plain = geometryOf(
      demo((design) => {
        delete design.overflow.weir.toothOpenShare;
        delete design.overflow.weir.toothHeight;
        delete design.display.rockShare;
      }),
    );
    expect(plain.weir).toMatchObject({ toothOpenShare: 1, toothHeight: 0 });
    expect(plain.displayWaterArea).toBeCloseTo(0.9 - 0.0525, 12);
  });

  it("are the same in whatever unit they were typed", () => {
    const inches = geometryOf(
      demo((design) => {
        // Exact by definition: 1 in = 25.4 mm.
        design.display.length = { value: 1500 / 25.4, unit: "in" };
        design.sump.operatingLevel = { value: 20, unit: "cm" };
      }),
    );
    expect(inches.displayGrossArea).toBeCloseTo(geometry.displayGrossArea, 12);
    expect(inches.operatingLevel).toBeCloseTo(geometry.operatingLevel, 12);
  });
});
