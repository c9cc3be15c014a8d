import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkNetworkDocument, readNetwork } from "../read/readNetwork.ts";
import { mutated } from "../testing/mutated.ts";
import { checkNetwork } from "./checkNetwork.ts";

// biome-ignore lint/suspicious/noExplicitAny: the tests put wrong things into the document on purpose
type Loose = any;
const text = readFileSync(new URL("../../../../examples/networks/09-manifold.json", import.meta.url), "utf8");
const device = 6;

function problemsAfter(change: (section: Loose) => void) {
  const { network } = JSON.parse(text);
  change(network);
  return checkNetwork(network);
}

describe("a network section", () => {
  it("is sound as the manifold example has it", () => {
    expect(checkNetwork(JSON.parse(text).network)).toEqual([]);
    expect(readNetwork(text).ok).toBe(true);
  });

  it.each<[string, (section: Loose) => void, string, string]>([
    [
      "two nodes of one id",
      (s) => s.nodes.push({ ...s.nodes[3] }),
      "/nodes/12/id",
      'the node "pumpOutlet" is given already, at /nodes/3',
    ],
    ["two links of one id", (s) => (s.links[1].id = "p"), "/links/1/id", 'the link "p" is given already, at /links/0'],
    ["a link to no node", (s) => (s.links[1].to = "manifould"), "/links/1/to", 'there is no node "manifould"'],
    [
      "a link to itself",
      (s) => (s.links[1].to = "pumpOutlet"),
      "/links/1/to",
      'the link begins and ends at the same node "pumpOutlet"',
    ],
    [
      "a pump whose head rises",
      (s) => (s.links[0].curve.points[2].head.value = 3.95),
      "/links/0/curve/points/2/head",
      "the head rises from 3.91 m at 580 L/h (point 2) to 3.95 m at 1140 L/h (point 3)",
    ],
    [
      "a pump with one flow twice",
      (s) => (s.links[0].curve.points[2].flow.value = 580),
      "/links/0/curve/points/2/flow",
      "points 2 and 3 have the same flow, 580 L/h",
    ],
    [
      "pump points out of order",
      (s) => (s.links[0].curve.points[2].flow.value = 500),
      "/links/0/curve/points/2/flow",
      "the flow falls from 580 L/h (point 2) to 500 L/h (point 3)",
    ],
    [
      "a pipe without length or loss",
      (s) => {
        s.links[1].length.value = 0;
        delete s.links[1].minorLoss;
      },
      "/links/1/length",
      "the pipe has neither a length nor a minor loss, so it is no pipe",
    ],
    [
      "a device whose loss falls",
      (s) => (s.links[device].lossPoints[2].headLoss.value = 0.01),
      `/links/${device}/lossPoints/2/headLoss`,
      "the loss falls from 0.085 m (point 2) to 0.01 m (point 3)",
    ],
    [
      "a device that loses without flow",
      (s) => (s.links[device].lossPoints[0].headLoss.value = 0.05),
      `/links/${device}/lossPoints/0/headLoss`,
      "a loss of 0.05 m without any flow",
    ],
    ["a valve without a loss", (s) => delete s.links[8].lossCoefficient, "/links/8", "the valve has no loss"],
    [
      "a valve with two losses",
      (s) => (s.links[8].valve = "gate"),
      "/links/8/lossCoefficient",
      "the valve has both a loss coefficient and a type or an opening",
    ],
    ["an unknown valve", (s) => (s.links[5].valve = "diafragm"), "/links/5/valve", 'there is no valve "diafragm"'],
  ])("is not sound with %s", (_, change, path, message) => {
    const problems = problemsAfter(change);
    expect(problems.filter((problem) => problem.path !== "/nodes")).toMatchObject([{ path, message }]);
  });

  it("names every node of every part without a fixed head", () => {
    const problems = problemsAfter((section) => {
      section.nodes.push({ id: "x", kind: "junction" }, { id: "y", kind: "junction" }, { id: "z", kind: "junction" });
      section.links.push({ id: "xy", kind: "pipe", from: "x", to: "y", length: 1, diameter: 0.02 });
    });
    expect(problems).toMatchObject([
      {
        path: "/nodes",
        value: ["x", "y"],
        message: 'no fixed head anywhere in the part of the network with "x" and "y"',
      },
      { path: "/nodes", value: ["z"] },
    ]);
  });

  it("tells wrong fields and wrong connections in one list", () => {
    const document = JSON.parse(text);
    document.network.links[1].lenght = document.network.links[1].length;
    delete document.network.links[1].length;
    document.network.links[0].curve.points[2].head.value = 3.95;
    document.network.links[2].diameter = -0.02;
    document.water = { density: 1000 };
    const read = checkNetworkDocument(document);
    expect(!read.ok && read.problems.map(({ path }) => path)).toEqual([
      "/water/kinematicViscosity",
      "/network/links/1/length",
      "/network/links/1/lenght",
      "/network/links/2/diameter",
      "/network/links/0/curve/points/2/head",
    ]);
  });

  it("is looked through without failing in any spoilt document", () => {
    const { network } = JSON.parse(text);
    fc.assert(
      fc.property(fc.array(fc.nat(), { minLength: 1, maxLength: 4 }), (seeds) => {
        for (const problem of checkNetwork(mutated(network, seeds))) expect(problem.fix).toBeTruthy();
      }),
      { numRuns: 2000 },
    );
    fc.assert(fc.property(fc.jsonValue(), (value) => void checkNetwork(value)));
  });

  it("of a hundred thousand links is looked through, which the square of their number would not let it", () => {
    const nodes = Array.from({ length: 100_000 }, (_, i) => ({ id: `n${i}`, kind: "junction" }));
    const links = nodes
      .slice(1)
      .map((node, i) => ({ id: `l${i}`, kind: "pipe", from: `n${i}`, to: node.id, length: 1, diameter: 0.02 }));
    expect(checkNetwork({ nodes, links })).toHaveLength(1);
  });
});
