import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { example, runCli } from "../testing/runCli.ts";

const pump = example("networks/02-return-pump.json");

// Laminar flow between two heads has an exact answer, Hagen-Poiseuille: h = 128 nu L Q / (pi g D^4) (analytic).
const laminar = {
  tidewright: 1,
  water: { density: 1000, kinematicViscosity: 1e-4 },
  network: {
    nodes: [
      { id: "high", kind: "fixedHead", head: 1 },
      { id: "low", kind: "fixedHead", head: 0 },
    ],
    links: [{ id: "line", kind: "pipe", from: "high", to: "low", length: 10, diameter: 0.02 }],
  },
};
const exactFlow = (Math.PI * 9.80665 * 0.02 ** 4) / (128 * 1e-4 * 10);

describe("network", () => {
  it("answers the flow of a laminar line in SI as Hagen and Poiseuille have it", () => {
    const { code, stdout } = runCli(["network", "-", "--json"], JSON.stringify(laminar));
    const answer = JSON.parse(stdout);
    expect(code).toBe(0);
    expect(answer.status).toBe("converged");
    expect(answer.links[0].flow / exactFlow).toBeCloseTo(1, 8);
  });

  it("holds to its contract: fields, a lifting pump's negative head loss, null for a velocity without a bore", () => {
    const answer = JSON.parse(runCli(["network", pump, "--json"]).stdout);
    expect(Object.keys(answer)).toEqual(["status", "iterations", "residual", "nodes", "links"]);
    expect(Object.keys(answer.nodes[0])).toEqual(["id", "head", "pressure"]);
    expect(Object.keys(answer.links[0])).toEqual(["id", "flow", "velocity", "headLoss"]);
    const link = answer.links.find((each: { id: string }) => each.id === "p");
    expect(link.headLoss).toBeLessThan(0);
    expect(link.velocity).toBeNull();
  });

  it("gives the table in the units asked for, without colour into a pipe", () => {
    const { stdout } = runCli(["network", pump, "--units", "us"], "", { FORCE_COLOR: "1" });
    expect(stdout).toMatch(/US gal\/h/);
    expect(stdout).not.toContain("\u001b[");
    for (const line of stdout.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
  });

  it("writes the answer into a file and nothing to the screen", () => {
    const folder = mkdtempSync(join(tmpdir(), "tidewright-"));
    try {
      const out = join(folder, "answer.json");
      const { code, stdout } = runCli(["network", pump, "--json", "--out", out]);
      expect([code, stdout]).toEqual([0, ""]);
      expect(JSON.parse(readFileSync(out, "utf8")).status).toBe("converged");
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});
