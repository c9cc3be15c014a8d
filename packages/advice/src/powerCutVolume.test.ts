import { demoCatalogue } from "@tidewright/catalogue";
import type { Design, Part } from "@tidewright/design";
import { describe, expect, it } from "vitest";
import { assess } from "./assess.ts";
import { example } from "./testing/examples.ts";

function demo(change: (design: Design) => void = () => {}) {
  const design = example("waiting-room-reef.json");
  change(design);
  return assess(design, demoCatalogue, { curves: false });
}

function outlets(run: readonly Part[], change: (outlet: Extract<Part, { kind: "outlet" }>) => void): void {
  for (const part of run) {
    if (part.kind === "outlet" && part.to === "display") change(part);
    if (part.kind === "tee") for (const branch of part.branches) outlets(branch, change);
  }
}

const mm = (value: number) => ({ value, unit: "mm" });
const round = (bore: number, length: number) => (Math.PI / 4) * bore ** 2 * length;

/** Water surface of the display: 1500 x 600 mm less the box of 350 x 150 mm, less 12 % rock. */
const displayArea = (1.5 * 0.6 - 0.35 * 0.15) * (1 - 0.12);
const crest = 0.85 + 0.568;

// Analytic throughout: areas times heights from the demo's own measures. Only the two running levels are taken from the assessment.
describe("the water that falls back on a power cut", () => {
  it("is the display down to its siphon breaks, the box down to its lowest inlet, and the pipes", () => {
    const { sump, overflow } = demo();
    // The holes lie 15 mm under the surface, which is lower than the crest.
    expect(overflow.displayLevel - 0.015).toBeLessThan(crest);
    const display = displayArea * 0.015;
    // The siphon's inlet stands 430 mm over the display's floor at 850 mm.
    const box = 0.35 * 0.15 * (overflow.boxLevel - (0.85 + 0.43));
    // EN ISO 1452-2, PN 16: 25 x 1.9 -> 21.2, 32 x 2.4 -> 27.2, 40 x 3.0 -> 34.0, 50 x 3.7 -> 42.6 mm; hoses by their bore.
    const returns =
      round(0.034, 0.45 + 0.3) +
      round(0.0272, 1.05 + 0.2) +
      round(0.0212, 0.35 + 0.06 + 0.9 + 0.06) +
      round(0.02, 0.7 + 0.9 + 0.4 + 0.5) +
      round(0.016, 0.3 + 0.4);
    // Counted as full, the dry one too: on the safe side.
    const drains = round(0.0272, 0.43 + 0.25 + 0.38) + round(0.034, 0.515 + 0.65) + round(0.0426, 0.545 + 0.65);
    expect(sump.drainDown.display).toBeCloseTo(display, 9);
    expect(sump.drainDown.box).toBeCloseTo(box, 9);
    expect(sump.drainDown.pipes).toBeCloseTo(returns + drains, 9);
    expect(sump.drainDown.total).toBeCloseTo(display + box + returns + drains, 9);
    // By hand: 0.7458 m2 x 15 mm = 11.187 L.
    expect(sump.drainDown.display * 1000).toBeCloseTo(11.187, 3);
  });

  it("is the display down to the nozzles where there is no siphon break", () => {
    const { sump } = demo((design) => {
      for (const loop of design.loops)
        outlets(loop.run, (outlet) => {
          delete outlet.siphonBreak;
        });
    });
    expect(sump.drainDown.display).toBeCloseTo(displayArea * 0.04, 9);
  });

  it("is set by the lowest siphon break alone", () => {
    let n = 0;
    const { sump } = demo((design) => {
      outlets(design.loops[0]?.run ?? [], (outlet) => {
        outlet.siphonBreak = mm(n++ === 0 ? 12 : 30);
      });
    });
    expect(n).toBe(2);
    expect(sump.drainDown.display).toBeCloseTo(displayArea * 0.03, 9);
  });

  it.each([
    ["breaks that lie above the crest", 2],
    ["outlets that hang over the water", -30],
  ])("is the display down to its crest with %s", (_, depth) => {
    const { sump, overflow } = demo((design) => {
      outlets(design.loops[0]?.run ?? [], (outlet) => {
        if (depth > 0) outlet.siphonBreak = mm(depth);
        else {
          outlet.depth = mm(depth);
          delete outlet.siphonBreak;
        }
      });
    });
    expect(overflow.displayLevel - crest).toBeGreaterThan(0.005);
    expect(sump.drainDown.display).toBeCloseTo(displayArea * (overflow.displayLevel - crest), 9);
  });

  it("fits where the chambers' room over their running levels is larger, and by how much", () => {
    const { sump } = demo();
    // The sump's rim: 20 + 400 mm. Chambers of 300, 400 and 300 mm by 430 mm.
    const areas = [0.3 * 0.43, 0.4 * 0.43, 0.3 * 0.43];
    const room = sump.chambers.reduce((sum, chamber, i) => sum + (areas[i] ?? 0) * (0.42 - chamber.level), 0);
    expect(sump.chambers[2]?.level).toBeCloseTo(0.02 + 0.2, 12);
    expect(sump.room).toBeCloseTo(room, 12);
    expect(sump.margin).toBeCloseTo(room - sump.drainDown.total, 12);
    // After the cut the volume stands over the running levels: refill the chambers up to the level that is told.
    const taken = sump.chambers.reduce(
      (sum, chamber, i) => sum + (areas[i] ?? 0) * Math.max(0, sump.powerCutLevel - chamber.level),
      0,
    );
    expect(taken).toBeCloseTo(sump.drainDown.total, 12);
  });

  it("is just taken in at the highest safe level of the return chamber", () => {
    const { sump } = demo((design) => {
      outlets(design.loops[0]?.run ?? [], (outlet) => {
        outlet.siphonBreak = mm(80);
      });
    });
    const safe = sump.safeOperatingLevel;
    // Below its neighbour's running level, so that the others stand as they run whatever stands in the return chamber.
    expect(0.02 + safe).toBeLessThan(sump.chambers[1]?.level ?? 0);
    // The others hold what they have room for; the rest fills 300 x 430 mm up to the rim at 400 mm.
    const others =
      0.3 * 0.43 * (0.42 - (sump.chambers[0]?.level ?? 0)) + 0.4 * 0.43 * (0.42 - (sump.chambers[1]?.level ?? 0));
    expect(others + 0.3 * 0.43 * (0.4 - safe)).toBeCloseTo(sump.drainDown.total, 12);
  });
});

describe("a sump of which a chamber runs over while running", () => {
  // The drain chamber's baffle stands as high as the rim, 400 mm, and water runs over it.
  const over = (more: (design: Design) => void = () => {}) =>
    demo((design) => {
      const [first] = design.sump.chambers;
      if (first) first.baffle = mm(400);
      more(design);
    });

  it("is a danger with level and rim, and has no room for what falls back", () => {
    const { sump, findings } = over();
    const found = findings.filter(({ code }) => code === "sump/over-rim");
    expect(found).toMatchObject([{ severity: "danger", at: "/sump/chambers/0", dimension: "length" }]);
    // Over a baffle of 400 mm, 300 mm wide: H = (Q / (0.602 (2/3) sqrt(2 g) b))^(2/3), a few millimetres for some 1500 L/h.
    expect(found[0]?.value).toBeGreaterThan(0.4);
    expect(found[0]?.value).toBeLessThan(0.42);
    expect(found[0]?.limit).toBeCloseTo(0.4, 12);
    expect(found[0]?.data?.["name"]).toBe("drain and socks");
    expect(sump.room).toBe(0);
    expect(sump.margin).toBe(-sump.drainDown.total);
    expect(sump.safeOperatingLevel).toBe(0);
    // One cause, one finding.
    expect(findings.map(({ code }) => code)).not.toContain("sump/too-small");
  });

  it("is none with the sump a little higher, and the room is the room again", () => {
    const { sump, findings } = over((design) => {
      design.sump.height = mm(430);
    });
    expect(findings.map(({ code }) => code)).not.toContain("sump/over-rim");
    const room = sump.chambers.reduce((sum, { area, level }) => sum + area * (sump.rim - level), 0);
    expect(sump.room).toBeCloseTo(room, 12);
    expect(sump.safeOperatingLevel).toBeGreaterThan(0);
  });

  it("is told of the return chamber too, whose operating level may be lowered", () => {
    const { sump, findings } = demo((design) => {
      design.sump.operatingLevel = mm(410);
    });
    const paths = findings.filter(({ code }) => code === "sump/over-rim").map(({ at }) => at);
    expect(paths).toContain("/sump/chambers/2");
    expect(sump.room).toBe(0);
    expect(sump.safeOperatingLevel).toBeGreaterThan(0);
  });
});

describe("a sump under the tank", () => {
  const fits = (stand: number, floor = 20) => {
    const { findings } = demo((design) => {
      design.display.standHeight = mm(stand);
      design.sump.floor = mm(floor);
    });
    return findings.filter(({ code }) => code === "sump/does-not-fit");
  };

  it("does not fit where its rim stands above the tank's floor", () => {
    // 20 mm under it and 400 mm of glass.
    expect(fits(100)).toMatchObject([{ severity: "warning", at: "/sump/height", limit: 0.1 }]);
    expect(fits(100)[0]?.value).toBeCloseTo(0.42, 12);
    expect(fits(419).length).toBe(1);
    expect(fits(420)).toEqual([]);
    expect(fits(421)).toEqual([]);
  });

  it("is not asked of a tank on the floor, nor of a sump in the cellar", () => {
    expect(fits(0)).toEqual([]);
    expect(fits(100, -2500)).toEqual([]);
  });
});
