import { demoCatalogue } from "@tidewright/catalogue";
import { describe, expect, it } from "vitest";
import { describeSystem } from "./assess.ts";
import { type PreparedLoop, prepareSystem } from "./system/prepare.ts";
import { solveSystem } from "./system/solveSystem.ts";
import { example, exampleFiles } from "./testing/examples.ts";

const g = 9.80665;

/** K of a dividing tee, y of the flow in the branch, a its area over the run's. Crane TP-410 (2009) chapter 2, written out anew. */
function dividing(y: number, a: number): { run: number; branch: number } {
  const turn = a > 2 / 3 ? 1 + 0.3 * y * y : 1;
  const narrow = Math.sqrt(a) > 2 / 3 ? 0.3 : 1;
  const straight = a <= 0.4 ? 0.4 : y <= 0.5 ? 2 * (2 * y - 1) : 0.3 * (2 * y - 1);
  return { branch: turn * (1 + narrow * (y / a) ** 2), run: straight * y * y };
}

/** Tee losses of every link [m]. A leg with a small share of the flow has its loss faded by q/sqrt(q2 + (total/100)2): so the
 *  engine states it, since the published fits stop at a dead branch. */
function teeLosses({ loop, net, state }: PreparedLoop): Map<string, number> {
  const losses = new Map<string, number>();
  const flow = (link: string) => state.flow[net.linkIndex.get(link) as number] ?? 0;
  for (const tee of loop.model.tees ?? []) {
    const total = flow(tee.run[0]);
    const branch = flow(tee.branch);
    const onward = flow(tee.run[1]);
    // Only tees that divide: the examples have no other.
    expect(Math.min(total, branch, onward)).toBeGreaterThan(0);
    expect(Math.abs(branch + onward - total)).toBeLessThan(1e-9 * total);
    const k = dividing(branch / total, (tee.branchDiameter / tee.runDiameter) ** 2);
    const speed = total / ((Math.PI / 4) * tee.runDiameter ** 2);
    const add = (link: string, q: number, loss: number) => {
      const faded = (q / Math.hypot(q, total / 100)) * loss * (speed ** 2 / (2 * g));
      losses.set(link, (losses.get(link) ?? 0) + faded);
    };
    add(tee.branch, branch, k.branch);
    add(tee.run[1], onward, k.run);
  }
  return losses;
}

describe.each(exampleFiles)("in %s", (file) => {
  const system = prepareSystem(example(file), demoCatalogue);
  const solved = solveSystem(system);
  const state = describeSystem(system, solved, false);

  /** Head a link takes, from what the assessment says of its parts; a pump's is negative. */
  const lossOf = (prepared: PreparedLoop, link: string): number => {
    const pump = prepared.loop.pumps.find((entry) => entry.link === link);
    if (pump) return -(state.pumps.find((entry) => entry.path === pump.path)?.head ?? Number.NaN);
    const section = prepared.loop.sections.find((entry) => entry.link === link);
    const told = (section?.parts ?? []).flatMap((part) =>
      state.parts.filter((entry) => entry.path === part.path && entry.kind === part.kind && entry.label === part.label),
    );
    expect(told).toHaveLength(section?.parts.length ?? 0);
    return told.reduce((sum, part) => sum + part.headLoss, 0);
  };

  // Analytic: Bernoulli between two still surfaces, along every way from the source through each pump to each outlet.
  it("heads add up from the source to every outlet, to 1e-6 m", () => {
    let ways = 0;
    for (const prepared of system.loops) {
      const { loop } = prepared;
      const tees = teeLosses(prepared);
      const into = (node: string) => loop.model.links.filter((link) => link.to === node);
      const level = (place: string) => solved.levels.get(place) ?? Number.NaN;
      const walk = (node: string, spent: number, end: number): void => {
        if (node === "source") {
          ways++;
          expect(Math.abs(level(loop.sourcePlace) - spent - end)).toBeLessThan(1e-6);
          return;
        }
        const links = into(node);
        expect(links.length).toBeGreaterThan(0);
        for (const link of links) walk(link.from, spent + lossOf(prepared, link.id) + (tees.get(link.id) ?? 0), end);
      };
      // An outlet over the water throws to its own height.
      for (const outlet of loop.outlets) walk(outlet.node, 0, level(outlet.place) + Math.max(0, -outlet.depth));
    }
    expect(ways).toBeGreaterThanOrEqual(system.loops.length);
  });

  // Analytic: continuity.
  it("all that leaves the source comes out of the outlets, and what the pumps give is what leaves", () => {
    state.loops.forEach((loop, i) => {
      const prepared = system.loops[i];
      if (!prepared) throw new Error("no loop");
      const out = state.outlets
        .filter((outlet) => outlet.path.startsWith(`${loop.path}/`))
        .reduce((sum, outlet) => sum + outlet.flow, 0);
      const pumps = state.pumps.filter((pump) => pump.loop === i);
      const series = system.design.loops[i]?.arrangement === "series";
      const given = series ? (pumps[0]?.flow ?? 0) : pumps.reduce((sum, pump) => sum + pump.flow, 0);
      expect(Math.abs(out / given - 1)).toBeLessThan(1e-9);
      expect(Math.abs(loop.flow / given - 1)).toBeLessThan(1e-9);
    });
  });

  // Published: ISO 9906:2012 section 3.2, NPSHa = (p - pv)/(rho g) + level - height of the pump - loss on the way.
  it("net positive suction head is what the air, the level and the suction line leave", () => {
    for (const pump of state.pumps) {
      const prepared = system.loops[pump.loop];
      const model = prepared?.loop.pumps.find((entry) => entry.path === pump.path);
      if (!prepared || !model) throw new Error("no pump");
      const first =
        prepared.loop.pumps[0]?.path === pump.path || system.design.loops[pump.loop]?.arrangement !== "series";
      if (!first) continue;
      const suction = prepared.loop.sections
        .filter((section) => section.side === "suction")
        .reduce((sum, section) => sum + lossOf(prepared, section.link), 0);
      const altitude = system.design.room?.altitude?.value ?? 0;
      if (altitude !== 0) continue;
      // Standard atmosphere 101325 Pa, ISO 2533.
      const still = (101325 - state.water.vapourPressure) / (state.water.density * g);
      const surface = solved.levels.get(prepared.loop.sourcePlace) ?? Number.NaN;
      expect(Math.abs(pump.npshAvailable - (still + surface - model.elevation - suction))).toBeLessThan(1e-6);
    }
  });
});
