import { demoCatalogue } from "@tidewright/catalogue";
import {
  evaluateMonotoneCubic,
  type Liquid,
  lastFlowAtSpeed,
  type NetworkLink,
  pumpHeadAtSpeed,
} from "@tidewright/engine";
import { describe, expect, it } from "vitest";
import type { Loop } from "../schema/loops.ts";
import type { Part } from "../schema/parts.ts";
import { deviceCurve, type LoopModel, loopModel } from "./loopModel.ts";

const mm = (value: number) => ({ value, unit: "mm" });
const water: Liquid = { density: 1023.34, kinematicViscosity: 0.93e-6 };
const litrePerHour = 1 / 3.6e6;

const pipe = (series: string, length = 1000): Part => ({ kind: "pipe", series, length: mm(length) });
const fitting = (name: string): Part => ({ kind: "fitting", fitting: name });
const to = (place = "display", more: object = {}): Part => ({ kind: "outlet", to: place, ...more }) as Part;
const tee = (...branches: Part[][]): Part => ({ kind: "tee", branches });

function model(loop: Partial<Loop>): LoopModel {
  const whole: Loop = {
    name: "return",
    from: { place: "sump.return" },
    pumps: [{ ref: "ferrow-c40", placed: "inSump" }],
    run: [pipe("pn16-32"), to()],
    ...loop,
  };
  return loopModel(whole, 0, demoCatalogue, water, "crane", 0.02);
}

const inRun = (run: Part[]) => model({ run });

function linksOf(loop: LoopModel, kind?: NetworkLink["kind"]): readonly NetworkLink[] {
  return loop.model.links.filter((link) => kind === undefined || link.kind === kind);
}

/** The link that stands for a part, by its path in the document. */
function linkFor(loop: LoopModel, path: string): NetworkLink {
  const id = loop.sections.find((section) => section.parts.some((part) => part.path === path))?.link;
  const found = loop.model.links.find((link) => link.id === id);
  if (!found) throw new Error(`no link for ${path}`);
  return found;
}

/** Every end of every link is a node, and a tree of them hangs together. */
function isTree(loop: LoopModel, parallelPumps = 0): void {
  const { nodes, links } = loop.model;
  const ids = new Set(nodes.map((node) => node.id));
  expect(ids.size).toBe(nodes.length);
  expect(new Set(links.map((link) => link.id)).size).toBe(links.length);
  for (const link of links) {
    expect(ids.has(link.from)).toBe(true);
    expect(ids.has(link.to)).toBe(true);
  }
  expect(links.length).toBe(nodes.length - 1 + parallelPumps);
}

describe("a loop of one run", () => {
  it("is a pump between the source and the discharge, and a pipe from there to the outlet", () => {
    const loop = model({});
    isTree(loop);
    expect(linksOf(loop).map(({ kind, from, to }) => ({ kind, from, to }))).toEqual([
      { kind: "pump", from: "source", to: "discharge" },
      { kind: "pipe", from: "discharge", to: loop.outlets[0]?.node },
    ]);
    expect(loop.model.nodes.find((node) => node.id === "source")?.kind).toBe("fixedHead");
    expect(loop.model.nodes.find((node) => node.id === loop.outlets[0]?.node)?.kind).toBe("fixedHead");
  });

  it("is one link as long as its bore stays, with lengths and losses added up", () => {
    // EN ISO 1452-2: 32 x 2.4 has 27.2 mm. Crane TP-410: elbow 30 fT, fT 0.0217; exit 1.
    const loop = inRun([pipe("pn16-32", 600), fitting("elbow90"), pipe("pn16-32", 400), to()]);
    const link = linkFor(loop, "/loops/0/run/0");
    if (link.kind !== "pipe") throw new Error("no pipe");
    expect(linksOf(loop, "pipe")).toHaveLength(1);
    expect(link).toMatchObject({
      length: 1,
      diameter: expect.closeTo(0.0272, 9),
      roughness: 1.5e-6,
      checkValve: false,
    });
    expect(Math.abs(link.minorLoss / (30 * 0.0217 + 1) - 1)).toBeLessThan(0.02);
  });

  it("is a new link wherever the bore changes, the change itself on the narrower side", () => {
    const loop = inRun([pipe("pn16-40", 600), pipe("pn16-32", 400), to()]);
    isTree(loop);
    const [wide, narrow] = linksOf(loop, "pipe");
    expect(wide).toMatchObject({ length: 0.6, minorLoss: 0 });
    // Crane TP-410: 0.5 (1 - (27.2/34)^2) = 0.18, exit 1.
    expect(narrow).toMatchObject({ length: 0.4, minorLoss: expect.closeTo(1.18, 9) });
    const back = inRun([pipe("pn16-32", 400), pipe("pn16-40", 600), to()]);
    // Borda-Carnot: (1 - 0.64)^2 = 0.1296.
    expect(linksOf(back, "pipe").map((link) => (link.kind === "pipe" ? link.minorLoss : 0))).toEqual([
      expect.closeTo(0.1296, 9),
      expect.closeTo(1, 12),
    ]);
  });

  it("has a nozzle as a link of its own bore", () => {
    const loop = inRun([pipe("pn16-32"), to("display", { nozzle: mm(18), depth: mm(40), siphonBreak: mm(15) })]);
    isTree(loop);
    // Crane TP-410: 1 + 0.5 (1 - (18/27.2)^2) = 1.28103.
    expect(linkFor(loop, "/loops/0/run/1")).toMatchObject({
      kind: "valve",
      diameter: 0.018,
      lossCoefficient: expect.closeTo(1.28103, 5),
    });
    expect(loop.outlets).toEqual([
      {
        path: "/loops/0/run/1",
        node: expect.any(String),
        link: linkFor(loop, "/loops/0/run/1").id,
        place: "display",
        depth: 0.04,
        jetDiameter: 0.018,
        siphonBreakDepth: 0.015,
      },
    ]);
  });

  it("holds the water of its pipes", () => {
    // Analytic: pi/4 (0.034^2 x 0.6 + 0.0272^2 x 0.4) = 0.7772 L.
    expect(inRun([pipe("pn16-40", 600), pipe("pn16-32", 400), to()]).pipeVolume * 1000).toBeCloseTo(0.7772, 3);
    // Branches too: pi/4 (0.034^2 x 0.6 + 2 x 0.0272^2 x 0.4) = 1.0096 L.
    const forked = inRun([pipe("pn16-40", 600), tee([pipe("pn16-32", 400), to()], [pipe("pn16-32", 400), to()])]);
    expect(forked.pipeVolume * 1000).toBeCloseTo(1.0096, 3);
  });
});

describe("valves in a loop", () => {
  it.each(["swingCheck", "springCheck", "footValve"])("pass water one way only where they are a %s", (name) => {
    const loop = inRun([pipe("pn16-40"), fitting(name), pipe("pn16-32"), to()]);
    expect(linkFor(loop, "/loops/0/run/1").checkValve).toBe(true);
    expect(linkFor(loop, "/loops/0/run/2").checkValve).toBe(false);
  });

  it("close their stretch for good where they are shut", () => {
    const loop = inRun([pipe("pn16-32"), { kind: "valve", valve: "ball", opening: 0 }, to()]);
    expect(linkFor(loop, "/loops/0/run/1")).toMatchObject({
      kind: "valve",
      lossCoefficient: Number.POSITIVE_INFINITY,
    });
  });
});

describe("a device in a loop", () => {
  it("is a link of its own with its maker's curve", () => {
    const loop = inRun([pipe("pn16-32"), { kind: "device", ref: "uv-36" }, pipe("pn16-32"), to()]);
    isTree(loop);
    const link = linkFor(loop, "/loops/0/run/1");
    if (link.kind !== "device" || !link.curve) throw new Error("no device curve");
    // Demonstration catalogue (invented): 0.45 m at 2200 L/h, nothing at rest.
    expect(evaluateMonotoneCubic(link.curve, 2200 * litrePerHour)).toBeCloseTo(0.45, 9);
    expect(evaluateMonotoneCubic(link.curve, 0)).toBe(0);
    expect(loop.sections.find((section) => section.link === link.id)?.parts).toHaveLength(1);
  });

  it("with one point follows the square law through it, with none loses nothing", () => {
    // Analytic: 0.5 / 0.001^2.
    expect(deviceCurve({ lossPoints: [{ flow: 0.001, headLoss: 0.5 }] })).toEqual({
      coefficient: expect.closeTo(5e5, 6),
    });
    expect(deviceCurve({ lossPoints: [] })).toEqual({ coefficient: 0 });
    expect(deviceCurve({ lossPoints: [{ flow: 0, headLoss: 0 }] })).toEqual({ coefficient: 0 });
  });
});

describe("a tee of branches", () => {
  const branch = (series: string, place = "display") => [pipe(series), to(place)];

  it("of two is one tee: the first branch goes straight on, the second turns", () => {
    const loop = inRun([pipe("pn16-40"), tee(branch("pn16-32"), branch("pn16-25"))]);
    isTree(loop);
    const first = linkFor(loop, "/loops/0/run/1/branches/0/0");
    const second = linkFor(loop, "/loops/0/run/1/branches/1/0");
    const main = linkFor(loop, "/loops/0/run/0");
    expect(loop.model.tees).toEqual([
      {
        node: main.to,
        run: [main.id, first.id],
        branch: second.id,
        // EN ISO 1452-2: 40 x 3.0 has 34.0 mm, 25 x 1.9 has 21.2 mm.
        runDiameter: expect.closeTo(0.034, 9),
        branchDiameter: expect.closeTo(0.0212, 9),
      },
    ]);
    expect(first.from).toBe(main.to);
    expect(second.from).toBe(main.to);
  });

  it("has a branch no wider than the run it leaves", () => {
    const loop = inRun([pipe("pn16-25"), tee(branch("pn16-25"), branch("pn16-40"))]);
    expect(loop.model.tees?.[0]?.branchDiameter).toBeCloseTo(0.0212, 9);
  });

  it.each([2, 3, 4, 8])("of %d is one less of them in a row, joined without loss", (count) => {
    const branches = Array.from({ length: count }, (_, i) => branch("pn16-25", i === 0 ? "display" : `sump.c${i}`));
    const loop = inRun([pipe("pn16-40"), tee(...branches)]);
    isTree(loop);
    const tees = loop.model.tees ?? [];
    expect(tees).toHaveLength(count - 1);
    const byId = (id: string) => loop.model.links.find((link) => link.id === id);
    tees.forEach((entry, i) => {
      // Branches leave in the order of the document, from the second on.
      expect(entry.branch).toBe(linkFor(loop, `/loops/0/run/1/branches/${i + 1}/0`).id);
      const [into, onward] = entry.run.map(byId);
      expect(into?.to).toBe(entry.node);
      expect(onward?.from).toBe(entry.node);
      expect(byId(entry.branch)?.from).toBe(entry.node);
      const next = tees[i + 1];
      if (next) {
        expect(entry.run[1]).toBe(next.run[0]);
        expect(onward).toMatchObject({ kind: "valve", lossCoefficient: 0, diameter: expect.closeTo(0.034, 9) });
      } else expect(entry.run[1]).toBe(linkFor(loop, "/loops/0/run/1/branches/0/0").id);
    });
    expect(tees[0]?.run[0]).toBe(linkFor(loop, "/loops/0/run/0").id);
    expect(loop.outlets.map((outlet) => outlet.place).sort()).toEqual(
      branches.map((_, i) => (i === 0 ? "display" : `sump.c${i}`)).sort(),
    );
  });

  it("can stand in a branch of another", () => {
    const inner = [pipe("pn16-32"), tee(branch("pn16-25"), branch("pn16-20"))];
    const loop = inRun([pipe("pn16-40"), tee(inner, branch("pn16-25", "sump.a"))]);
    isTree(loop);
    expect(loop.model.tees).toHaveLength(2);
    expect(loop.outlets).toHaveLength(3);
    expect(loop.model.tees?.map((entry) => entry.runDiameter).sort()).toEqual([
      expect.closeTo(0.0272, 9),
      expect.closeTo(0.034, 9),
    ]);
  });
});

describe("the pumps of a loop", () => {
  const two = [
    { ref: "ferrow-c40", placed: "inSump" },
    { ref: "ferrow-c40", placed: "inSump" },
  ] as Loop["pumps"];

  it("stand side by side where nothing is said", () => {
    const loop = model({ pumps: two });
    isTree(loop, 1);
    expect(linksOf(loop, "pump").map(({ from, to }) => [from, to])).toEqual([
      ["source", "discharge"],
      ["source", "discharge"],
    ]);
  });

  it("stand one behind the other in series", () => {
    const three = model({ pumps: [...two, ...two.slice(1)], arrangement: "series" });
    isTree(three);
    const ends = linksOf(three, "pump").map(({ from, to }) => [from, to]);
    expect(ends[0]?.[0]).toBe("source");
    expect(ends[1]?.[0]).toBe(ends[0]?.[1]);
    expect(ends[2]?.[0]).toBe(ends[1]?.[1]);
    expect(ends[2]?.[1]).toBe("discharge");
    expect(new Set(ends.flat()).size).toBe(4);
  });

  it("run at the speed they are set to, a constant one at full speed whatever is said", () => {
    const head = (ref: string, speed: number) => {
      const loop = model({ pumps: [{ ref, speed, placed: "inSump" }] });
      const link = linksOf(loop, "pump")[0];
      return { speed: loop.pumps[0]?.speed, head: link?.kind === "pump" ? pumpHeadAtSpeed(link.pump, 0) : Number.NaN };
    };
    // Printed in the demonstration table: 2.54 m at rest at 0.8 speed; the constant pump 1.8 m.
    expect(head("ferrow-c40", 0.8)).toEqual({ speed: 0.8, head: expect.closeTo(2.54, 9) });
    expect(head("ferrow-b12", 0.8)).toEqual({ speed: 1, head: expect.closeTo(1.8, 9) });
  });

  it("lift nothing and carry nothing where none is chosen", () => {
    const loop = model({ pumps: [{ placed: "inSump" }] });
    const link = linksOf(loop, "pump")[0];
    if (link?.kind !== "pump") throw new Error("no pump");
    expect(loop.pumps[0]?.row).toBeUndefined();
    expect(pumpHeadAtSpeed(link.pump, 0)).toBeLessThan(1e-5);
    expect(lastFlowAtSpeed(link.pump)).toBeLessThan(1e-5);
  });

  it("stand where they are said to, or a little over the sump's floor", () => {
    const elevation = (pump: Loop["pumps"][number]) => model({ pumps: [pump] }).pumps[0]?.elevation;
    expect(elevation({ placed: "external", elevation: mm(300) })).toBeCloseTo(0.3, 12);
    const free = elevation({ placed: "inSump" }) ?? 0;
    expect(free).toBeGreaterThan(0.02);
    expect(free).toBeLessThan(0.02 + 0.1);
  });
});

describe("a suction line", () => {
  const external = (suction: Part[]) => model({ suction, pumps: [{ ref: "calder-fold-p30", placed: "external" }] });

  it("lies between the source and the pump, with an entrance where none is named", () => {
    const loop = external([pipe("pn16-40", 300)]);
    isTree(loop);
    const link = linkFor(loop, "/loops/0/suction/0");
    // Published: Crane TP-410, sharp entrance 0.5.
    expect(link).toMatchObject({ kind: "pipe", from: "source", to: "suction", length: 0.3, minorLoss: 0.5 });
    expect(linksOf(loop, "pump")[0]).toMatchObject({ from: "suction", to: "discharge" });
    expect(loop.sections.find((section) => section.link === link.id)?.side).toBe("suction");
  });

  it.each([
    // Published: Crane TP-410, rounded entrance 0.04, foot valve 420 fT (fT 0.0207 at 34 mm). Strainer: common practice, no source.
    ["entranceRounded", 0.04],
    ["strainer", 2],
    ["footValve", 420 * 0.0207],
  ])("has only its own inlet where it names one: %s, K %d", (name, k) => {
    const loop = external([fitting(name), pipe("pn16-40", 300)]);
    const link = linkFor(loop, "/loops/0/suction/1");
    if (link.kind !== "pipe") throw new Error("no pipe");
    expect(Math.abs(link.minorLoss / k - 1)).toBeLessThan(0.02);
    expect(link.checkValve).toBe(name === "footValve");
  });

  it("is as wide as its narrowest part", () => {
    expect(external([pipe("pn16-50", 300), pipe("pn16-32", 300)]).suctionBore).toBeCloseTo(0.0272, 9);
    expect(model({}).suctionBore).toBeUndefined();
  });
});
