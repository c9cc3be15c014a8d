import { readFileSync } from "node:fs";
import { type Scenario, scenariosOf, type VesselTrack, type WhatIf, whatIf } from "@tidewright/advice";
import { demoCatalogue } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import { formatQuantity, unitSystems } from "@tidewright/units";
import { DOMParser } from "@xmldom/xmldom";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { textWidth } from "../svg/textWidth.ts";
import { levelPlotModel } from "./levelPlotModel.ts";
import { levelPlotSvg } from "./levelPlotSvg.ts";
import { timeAxis } from "./timeAxis.ts";

const demo = (name: string): Design =>
  JSON.parse(readFileSync(new URL(`../../../../examples/${name}.json`, import.meta.url), "utf8"));
const { topOff: _, ...unfilled } = demo("waiting-room-reef");
const demos: Design[] = [
  ...["waiting-room-reef", "first-tank-110", "hotel-lobby", "school-corridor-soft"].map(demo),
  { ...unfilled, name: "Without top-off" },
];
const size = { width: 900, height: 600 };
const options = (design: Design) => ({ ...size, units: unitSystems.metric, names: design, title: design.name });

const parsed = (svg: string) =>
  new DOMParser({
    onError: (level, message) => {
      throw new Error(`${level}: ${message}`);
    },
  }).parseFromString(svg, "image/svg+xml");
const textsOf = (svg: string) => [...parsed(svg).getElementsByTagName("text")];

/** A tank of 1 m2 and 0.5 m rises evenly from 0.3 m to 0.5 m above its floor in 100 s, with its rim at 0.4 m. */
const rising: WhatIf = {
  scenario: { id: "own", kind: "own", subjects: ["Rise"], duration: 100, evaporation: false, events: [] },
  verdict: "wet",
  timeToTrouble: 50,
  status: "finished",
  reached: 100,
  vessels: [
    {
      place: "display",
      path: "/display",
      floor: 1,
      rim: 1.4,
      area: 1,
      start: 1.3,
      end: 1.5,
      highest: 1.5,
      highestAt: 100,
      lowest: 1.3,
      lowestAt: 0,
      margin: -0.1,
      spilled: 0.002,
    },
  ],
  events: [{ t: 50, code: "rim/over", path: "/display", name: "display" }],
  spilled: 0.002,
  evaporated: 0,
  toppedUp: 0,
  volumeError: 0,
  drainPeak: [],
  steps: 1,
  film: {
    times: [0, 100],
    levels: [[1.3, 1.5]],
    weirFlow: [],
    drainFlow: [],
    drainFill: [],
    outletFlow: [],
    lineFill: [],
  },
};
const none = { drains: [], loops: [] };
const plain = { ...size, units: unitSystems.metric, names: none, title: "Tank" };

describe.each(demos.map((design): [string, Design] => [design.name, design]))("plots of %s", (_, design) => {
  it.each(scenariosOf(design).map((scenario): [string, Scenario] => [scenario.id, scenario]))("%s", (_id, scenario) => {
    const played = whatIf(design, demoCatalogue, scenario);
    const svg = levelPlotSvg(played, options(design));
    expect(svg).not.toMatch(/NaN|undefined|Infinity|https?:\/\/(?!www\.w3\.org\/2000\/svg)/);
    const texts = textsOf(svg);
    const words = texts.map((each) => each.textContent ?? "");
    for (const vessel of played.vessels) expect(words).toContain(figureOf(vessel));
    // Every text lies on the paper, by a measure that errs to the wide side.
    for (const each of texts) {
      const number = (name: string) => Number(each.getAttribute(name));
      const wide = textWidth(each.textContent ?? "", number("font-size"));
      const anchor = each.getAttribute("text-anchor");
      if (number("x") === 0) continue;
      const start = number("x") - (anchor === "end" ? wide : anchor === "middle" ? wide / 2 : 0);
      expect([each.textContent, start >= 0 && start + wide <= size.width + 12]).toEqual([each.textContent, true]);
      expect(number("y")).toBeLessThanOrEqual(size.height - 6);
    }
    const model = levelPlotModel(played, options(design));
    model.bands.forEach((band, i) => {
      expect(band.curve.split(/[ML]/).length - 1).toBe(played.film?.times.length);
      expect(band.y1).toBeLessThanOrEqual(model.bands[i + 1]?.y0 ?? model.frame.y1 + 1e-9);
      // Higher water stands higher on the paper, and all of it within the band.
      const { highest, lowest } = played.vessels[i]!;
      expect(band.y(highest)).toBeGreaterThanOrEqual(band.y0 - 1e-9);
      expect(band.y(lowest)).toBeLessThanOrEqual(band.y1 + 1e-9);
      expect(band.over).toBe((band.rimY ?? -1) > band.y(highest));
    });
    model.marks.slice(1).forEach((mark, i) => {
      const before = model.marks[i]!;
      expect(mark.markX - before.markX).toBeGreaterThan((mark.width + before.width) / 2);
    });
    expect(model.frame.y1).toBeLessThan(model.listY);
  });
});

function figureOf({ margin, place, lowest, floor, area }: VesselTrack): string {
  if (place === "topOff") return `${formatQuantity((lowest - floor) * area, "volume", "L")} left`;
  const size = formatQuantity(Math.abs(margin ?? 0), "length", "mm");
  if (Math.abs(margin ?? 0) < 5e-5) return "at its rim";
  return (margin ?? 0) < 0 ? `${size} over` : size;
}

describe("a level that rises evenly through the rim", () => {
  const model = levelPlotModel(rising, plain);
  const band = model.bands[0]!;

  it("stands above it in the second half of the time (analytic), from where the curve crosses it", () => {
    const { x0, x1 } = model.frame;
    expect(band.spilling).toHaveLength(1);
    expect(band.spilling[0]?.[0]).toBeCloseTo((x0 + x1) / 2, 6);
    expect(band.spilling[0]?.[1]).toBeCloseTo(x1, 6);
    expect(band.overRim).toBeDefined();
    expect(model.events[0]).toMatchObject({ kind: "trouble", x: (x0 + x1) / 2 });
  });

  it("is read back from the picture as it was put in", () => {
    expect(model.axis.timeAt(model.axis.x(37))).toBeCloseTo(37, 9);
    expect(band.y(1.4)).toBe(band.rimY);
    expect((band.y(1.3) - band.y(1.4)) / (band.y(1.4) - band.y(1.5))).toBeCloseTo(1, 9);
  });

  it("tells its margin below the rim as a length over it, and the water on the floor", () => {
    expect(band.figure).toBe("100\u202fmm over");
    expect(band.notes).toContain("2\u202fL spilt");
    const us = levelPlotModel(rising, { ...plain, units: unitSystems.us });
    expect(us.bands[0]?.figure).toBe(`${formatQuantity(0.1, "length", "in")} over`);
  });

  it("says so in words for those who do not see it", () => {
    const document = parsed(levelPlotSvg(rising, plain));
    const root = document.documentElement;
    expect(root?.getAttribute("role")).toBe("img");
    const told = (root?.getAttribute("aria-labelledby") ?? "")
      .split(" ")
      .map((id) => document.getElementById(id)?.textContent ?? "");
    expect(told[0]).toBe("Rise: levels over time, Tank");
    expect(told[1]).toContain("2\u202fL of water on the floor");
    expect(told[1]).toContain("50\u202fs: the display passes its rim.");
  });

  it("can be drawn on dark paper with the same marks", () => {
    const light = textsOf(levelPlotSvg(rising, plain)).map((each) => each.textContent);
    expect(textsOf(levelPlotSvg(rising, { ...plain, dark: true })).map((each) => each.textContent)).toEqual(light);
  });

  it("cannot be drawn without its film", () => {
    const { film: _film, ...rest } = rising;
    expect(() => levelPlotSvg(rest, plain)).toThrow(/film/);
  });

  it("stays well-formed whatever the design and the scenario are called", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), fc.string({ unit: "grapheme" }), (title, subject) => {
        const named = { ...rising, scenario: { ...rising.scenario, subjects: [subject] } };
        parsed(levelPlotSvg(named, { ...plain, title }));
      }),
      { numRuns: 300 },
    );
  });
});

describe("the time axis", () => {
  it.each([
    [120, "s"],
    [1800, "min"],
    [90_000, "h"],
    [864_000, "d"],
  ])("counts %d s in %s", (duration, unit) => {
    const axis = timeAxis(duration, 100, 700);
    expect(axis.unit).toBe(unit);
    expect(axis.x(0)).toBe(100);
    expect(axis.x(duration)).toBeCloseTo(700, 9);
    expect(axis.ticks.length).toBeGreaterThan(3);
    for (const { x } of axis.ticks) expect(x >= 100 && x <= 700.001).toBe(true);
  });
});
