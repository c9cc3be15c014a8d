import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { combiningTeeLoss, dividingTeeLoss, pipeHeadLoss } from "../losses/index.ts";
import { pumpAtSpeed, pumpCurve, pumpHeadAtSpeed } from "../pumps/index.ts";
import { compileNetwork } from "./compile.ts";
import type { NetworkLink, NetworkModel, NetworkNode, PipeLink, TeeJunction } from "./model.ts";
import { type NetworkSolution, networkSolution, solveNetwork } from "./solution.ts";
import { solveCompiled } from "./solve.ts";
import { newNetworkState } from "./state.ts";

const liquid = { density: 1023, kinematicViscosity: 1e-6 };
const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const branchRecipe = fc.record({
  bore: fc.constantFrom(0.0158, 0.0209, 0.0266, 0.0351),
  length: real(0.1, 2),
  minorLoss: real(0, 8),
  level: fc.constantFrom(0, 0.4, 1.2, 1.3),
  spacing: real(0.05, 0.5),
});
const manifoldRecipe = fc.record({
  header: fc.constantFrom(0.0266, 0.0351, 0.0409),
  branches: fc.array(branchRecipe, { minLength: 2, maxLength: 7 }),
  shutoff: real(2, 6),
  last: real(0.001, 0.004),
  speed: real(0.5, 1),
  looped: fc.boolean(),
  drainBack: fc.boolean(),
});

/** A pump's manifold: a header with a tee for each branch; `looped` joins the far ends of two branches by a combining tee, and
 *  `drainBack` turns the pump off the header, so that tanks feed each other through it. */
const manifolds: fc.Arbitrary<NetworkModel> = manifoldRecipe.map(
  ({ header, branches, shutoff, last, speed, looped, drainBack }) => {
    const nodes: NetworkNode[] = [{ id: "sump", kind: "fixedHead", head: drainBack ? 0.9 : 0 }];
    const links: NetworkLink[] = [];
    const tees: TeeJunction[] = [];
    const pipe = (id: string, from: string, to: string, length: number, diameter: number, minorLoss: number) => {
      const link: PipeLink = { id, kind: "pipe", from, to, length, diameter, roughness: 1.5e-6, minorLoss };
      links.push(link);
    };
    const joint = (id: string) => nodes.push({ id, kind: "junction", elevation: 0 });
    joint("start");
    joint("m0");
    const points = [
      { flow: 0, head: shutoff },
      { flow: last / 2, head: 0.75 * shutoff },
      { flow: last, head: 0 },
    ];
    if (drainBack) pipe("pump", "sump", "start", 0.5, header, 1);
    else {
      const pump = pumpAtSpeed([{ speedRatio: 1, curve: pumpCurve(points) }], speed);
      links.push({ id: "pump", kind: "pump", from: "sump", to: "start", pump });
    }
    pipe("riser", "start", "m0", 1.2, header, 2);
    let before = "riser";
    branches.forEach(({ bore, length, minorLoss, level, spacing }, i) => {
      const at = `m${i}`;
      nodes.push({ id: `t${i}`, kind: "fixedHead", head: level });
      const diameter = Math.min(bore, header);
      const lastOne = i === branches.length - 1;
      if (lastOne) pipe(`b${i}`, at, `t${i}`, length, diameter, minorLoss);
      else {
        const join = looped && i === 0 && branches.length > 3;
        if (join) {
          joint("join");
          pipe("b0", at, "join", length, diameter, minorLoss);
          pipe("tail", "join", "t0", length, diameter, 1);
        } else if (looped && i === 1 && branches.length > 3) {
          pipe("b1", at, "join", length, diameter, minorLoss);
          const runDiameter = Math.min(branches[0].bore, header);
          const branchDiameter = Math.min(diameter, runDiameter);
          tees.push({ node: "join", run: ["b0", "tail"], branch: "b1", runDiameter, branchDiameter });
        } else pipe(`b${i}`, at, `t${i}`, length, diameter, minorLoss);
        joint(`m${i + 1}`);
        pipe(`h${i}`, at, `m${i + 1}`, spacing, header, 0.2);
        tees.push({ node: at, run: [before, `h${i}`], branch: `b${i}`, runDiameter: header, branchDiameter: diameter });
        before = `h${i}`;
      }
    });
    return { liquid, nodes, links, tees };
  },
);

/** Losses of every link from the model alone, tees by the published fits with their fading near a dead leg [m]. */
function lossesOf(model: NetworkModel, flows: ArrayLike<number>): number[] {
  const index = new Map(model.links.map((link, i) => [link.id, i]));
  const losses = model.links.map((link, i) => {
    const q = flows[i];
    if (link.kind === "pump") return -pumpHeadAtSpeed(link.pump, q);
    if (link.kind !== "pipe" || q === 0) return 0;
    const { headLoss } = pipeHeadLoss({ ...link, flow: Math.abs(q), kinematicViscosity: 1e-6 });
    const minor = (link.minorLoss * (q / ((Math.PI / 4) * link.diameter ** 2)) ** 2) / (2 * 9.80665);
    return Math.sign(q) * (headLoss + minor);
  });
  for (const tee of model.tees ?? []) {
    const legs = [...tee.run, tee.branch].map((id) => index.get(id) as number);
    const into = legs.map((leg) => (model.links[leg].to === tee.node ? 1 : -1) * flows[leg]);
    const total = Math.max(...into.map(Math.abs));
    if (!(total > 1e-12)) continue;
    const head = (total / ((Math.PI / 4) * tee.runDiameter ** 2)) ** 2 / (2 * 9.80665);
    const turning = Math.abs(into[2]) >= total * (1 - 1e-12);
    const run = Math.abs(into[0]) >= Math.abs(into[1]) ? 1 : 0;
    const split = turning ? 1 : Math.abs(into[2]) / total;
    const dividing = turning ? into[2] < 0 : into[1 - run] > 0;
    const { branch, run: straight } = (dividing ? dividingTeeLoss : combiningTeeLoss)(
      split,
      (tee.branchDiameter / tee.runDiameter) ** 2,
    );
    const add = (leg: number, k: number) => {
      const q = flows[leg];
      losses[leg] += (k * head * q) / Math.hypot(q, 0.01 * total);
    };
    add(legs[2], branch);
    if (!turning) add(legs[run], straight);
  }
  return losses;
}

function largestOf(values: ArrayLike<number>): number {
  return Math.max(...Array.from(values, Math.abs));
}

function expectHeld(model: NetworkModel, answer: NetworkSolution): void {
  const head = new Map(answer.nodes.map((node) => [node.id, node.head]));
  const losses = lossesOf(model, answer.flows);
  const scale = Math.max(1, largestOf(losses));
  model.links.forEach((link, i) => {
    if (answer.links[i].shut) expect(answer.flows[i]).toBe(0);
    else {
      const drop = (head.get(link.from) ?? 0) - (head.get(link.to) ?? 0);
      expect(Math.abs(drop - losses[i])).toBeLessThan(2e-9 * scale);
    }
  });
  for (const node of model.nodes) {
    if (node.kind === "fixedHead") continue;
    let surplus = 0;
    model.links.forEach((link, i) => {
      if (link.to === node.id) surplus += answer.flows[i];
      if (link.from === node.id) surplus -= answer.flows[i];
    });
    expect(Math.abs(surplus)).toBeLessThan(1e-12 * Math.max(1e-6, largestOf(answer.flows)));
  }
}

describe("a manifold of tees whose losses depend on how the flow splits", () => {
  it("keeps no water at any tee and loses along every path what its ends differ by, tee losses included", () => {
    fc.assert(
      fc.property(manifolds, (model) => {
        const answer = solveNetwork(model);
        expect(answer.status).toBe("converged");
        expectHeld(model, answer);
      }),
      { numRuns: 500 },
    );
  });

  it("is the same whatever order its elements are named in", () => {
    fc.assert(
      fc.property(manifolds, (model) => {
        const answer = solveNetwork(model, { tolerance: 1e-12 });
        const back = solveNetwork(
          {
            ...model,
            nodes: [...model.nodes].reverse(),
            links: [...model.links].reverse(),
            tees: [...(model.tees ?? [])].reverse(),
          },
          { tolerance: 1e-12 },
        );
        const scale = largestOf(answer.flows);
        const n = model.links.length;
        for (let i = 0; i < n; i++)
          expect(Math.abs(answer.flows[i] - back.flows[n - 1 - i])).toBeLessThan(1e-7 * scale + 1e-12);
      }),
      { numRuns: 200 },
    );
  });

  it("holds after a warm start from other levels as well", () => {
    fc.assert(
      fc.property(manifolds, fc.array(real(-0.2, 0.2), { minLength: 8, maxLength: 8 }), (model, moves) => {
        const moved = {
          ...model,
          nodes: model.nodes.map((node, i) =>
            node.kind === "fixedHead" ? { ...node, head: node.head + moves[i % 8] } : node,
          ),
        };
        const net = compileNetwork(model);
        const state = newNetworkState(net);
        solveCompiled(net, state);
        for (const node of moved.nodes)
          if (node.kind === "fixedHead") net.head[net.nodeIndex.get(node.id) as number] = node.head;
        solveCompiled(net, state, { warm: true });
        expect(state.status).toBe("converged");
        expectHeld(moved, networkSolution(net, state));
      }),
      { numRuns: 300 },
    );
  });
});
