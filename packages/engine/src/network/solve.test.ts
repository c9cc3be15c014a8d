import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { deviceHeadLoss, deviceLoss } from "../losses/index.ts";
import { pumpAtSpeed, pumpCurve, pumpHeadAtSpeed } from "../pumps/index.ts";
import { compileNetwork } from "./compile.ts";
import type { NetworkLink, NetworkModel, NetworkNode } from "./model.ts";
import { type NetworkSolution, networkSolution, solveNetwork } from "./solution.ts";
import { solveCompiled } from "./solve.ts";
import { newNetworkState } from "./state.ts";

const liquid = { density: 1023, kinematicViscosity: 9.4e-7 };
const curve = pumpCurve([
  { flow: 0, head: 4 },
  { flow: 0.001, head: 3 },
  { flow: 0.002, head: 0.5 },
]);

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** Evenly over orders of magnitude. */
const orders = (low: number, high: number) => real(Math.log10(low), Math.log10(high)).map((power) => 10 ** power);

type LinkRecipe = Readonly<{
  ends: readonly [number, number];
  turned: boolean;
  check: boolean;
  make: Omit<NetworkLink, "id" | "from" | "to">;
}>;

const linkRecipe: fc.Arbitrary<LinkRecipe> = fc.record({
  ends: fc.tuple(fc.nat(1000), fc.nat(1000)),
  turned: fc.boolean(),
  check: fc.nat(9).map((n) => n === 0),
  make: fc.oneof(
    fc.record({
      kind: fc.constant("pipe" as const),
      length: orders(0.05, 20),
      diameter: orders(0.008, 0.1),
      roughness: fc.constantFrom(0, 1.5e-6, 1e-4),
      minorLoss: real(0, 20),
    }),
    fc.record({
      kind: fc.constant("valve" as const),
      diameter: orders(0.01, 0.05),
      lossCoefficient: fc.oneof(orders(0.01, 1e6), fc.constant(Number.POSITIVE_INFINITY)),
    }),
    fc.record({ kind: fc.constant("device" as const), coefficient: orders(1e2, 1e10) }),
    fc.record({
      kind: fc.constant("pump" as const),
      pump: real(0.4, 1).map((speed) => pumpAtSpeed([{ speedRatio: 1, curve }], speed)),
    }),
  ),
});

/** One or two tanks, one to eight junctions hung on what is there already, and links across. */
const networks: fc.Arbitrary<NetworkModel> = fc
  .record({
    tanks: fc.array(real(-1, 4), { minLength: 1, maxLength: 2 }),
    tree: fc.array(linkRecipe, { minLength: 1, maxLength: 8 }),
    across: fc.array(linkRecipe, { maxLength: 6 }),
  })
  .map(({ tanks, tree, across }) => {
    const nodes: NetworkNode[] = tanks.map((head, i) => ({ id: `t${i}`, kind: "fixedHead", head }));
    const links: NetworkLink[] = [];
    const add = ({ turned, check, make }: LinkRecipe, one: string, other: string) => {
      const [from, to] = turned ? [other, one] : [one, other];
      if (one !== other) links.push({ ...make, id: `l${links.length}`, from, to, checkValve: check } as NetworkLink);
    };
    tree.forEach((recipe, i) => {
      const from = nodes[recipe.ends[0] % nodes.length].id;
      nodes.push({ id: `j${i}`, kind: "junction", elevation: 0 });
      add(recipe, from, `j${i}`);
    });
    for (const recipe of across)
      add(recipe, nodes[recipe.ends[0] % nodes.length].id, nodes[recipe.ends[1] % nodes.length].id);
    return { liquid, nodes, links };
  });

/** At rest a square law turns a head of 1e-16 m into 1e-9 m3/s: below a litre an hour, nothing counts as moving. */
const largest = (values: ArrayLike<number>, least = 3e-7) => Math.max(least, ...Array.from(values, Math.abs));

/** Whether a link carries the same in two answers. Where the loss is next to nothing the flow is next to undetermined: at rest a
 *  square law turns a head of 1e-11 m into 4e-7 m3/s; there the losses have to agree. */
function expectSame(one: Carried, other: Carried, flowScale: number, headScale: number): void {
  const apart = Math.abs(one.flow - other.flow);
  if (apart < 1e-4 * flowScale + 1e-8) return;
  expect(Math.abs(one.headLoss - other.headLoss)).toBeLessThan(1e-8 * headScale);
}
type Carried = Readonly<{ flow: number; headLoss: number }>;
const headScaleOf = (answer: NetworkSolution) =>
  Math.max(1e-6, largest(answer.heads), largest(answer.links.map((link) => link.headLoss)));

function surpluses(model: NetworkModel, answer: NetworkSolution): number[] {
  return model.nodes
    .filter((node) => node.kind === "junction")
    .map((node) =>
      model.links.reduce(
        (sum, link, i) =>
          sum + (link.to === node.id ? answer.flows[i] : 0) - (link.from === node.id ? answer.flows[i] : 0),
        -(node.kind === "junction" ? (node.demand ?? 0) : 0),
      ),
    );
}

describe("a solved network", () => {
  it("keeps no water at any junction", () => {
    fc.assert(
      fc.property(networks, (model) => {
        const answer = solveNetwork(model);
        expect(answer.status).toBe("converged");
        for (const surplus of surpluses(model, answer))
          expect(Math.abs(surplus)).toBeLessThan(1e-12 * largest(answer.flows));
      }),
      { numRuns: 300 },
    );
  });

  it("loses along every open link what its ends differ by, and carries nothing in a shut one", () => {
    fc.assert(
      fc.property(networks, (model) => {
        const answer = solveNetwork(model);
        const head = new Map(answer.nodes.map((node) => [node.id, node.head]));
        const scale = headScaleOf(answer);
        model.links.forEach((link, i) => {
          const drop = (head.get(link.from) ?? 0) - (head.get(link.to) ?? 0);
          if (answer.links[i].shut) expect(answer.flows[i]).toBe(0);
          else expect(Math.abs(drop - answer.links[i].headLoss)).toBeLessThan(1e-8 * scale);
          const oneWay = link.checkValve === true || link.kind === "pump";
          if (oneWay) expect(answer.flows[i]).toBeGreaterThanOrEqual(0);
        });
      }),
      { numRuns: 300 },
    );
  });

  it("is the same whatever order its elements are named in", () => {
    fc.assert(
      fc.property(networks, (model) => {
        const answer = solveNetwork(model);
        const back = solveNetwork({ ...model, nodes: [...model.nodes].reverse(), links: [...model.links].reverse() });
        const scale = largest(answer.flows);
        const n = model.links.length;
        for (let i = 0; i < n; i++) expectSame(answer.links[i], back.links[n - 1 - i], scale, headScaleOf(answer));
      }),
      { numRuns: 200 },
    );
  });

  it("does not change when the datum is moved", () => {
    fc.assert(
      fc.property(networks, real(-50, 50), (model, up) => {
        const moved = model.nodes.map((node) => (node.kind === "fixedHead" ? { ...node, head: node.head + up } : node));
        const answer = solveNetwork(model);
        const other = solveNetwork({ ...model, nodes: moved });
        const scale = largest(answer.flows);
        answer.links.forEach((link, i) => {
          expectSame(link, other.links[i], scale, headScaleOf(other));
        });
      }),
      { numRuns: 100 },
    );
  });

  // Analytic: with square laws alone, flow scales with the root of head.
  it("carries twice the flow at four times the head where every loss is square", () => {
    fc.assert(
      fc.property(fc.array(orders(1e3, 1e9), { minLength: 5, maxLength: 5 }), real(0.1, 5), (k, head) => {
        const model = (h: number): NetworkModel => ({
          liquid,
          nodes: [
            { id: "a", kind: "fixedHead", head: h },
            { id: "b", kind: "junction", elevation: 0 },
            { id: "c", kind: "junction", elevation: 0 },
            { id: "d", kind: "fixedHead", head: 0 },
          ],
          links: [
            ["a", "b"],
            ["a", "c"],
            ["b", "c"],
            ["b", "d"],
            ["c", "d"],
          ].map(([from, to], i) => ({ id: `l${i}`, kind: "device", from, to, coefficient: k[i] })),
        });
        const once = solveNetwork(model(head));
        const twice = solveNetwork(model(4 * head));
        const scale = largest(once.flows);
        once.flows.forEach((flow, i) => {
          expect(Math.abs(twice.flows[i] - 2 * flow)).toBeLessThan(1e-5 * scale);
        });
      }),
    );
  });

  it("never gains flow from a longer pipe on a single path", () => {
    fc.assert(
      fc.property(
        fc.array(orders(0.1, 20), { minLength: 2, maxLength: 5 }),
        real(1.01, 5),
        real(0, 2),
        (lengths, factor, lift) => {
          const path = (scale: number): NetworkModel => ({
            liquid,
            nodes: [
              { id: "n0", kind: "fixedHead", head: 0 },
              ...lengths.map((_, i): NetworkNode => ({ id: `n${i + 1}`, kind: "junction", elevation: 0 })),
              { id: "end", kind: "fixedHead", head: lift },
            ],
            links: [
              { id: "pump", kind: "pump", from: "n0", to: "n1", pump: pumpAtSpeed([{ speedRatio: 1, curve }], 1) },
              ...lengths.map(
                (length, i): NetworkLink => ({
                  id: `p${i}`,
                  kind: "pipe",
                  from: `n${i + 1}`,
                  to: i + 1 < lengths.length ? `n${i + 2}` : "end",
                  length: i === 0 ? length * scale : length,
                  diameter: 0.03,
                  roughness: 1.5e-6,
                  minorLoss: 1,
                }),
              ),
            ],
          });
          expect(solveNetwork(path(factor)).flows[0]).toBeLessThan(solveNetwork(path(1)).flows[0]);
        },
      ),
    );
  });

  it("comes out the same from a warm start after an edit as from a cold one", () => {
    fc.assert(
      fc.property(networks, real(-1, 4), (model, head) => {
        const net = compileNetwork(model);
        const state = newNetworkState(net);
        solveCompiled(net, state);
        net.head[net.junctionCount] = head;
        solveCompiled(net, state, { warm: true });
        const nodes = model.nodes.map((node, i) => (i === 0 && node.kind === "fixedHead" ? { ...node, head } : node));
        const cold = solveNetwork({ ...model, nodes });
        expect(state.status).toBe(cold.status);
        const scale = largest(cold.flows);
        networkSolution(net, state).links.forEach((link, i) => {
          expectSame(link, cold.links[i], scale, headScaleOf(cold));
        });
      }),
      { numRuns: 200 },
    );
  });
});

describe("a network with something in the way", () => {
  const tank = (id: string, head: number): NetworkNode => ({ id, kind: "fixedHead", head });
  const joint = (id: string, demand = 0): NetworkNode => ({ id, kind: "junction", elevation: 0, demand });

  it("says that a demand behind a closed valve is out of reach", () => {
    const answer = solveNetwork({
      liquid,
      nodes: [tank("a", 1), joint("b", 0.001)],
      links: [
        { id: "v", kind: "valve", from: "a", to: "b", diameter: 0.02, lossCoefficient: Number.POSITIVE_INFINITY },
      ],
    });
    expect(answer.status).toBe("unreachable");
  });

  it("never claims to have solved two levels joined by a link without loss", () => {
    const answer = solveNetwork({
      liquid,
      nodes: [tank("a", 1), tank("b", 0)],
      links: [{ id: "v", kind: "valve", from: "a", to: "b", diameter: 0.02, lossCoefficient: 0 }],
    });
    expect(answer.status).not.toBe("converged");
  });

  it("leaves a pump at rest that cannot lift, with its shut-off head below the lift", () => {
    const pump = pumpAtSpeed([{ speedRatio: 1, curve }], 0.8);
    const answer = solveNetwork({
      liquid,
      nodes: [tank("a", 0), joint("b"), tank("c", 3)],
      links: [
        { id: "pump", kind: "pump", from: "a", to: "b", pump },
        { id: "p", kind: "device", from: "b", to: "c", coefficient: 1e5 },
      ],
    });
    expect(pumpHeadAtSpeed(pump, 0)).toBeLessThan(3);
    expect(Array.from(answer.flows)).toEqual([0, 0]);
    expect(answer.heads[1]).toBeCloseTo(3, 9);
  });
});

describe("a device beyond its last point", () => {
  it("loses what its own curve says there", () => {
    const loss = deviceLoss([
      { flow: 0.0002, headLoss: 0.05 },
      { flow: 0.0005, headLoss: 0.4 },
    ]);
    const solved = solveNetwork({
      liquid: { density: 1000, kinematicViscosity: 1e-6 },
      nodes: [
        { id: "a", kind: "fixedHead", head: 2 },
        { id: "b", kind: "fixedHead", head: 0 },
      ],
      links: [
        {
          id: "d",
          kind: "device",
          from: "a",
          to: "b",
          coefficient: loss.coefficient,
          ...(loss.curve ? { curve: loss.curve } : {}),
        },
      ],
    });
    const flow = solved.flows[0] ?? 0;
    expect(flow).toBeGreaterThan(0.0005);
    // Analytic: deviceHeadLoss is the law, the network only solves it.
    expect(deviceHeadLoss(loss, flow).headLoss).toBeCloseTo(2, 9);
    expect(deviceHeadLoss(loss, flow).extrapolated).toBe(true);
  });
});
