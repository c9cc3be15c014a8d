import { demoCatalogue } from "@tidewright/catalogue";
import { describe, expect, it } from "vitest";
import type { Part } from "../schema/parts.ts";
import { type SizedPart, type SizedRun, sizeRun } from "./sections.ts";

const inch = 0.0254;
const mm = (value: number) => ({ value, unit: "mm" });
const pipe = (series: string, length = 1000): Part => ({ kind: "pipe", series, length: mm(length) });
const fitting = (name: string, more: object = {}): Part => ({ kind: "fitting", fitting: name, ...more }) as Part;
const outlet: Part = { kind: "outlet", to: "display" };

function size(run: readonly Part[], method: "crane" | "hooper" | "darby" = "crane", before?: number): SizedRun {
  return sizeRun(run, "/loops/0/run", demoCatalogue, method, before);
}

function part(run: SizedRun, path: string, kind?: SizedPart["kind"]): SizedPart {
  const found = run.parts.find((entry) => entry.path === path && (kind === undefined || entry.kind === kind));
  if (!found) throw new Error(`no part ${path}`);
  return found;
}

const within = (value: number, expected: number, share: number) =>
  expect(Math.abs(value / expected - 1)).toBeLessThan(share);

describe("a pipe of a run", () => {
  it.each([
    // Published: chart of average inside diameters of Schedule 40 to ASTM D1785, rounded to 0.001 in.
    ["sch40-0.5", 0.602],
    ["sch40-0.75", 0.804],
    ["sch40-1", 1.029],
    ["sch40-1.25", 1.36],
    ["sch40-1.5", 1.59],
    ["sch40-2", 2.047],
  ])("of %s has the average bore of ASTM D1785, %d in", (series, bore) => {
    expect(Math.abs(size([pipe(series), outlet]).lastBore / inch - bore)).toBeLessThan(0.00051);
  });

  it.each([
    // Published: EN ISO 1452-2, 32 x 2.4 and 40 x 3.0 (SDR 13.6).
    ["pn16-32", 27.2],
    ["pn16-40", 34],
  ])("of %s has its outer diameter less two walls, %d mm", (series, bore) => {
    expect(size([pipe(series), outlet]).firstBore).toBeCloseTo(bore / 1000, 9);
  });

  it("has the bore, roughness, length and rise that it is given", () => {
    const own: Part = { kind: "pipe", bore: mm(30), roughness: mm(0.1), length: mm(2000), rise: mm(-500) };
    expect(part(size([own, outlet]), "/loops/0/run/0")).toMatchObject({
      diameter: 0.03,
      roughness: expect.closeTo(1e-4, 15),
      length: 2,
      rise: -0.5,
      lossCoefficient: 0,
    });
  });

  it("is as smooth as drawn tubing where nothing is said", () => {
    // Published: L. F. Moody 1944, drawn tubing 1.5e-6 m.
    expect(part(size([pipe("sch40-1"), outlet]), "/loops/0/run/0").roughness).toBe(1.5e-6);
  });
});

describe("a fitting of a run", () => {
  // Published: Crane TP-410 (2009), K = n fT with fT 0.022 at 1 in (two digits: 2.5 %); n 30, 14, 16, 60.
  it.each([
    ["elbow90", 30],
    ["elbow90Sweep", 14],
    ["elbow45", 16],
    ["teeBranch", 60],
    ["swingCheck", 100],
  ])("%s loses %d fT of Crane", (name, n) => {
    within(part(size([pipe("sch40-1"), fitting(name), outlet]), "/loops/0/run/1").lossCoefficient, n * 0.022, 0.025);
  });

  it("loses by Hooper's two terms", () => {
    // Published: Hooper 1981, 90 degree elbow K1 800, Kinf 0.40: K = 800/Re + 0.4 (1 + 1/1.029).
    const elbow = part(size([pipe("sch40-1"), fitting("elbow90"), outlet], "hooper"), "/loops/0/run/1");
    expect(elbow.laminarLoss).toBe(800);
    within(elbow.lossCoefficient, 0.4 * (1 + 1 / 1.029), 1e-3);
  });

  it("loses by Darby's three terms", () => {
    // Published: Silverberg and Darby 1999, K1 800, Ki 0.14, Kd 4.0, nominal 1 in: 800/Re + 0.14 (1 + 4).
    const elbow = part(size([pipe("sch40-1"), fitting("elbow90"), outlet], "darby"), "/loops/0/run/1");
    expect(elbow.laminarLoss).toBe(800);
    within(elbow.lossCoefficient, 0.7, 0.01);
  });

  it("tells the range of the three methods at Re 3e4", () => {
    // Published constants as above at 1.029 in: Crane 30 x 0.022, Hooper 800/3e4 + 0.4 (1 + 1/1.029).
    const [low, high] = part(size([pipe("sch40-1"), fitting("elbow90"), outlet]), "/loops/0/run/1").lossRange;
    within(low, 0.66, 0.025);
    within(high, 800 / 3e4 + 0.4 * (1 + 1 / 1.029), 1e-3);
  });

  it("counts as often as it is there", () => {
    const one = part(size([pipe("sch40-1"), fitting("elbow90"), outlet], "hooper"), "/loops/0/run/1");
    const three = part(size([pipe("sch40-1"), fitting("elbow90", { count: 3 }), outlet], "hooper"), "/loops/0/run/1");
    expect(three.count).toBe(3);
    expect(three.lossCoefficient).toBeCloseTo(3 * one.lossCoefficient, 12);
    expect(three.laminarLoss).toBe(3 * 800);
    expect(three.lossRange[1]).toBeCloseTo(3 * one.lossRange[1], 12);
  });

  it("has a K of its own where one is given", () => {
    const own = part(
      size([pipe("sch40-1"), fitting("elbow90", { lossCoefficient: 1.7, count: 2 }), outlet]),
      "/loops/0/run/1",
    );
    expect(own).toMatchObject({ lossCoefficient: 3.4, laminarLoss: 0, lossRange: [3.4, 3.4] });
  });

  it("works in the pipe before it; at the start of a run in the pipe after it; at the start of a branch in the pipe that feeds it", () => {
    const run = [fitting("elbow90"), pipe("sch40-1"), pipe("sch40-2"), fitting("elbow90"), outlet];
    const free = size(run);
    expect(part(free, "/loops/0/run/0").diameter / inch).toBeCloseTo(1.029, 3);
    expect(part(free, "/loops/0/run/3").diameter / inch).toBeCloseTo(2.047, 3);
    expect(part(size(run, "crane", 0.05), "/loops/0/run/0").diameter).toBe(0.05);
  });

  it("that is a reducer loses nothing beside the change of bore", () => {
    expect(part(size([pipe("sch40-1"), fitting("reducer"), outlet]), "/loops/0/run/1").lossCoefficient).toBe(0);
  });
});

describe("a change of bore", () => {
  it("that widens loses after Borda and Carnot on the small bore", () => {
    // Analytic: (1 - (1.029/1.590)^2)^2 = 0.3378.
    const change = part(size([pipe("sch40-1"), pipe("sch40-1.5"), outlet]), "/loops/0/run/1", "areaChange");
    expect(change.diameter / inch).toBeCloseTo(1.029, 3);
    within(change.lossCoefficient, (1 - (1.029 / 1.59) ** 2) ** 2, 2e-3);
  });

  it("that narrows loses after Crane on the small bore, with Rennels as the upper end", () => {
    // Published: Crane TP-410, 0.5 (1 - b2). Rennels and Hudson 2012 give about 0.40 for this pair.
    const change = part(size([pipe("sch40-1.5"), pipe("sch40-1"), outlet]), "/loops/0/run/1", "areaChange");
    expect(change.diameter / inch).toBeCloseTo(1.029, 3);
    within(change.lossCoefficient, 0.5 * (1 - (1.029 / 1.59) ** 2), 2e-3);
    within(change.lossRange[1], 0.4, 0.02);
  });

  it("is there between the pipe that feeds a branch and the branch, and nowhere where bores agree", () => {
    const same = size([pipe("sch40-1"), pipe("sch40-1"), outlet]);
    expect(same.parts.some((entry) => entry.kind === "areaChange")).toBe(false);
    const branch = size([pipe("sch40-1"), outlet], "crane", 0.05);
    expect(branch.parts[0]).toMatchObject({ kind: "areaChange", label: "narrowing" });
  });
});

describe("a valve of a run", () => {
  const gate = (opening: number): Part => ({ kind: "valve", valve: "gate", opening });

  it("open loses 8 fT of Crane", () => {
    // Published: Crane TP-410, gate valve n 8, fT 0.022 at 1 in.
    within(part(size([pipe("sch40-1"), gate(1), outlet]), "/loops/0/run/1").lossCoefficient, 8 * 0.022, 0.025);
  });

  it("loses more the further it is shut, and lets nothing through when it is", () => {
    const k = [1, 0.75, 0.5, 0.25, 0.1].map(
      (opening) => part(size([pipe("sch40-1"), gate(opening), outlet]), "/loops/0/run/1").lossCoefficient,
    );
    for (let i = 1; i < k.length; i++) expect(k[i]).toBeGreaterThan(k[i - 1] as number);
    expect(part(size([pipe("sch40-1"), gate(0), outlet]), "/loops/0/run/1").lossCoefficient).toBe(
      Number.POSITIVE_INFINITY,
    );
  });
});

describe("the end of a run", () => {
  it("loses the jet's velocity head once", () => {
    // Published: Crane TP-410, exit K 1 for every shape.
    expect(part(size([pipe("sch40-1"), outlet]), "/loops/0/run/1").lossCoefficient).toBe(1);
  });

  it("in a nozzle narrows first, both on the nozzle's bore", () => {
    // Published: Crane TP-410: 1 + 0.5 (1 - b2), b = 18 / 26.14 mm.
    const end = part(size([pipe("sch40-1"), { ...outlet, nozzle: mm(18) } as Part]), "/loops/0/run/1");
    expect(end.diameter).toBe(0.018);
    within(end.lossCoefficient, 1 + 0.5 * (1 - (18 / (1.029 * 25.4)) ** 2), 1e-3);
  });

  it("is an outlet or a tee, with its place in the document", () => {
    const straight = size([pipe("sch40-1"), outlet]);
    expect(straight.outlet?.path).toBe("/loops/0/run/1");
    expect(straight.tee).toBeUndefined();
    const tee: Part = {
      kind: "tee",
      branches: [
        [pipe("sch40-1"), outlet],
        [pipe("sch40-1"), outlet],
      ],
    };
    const forked = size([pipe("sch40-1"), tee]);
    expect(forked.tee).toMatchObject({ part: tee, path: "/loops/0/run/1" });
    expect(forked.outlet).toBeUndefined();
    expect(forked.parts.map((entry) => entry.kind)).toEqual(["pipe"]);
  });
});

describe("what a catalogue does not know", () => {
  it("counts as no loss and leaves the bore as it is", () => {
    const run = size([
      pipe("sch40-1"),
      fitting("no-such"),
      { kind: "device", ref: "no-such" },
      pipe("no-such"),
      outlet,
    ]);
    expect(run.lastBore / inch).toBeCloseTo(1.029, 3);
    expect(part(run, "/loops/0/run/1").lossCoefficient).toBe(0);
    expect(part(run, "/loops/0/run/2")).toMatchObject({ device: undefined, label: "no-such" });
  });
});
