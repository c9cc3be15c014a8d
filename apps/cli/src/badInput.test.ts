import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { runCli } from "./testing/runCli.ts";

// biome-ignore lint/suspicious/noExplicitAny: documents are broken on purpose here, past every type.
type Loose = any;

const design = (): Loose =>
  JSON.parse(readFileSync(new URL("../../../examples/waiting-room-reef.json", import.meta.url), "utf8"));

const network = (change: (parts: { nodes: Loose[]; links: Loose[] }) => void): string => {
  const document = {
    tidewright: 1,
    water: { density: 1000, kinematicViscosity: 1e-6 },
    network: {
      nodes: [
        { id: "sump", kind: "fixedHead", head: 0 },
        { id: "out", kind: "junction", elevation: 0 },
      ],
      links: [
        {
          id: "pump",
          kind: "pump",
          from: "sump",
          to: "out",
          curve: {
            points: [
              { flow: 0, head: 4 },
              { flow: 0.001, head: 0 },
            ],
          },
        },
        { id: "pipe", kind: "pipe", from: "out", to: "sump", length: 3, diameter: 0.03 },
      ],
    },
  };
  change(document.network);
  return JSON.stringify(document);
};

const edited = (change: (document: Loose) => void): string => {
  const document = design();
  change(document);
  return JSON.stringify(document);
};

// The four parts of every message: where, what, and how to mend it; the value stands where there is one to show.
const complete = /^ {2}\S.*\n {4}what {3}\S.*\n(?: {4}value {2}\S.*\n)? {4}fix {4}\S.*$/m;

describe("bad input ends with 2, on the error stream, with place and fix", () => {
  it.each<[string, string[], string, RegExp]>([
    ["a file that is not there", ["assess", "nowhere.json"], "", /there is no such file/],
    ["a folder", ["assess", "examples"], "", /a folder, not a file/],
    ["a text that is no JSON", ["assess", "-"], "pump: ferrow-c40", /not JSON: line 1, column 1/],
    ["an empty document", ["assess", "-"], "", /the document is empty/],
    ["NaN", ["assess", "-"], '{ "tidewright": NaN }', /NaN is not a number JSON knows/],
    ["more than 10 MB", ["assess", "-"], `{"name":"${"x".repeat(10_000_001)}"}`, /larger than 10 MB/],
    [
      "a unit of another dimension",
      ["assess", "-"],
      edited((d) => {
        d.display.length = { value: 25, unit: "L" };
      }),
      /\/display\/length\/unit\n.*"L" is no unit of length/,
    ],
    [
      "a negative length",
      ["assess", "-"],
      edited((d) => {
        d.display.length = { value: -1500, unit: "mm" };
      }),
      /\/display\/length\n.*-1500 mm/,
    ],
    [
      "a pipe from nowhere",
      ["network", "-"],
      network(({ links }) => {
        links[1].from = "nowhere";
      }),
      /\/network\/links\/1\/from/,
    ],
    [
      "a loop without a fixed head",
      ["network", "-"],
      network(({ nodes }) => {
        nodes[0] = { id: "sump", kind: "junction", elevation: 0 };
      }),
      /no fixed head anywhere/,
    ],
    [
      "a pump whose points rise",
      ["network", "-"],
      network(({ links }) => {
        links[0].curve.points[1].head = 5;
      }),
      /\/network\/links\/0\/curve\/points/,
    ],
    [
      "a fitting that no table has",
      ["assess", "-"],
      edited((d) => {
        d.drains[0].run.push({ kind: "fitting", fitting: "elbow91" });
      }),
      /elbow91/,
    ],
    ["a table of pumps without its columns", ["catalogue", "check", "-"], "id,maker\nx,Ferrow\n", /model/],
  ])("%s", (_what, args, input, message) => {
    const { code, stderr } = runCli(args, input);
    expect(stderr).toMatch(message);
    expect(stderr).toMatch(complete);
    expect(stderr).not.toMatch(/^\s+at /m);
    expect(code).toBe(2);
  });

  it("names every problem of a document at once", () => {
    const text = edited((d) => {
      d.display.length = { value: -1, unit: "mm" };
      d.display.width = { value: 3, unit: "kg" };
      d.loops = [];
    });
    const { code, stderr } = runCli(["rank", "-"], text);
    for (const path of ["/display/length", "/display/width/unit", "/loops"]) expect(stderr).toContain(`  ${path}\n`);
    expect(code).toBe(2);
  });

  it("names the problems of every file, not of the first only", () => {
    const { code, stderr } = runCli(["assess", "one.json", "two.json"]);
    expect(stderr).toContain("one.json");
    expect(stderr).toContain("two.json");
    expect(code).toBe(2);
  });

  it.each([
    [["asses", "x.json"], /unknown command/],
    [["rank", "x.json", "--top", "many"], /whole number/],
    [["assess", "x.json", "--units", "cubits"], /metric, us, imperial/],
    [["schema", "tank"], /design or network/],
  ])("refuses the command line %j", (args, message) => {
    const { code, stderr } = runCli(args);
    expect(stderr).toMatch(message);
    expect(code).toBe(2);
  });
});
