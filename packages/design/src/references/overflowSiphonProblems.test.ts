import { readFileSync } from "node:fs";
import { demoCatalogue } from "@tidewright/catalogue";
import { describe, expect, it } from "vitest";
import { geometryOf } from "../engine/geometry.ts";
import { hangOnModel } from "../engine/hangOnModel.ts";
import { usualSiphon } from "../engine/usualSiphon.ts";
import { checkDesign } from "../read/checkDesign.ts";
import type { Design } from "../schema/design.ts";

const text = readFileSync(new URL("../../../../examples/waiting-room-reef.json", import.meta.url), "utf8");
const mm = (value: number) => ({ value, unit: "mm" });

function hung(change: (overflow: Record<string, unknown>) => void = () => {}): Design {
  const design = JSON.parse(text) as Design;
  design.overflow = { ...design.overflow, kind: "hangOn", siphon: usualSiphon(design) };
  change(design.overflow as unknown as Record<string, unknown>);
  return design;
}
const problems = (design: Design) => {
  const reading = checkDesign(design, demoCatalogue);
  return reading.ok ? [] : reading.problems.map(({ path, message }) => `${path}: ${message}`);
};

describe("an overflow that hangs on the glass", () => {
  it("is sound with the siphon that is usual", () => {
    expect(problems(hung())).toEqual([]);
  });

  it("needs a siphon, which no other overflow has", () => {
    expect(problems(hung((overflow) => delete overflow["siphon"]))).toEqual([
      "/overflow/siphon: the overflow hangs on the glass, but nothing is said of its siphon",
    ]);
    const inside = hung((overflow) => {
      overflow["kind"] = "internalBox";
    });
    expect(problems(inside)).toEqual(["/overflow/siphon: only an overflow that hangs on the glass has a siphon"]);
  });

  it("is told every mistake in its heights and its length", () => {
    const siphon = { tubes: 2, bore: mm(25), length: mm(300), crest: mm(500), mouth: mm(590) };
    const found = problems(
      hung((overflow) => {
        overflow["siphon"] = { ...siphon, innerBox: { length: mm(300), width: mm(80), floor: mm(595) } };
      }),
    );
    expect(found.map((each) => each.split(":")[0])).toEqual([
      "/overflow/siphon/crest",
      "/overflow/siphon/mouth",
      "/overflow/siphon/mouth",
    ]);
    const short = hung((overflow) => {
      overflow["siphon"] = { ...usualSiphon(JSON.parse(text) as Design), length: mm(200) };
    });
    expect(problems(short)).toEqual([
      "/overflow/siphon/length: tubes of 200 mm do not reach from mouth to mouth over the crest",
    ]);
  });
});

describe("what the engine is told of it", () => {
  it("has an entrance, two bends and an exit for each tube, and takes its inner box off the display", () => {
    const design = hung();
    const model = hangOnModel(design.overflow, 0.85, "crane");
    // Published: Crane TP-410, projecting entrance 0.78, exit 1, two 90 degree bends 14 fT, fT 0.022 at about 1 in.
    expect(Math.abs((model?.tubes.lossCoefficient ?? 0) - (1.78 + 28 * 0.022))).toBeLessThan(0.02);
    expect(model?.crest).toBeGreaterThan(0.85 + 0.6);
    expect(hangOnModel({ ...design.overflow, kind: "externalBox" }, 0.85, "crane")).toBeUndefined();
    const inner = design.overflow.siphon?.innerBox;
    // Analytic: 1500 x 600 mm less the box inside.
    const plan = ((inner?.length.value ?? 0) * (inner?.width.value ?? 0)) / 1e6;
    const { displayWaterArea, rockShare } = geometryOf(design);
    expect(displayWaterArea).toBeCloseTo((0.9 - plan) * (1 - rockShare), 9);
  });
});
