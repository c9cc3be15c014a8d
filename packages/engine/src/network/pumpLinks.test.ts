import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type PumpAtSpeed, pumpAtSpeed, pumpCurve, pumpHeadAtSpeed, pumpHeadSlopeAtSpeed } from "../pumps/index.ts";
import { type CompiledNetwork, compileNetwork, setLink } from "./compile.ts";
import type { NetworkModel, PipeLink, PumpLink } from "./model.ts";
import { networkProblems } from "./networkProblems.ts";
import { compilePump, pumpLoss } from "./pumpLinks.ts";
import { solveNetwork } from "./solution.ts";
import { solveCompiled } from "./solve.ts";
import { newNetworkState } from "./state.ts";

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const square = pumpCurve([
  { flow: 0, head: 4 },
  { flow: 0.002, head: 1 },
]);
const power = pumpCurve([
  { flow: 0, head: 4 },
  { flow: 0.001, head: 3.3 },
  { flow: 0.002, head: 0.5 },
]);
const cubic = pumpCurve([
  { flow: 0.0002, head: 2.4 },
  { flow: 0.0008, head: 1.9 },
  { flow: 0.0012, head: 1.3 },
  { flow: 0.0016, head: 0.2 },
]);
const pumps: fc.Arbitrary<PumpAtSpeed> = fc
  .tuple(fc.subarray([square, power, cubic], { minLength: 1 }), real(0.05, 1.1))
  .map(([curves, speed]) =>
    pumpAtSpeed(
      curves.map((curve, i) => ({ speedRatio: 1 - 0.3 * i, curve })),
      speed,
    ),
  );

function lossAt(link: PumpLink, q: number): { h: number; g: number } {
  const loss = new Float64Array(1);
  const slope = new Float64Array(1);
  pumpLoss(compilePump(link), q, 0, loss, slope);
  return { h: loss[0], g: slope[0] };
}
const ends = { id: "p", kind: "pump", from: "a", to: "b" } as const;

/** Tank a, the pump, tank b. */
const between = (a: number, b: number, pump: Omit<PumpLink, "id" | "kind" | "from" | "to">): NetworkModel => ({
  liquid: { density: 1023, kinematicViscosity: 1e-6 },
  nodes: [
    { id: "a", kind: "fixedHead", head: a },
    { id: "b", kind: "fixedHead", head: b },
  ],
  links: [{ ...ends, ...pump }],
});

describe("a pump between two nodes", () => {
  it("lifts in the network what its curve says by itself, with the same slope", () => {
    fc.assert(
      fc.property(pumps, real(-0.001, 0.003), (pump, q) => {
        const { h, g } = lossAt({ ...ends, pump, reverseFlow: true }, q);
        const head = pumpHeadAtSpeed(pump, q);
        const slope = pumpHeadSlopeAtSpeed(pump, q);
        expect(Math.abs(h + head)).toBeLessThan(1e-12 * Math.max(1, Math.abs(head)));
        expect(Math.abs(g + slope)).toBeLessThan(1e-11 * Math.max(1, Math.abs(slope)));
      }),
    );
  });

  it("loses ever more as more water runs forward, without a jump where it turns, whatever its speed", () => {
    fc.assert(
      fc.property(
        pumps,
        real(0, 1),
        real(0, 1e7),
        fc.array(real(-0.003, 0.003), { minLength: 2 }),
        (pump, n, k, flows) => {
          const link: PumpLink = { ...ends, pump: { ...pump, speedRatio: n < 0.2 ? 0 : n }, reverseCoefficient: k };
          const rising = Float64Array.from([...flows, -1e-15, 0, 1e-15]).sort();
          const losses = Array.from(rising, (q) => lossAt(link, q).h);
          losses.forEach((h, i) => {
            expect(Number.isFinite(h)).toBe(true);
            if (i > 0) expect(h).toBeGreaterThanOrEqual(losses[i - 1] - 1e-12);
          });
          const rest = lossAt(link, 0).h;
          expect(rest).toBeCloseTo(-pumpHeadAtSpeed(link.pump, 0), 12);
          expect(lossAt(link, -1e-15).h).toBeCloseTo(rest, 9);
        },
      ),
    );
  });

  // Analytic: 4 m against H0 = n^2 4 m and k = 1e6 s2/m5.
  it("lets water back through at the root of what is left of the head over its coefficient", () => {
    for (const [speedRatio, flow] of [
      [0, -Math.sqrt(4 / 1e6)],
      [0.5, -Math.sqrt(3 / 1e6)],
    ] as const) {
      const pump = { ...pumpAtSpeed([{ speedRatio: 1, curve: power }], 1), speedRatio };
      const answer = solveNetwork(between(0, 4, { pump, reverseCoefficient: 1e6 }));
      expect(answer.status).toBe("converged");
      expect(answer.flows[0]).toBeCloseTo(flow, 12);
    }
  });

  // Analytic: the square curve's k = 3 m / (0.002 m3/s)^2; the others take the coefficient, or the square through their ends.
  it("is a plain resistance forward when it stands still", () => {
    const cases = [
      [square, undefined, 3 / 0.002 ** 2],
      [square, 1e6, 3 / 0.002 ** 2],
      [power, 1e6, 1e6],
      [cubic, 2e6, 2e6],
      [power, undefined, 3.5 / 0.002 ** 2],
    ] as const;
    for (const [curve, reverseCoefficient, k] of cases) {
      const pump = pumpAtSpeed([{ speedRatio: 1, curve }], 0);
      const link = reverseCoefficient === undefined ? { pump } : { pump, reverseCoefficient };
      const answer = solveNetwork(between(1, 0, link));
      expect(answer.status).toBe("converged");
      expect(answer.flows[0] / Math.sqrt(1 / k)).toBeCloseTo(1, 10);
    }
  });

  it("stays shut against backward flow when it stands still without a coefficient", () => {
    const pump = pumpAtSpeed([{ speedRatio: 1, curve: power }], 0);
    const answer = solveNetwork(between(0, 1, { pump }));
    expect(answer.status).toBe("converged");
    expect(answer.links[0]?.shut).toBe(true);
    const checked = solveNetwork(between(0, 1, { pump, reverseCoefficient: 1e6, checkValve: true }));
    expect(checked.flows[0]).toBe(0);
  });

  it("has a coefficient that is not a number pointed out", () => {
    const pump = pumpAtSpeed([{ speedRatio: 1, curve: power }], 0);
    const problems = networkProblems(between(0, 1, { pump, reverseCoefficient: Number.NaN }));
    expect(problems.map(({ message }) => message)).toEqual([
      'pump "p" has reverseCoefficient NaN; it must be a number of zero or more',
    ]);
  });
});

describe("a network changed in place", () => {
  /** Two pumps side by side into a manifold with two outlets and a drain-back line. */
  type Setting = Readonly<{
    one: PumpLink;
    other: PumpLink;
    heads: readonly number[];
    oneWay: boolean;
    outlet: number;
  }>;
  const outletPipe = (minorLoss: number): PipeLink => ({
    id: "4",
    kind: "pipe",
    from: "m",
    to: "display",
    length: 0.5,
    diameter: 0.02,
    roughness: 1.5e-6,
    minorLoss,
  });
  const model = ({ one, other, heads, oneWay, outlet }: Setting): NetworkModel => ({
    liquid: { density: 1023, kinematicViscosity: 1e-6 },
    nodes: [
      ...["sump", "display", "refuge"].map((id, i) => ({ id, kind: "fixedHead", head: heads[i] }) as const),
      ...["x", "y", "m", "n"].map((id) => ({ id, kind: "junction", elevation: 0 }) as const),
    ],
    links: [
      one,
      other,
      {
        id: "1",
        kind: "pipe",
        from: "x",
        to: "m",
        length: 1.5,
        diameter: 0.03,
        roughness: 1.5e-6,
        minorLoss: 2,
        checkValve: oneWay,
      },
      { id: "2", kind: "pipe", from: "y", to: "m", length: 1.7, diameter: 0.026, roughness: 1.5e-6, minorLoss: 3 },
      { id: "3", kind: "pipe", from: "m", to: "n", length: 0.4, diameter: 0.026, roughness: 1.5e-6, minorLoss: 0.5 },
      outletPipe(outlet),
      { id: "5", kind: "pipe", from: "n", to: "display", length: 0.6, diameter: 0.02, roughness: 1.5e-6, minorLoss: 2 },
      { id: "6", kind: "pipe", from: "n", to: "refuge", length: 0.6, diameter: 0.015, roughness: 1.5e-6, minorLoss: 5 },
    ],
  });
  const pumpLink = (id: string, to: string) =>
    fc.record({
      id: fc.constant(id),
      kind: fc.constant("pump" as const),
      from: fc.constant("sump"),
      to: fc.constant(to),
      pump: fc
        .tuple(pumps, fc.oneof(fc.constant(0), real(0.2, 1)))
        .map(([pump, speedRatio]) => ({ ...pump, speedRatio })),
      reverseCoefficient: real(1e5, 1e7),
    });
  const setting = fc.record({
    one: pumpLink("a", "x"),
    other: pumpLink("b", "y"),
    heads: fc.tuple(real(0, 0.3), real(0.8, 1.6), real(0, 0.5)),
    oneWay: fc.boolean(),
    outlet: real(0, 20),
  });
  const change = (net: CompiledNetwork, { one, other, heads, oneWay, outlet }: Setting) => {
    net.pumps[0] = one;
    net.pumps[1] = other;
    net.oneWay[2] = oneWay ? 1 : 0;
    setLink(net, 5, outletPipe(outlet));
    for (const [i, id] of ["sump", "display", "refuge"].entries()) net.head[net.nodeIndex.get(id) as number] = heads[i];
  };

  it("comes out of a warm start as from a cold one: levels, pump speeds, check valves and fittings alike", () => {
    fc.assert(
      fc.property(setting, fc.array(setting, { minLength: 1, maxLength: 5 }), (first, later) => {
        const net = compileNetwork(model(first));
        const state = newNetworkState(net);
        solveCompiled(net, state);
        for (const next of later) {
          change(net, next);
          solveCompiled(net, state, { warm: true, tolerance: 1e-12 });
          const cold = solveNetwork(model(next), { tolerance: 1e-12 });
          expect([state.status, cold.status]).toEqual(["converged", "converged"]);
          const scale = Math.max(1e-4, ...Array.from(cold.flows, Math.abs));
          cold.flows.forEach((flow, l) => expect(Math.abs(flow - state.flow[l])).toBeLessThan(1e-9 * scale));
          cold.heads.forEach((head, i) => {
            const at = net.nodeIndex.get(net.model.nodes[i].id) as number;
            expect(Math.abs(head - state.head[at])).toBeLessThan(1e-9);
          });
        }
      }),
      { numRuns: 300 },
    );
  });

  it("comes out of a cold start to the last bit as when it is compiled anew", () => {
    fc.assert(
      fc.property(setting, setting, (first, next) => {
        const net = compileNetwork(model(first));
        const state = newNetworkState(net);
        solveCompiled(net, state);
        change(net, next);
        solveCompiled(net, state);
        expect(Array.from(state.flow)).toEqual(Array.from(solveNetwork(model(next)).flows));
      }),
    );
  });
});
