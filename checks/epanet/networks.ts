import {
  type NetworkLink,
  type NetworkModel,
  type NetworkNode,
  pumpAtSpeed,
  pumpCurve,
  seaWater,
} from "@tidewright/engine";

/** A network to be solved twice. Allowed differences: flow relative to the largest flow, head in metres. */
export interface NetworkCase {
  readonly name: string;
  readonly model: NetworkModel;
  readonly flowTolerance?: number;
  readonly headTolerance?: number;
  readonly why: string;
}

const { density, kinematicViscosity } = seaWater(35, 25);
const liquid = { density, kinematicViscosity };
const pvc = 1.5e-6;

const tank = (id: string, head: number): NetworkNode => ({ id, kind: "fixedHead", head });
const joint = (id: string, elevation = 0, demand = 0): NetworkNode => ({ id, kind: "junction", elevation, demand });
const pipe = (
  id: string,
  from: string,
  to: string,
  length: number,
  diameter: number,
  minorLoss = 0,
  more: { readonly roughness?: number; readonly checkValve?: boolean } = {},
): NetworkLink => ({ id, kind: "pipe", from, to, length, diameter, roughness: pvc, minorLoss, ...more });
const valve = (id: string, from: string, to: string, diameter: number, lossCoefficient: number): NetworkLink => ({
  id,
  kind: "valve",
  from,
  to,
  diameter,
  lossCoefficient,
});
const curves = {
  /** Three points: the power function. */
  large: pumpCurve([
    { flow: 0, head: 5 },
    { flow: 0.0015, head: 3.9 },
    { flow: 0.003, head: 1 },
  ]),
  small: pumpCurve([
    { flow: 0, head: 3 },
    { flow: 0.0012, head: 0.6 },
  ]),
  many: pumpCurve([
    { flow: 0, head: 4.2 },
    { flow: 0.0005, head: 4 },
    { flow: 0.001, head: 3.5 },
    { flow: 0.0015, head: 2.6 },
    { flow: 0.002, head: 1.3 },
  ]),
};
const pump = (id: string, from: string, to: string, kind: keyof typeof curves, speed = 1): NetworkLink => ({
  id,
  kind: "pump",
  from,
  to,
  pump: pumpAtSpeed([{ speedRatio: 1, curve: curves[kind] }], speed),
});

const friction =
  "EPANET takes Swamee and Jain's friction factor, up to 1.6 % from the exact Colebrook value that we solve";
const atRest = "no water moves; EPANET leaves 1e-6 ft3/s in shut links, here relative to 1e-5 m3/s";

function network(name: string, nodes: NetworkNode[], links: NetworkLink[], why = friction): NetworkCase {
  return { name, model: { liquid, nodes, links }, why };
}

function grid(size: number): NetworkCase {
  const nodes: NetworkNode[] = [tank("source", 2), tank("sink", 0)];
  const links: NetworkLink[] = [];
  for (let row = 0; row < size; row++)
    for (let column = 0; column < size; column++) {
      const id = `n${row}${column}`;
      nodes.push(joint(id, 0, row === 1 && column === 1 ? 0.0001 : 0));
      if (column > 0) links.push(pipe(`h${row}${column}`, `n${row}${column - 1}`, id, 1 + 0.1 * row, 0.034));
      if (row > 0) links.push(pipe(`v${row}${column}`, `n${row - 1}${column}`, id, 1 + 0.2 * column, 0.0272));
    }
  const last = `n${size - 1}${size - 1}`;
  links.push(pipe("in", "source", "n00", 1, 0.0426, 0.5), pipe("out", last, "sink", 1, 0.0426, 1));
  return network(`grid of ${size} by ${size}`, nodes, links);
}

const manifoldBranches = [1, 2, 3, 4] as const;

/** Networks of the kind and size that plumbing of tanks has, and some that try the solver. */
export const networks: readonly NetworkCase[] = [
  network("one pipe between two tanks", [tank("a", 1), tank("b", 0)], [pipe("p", "a", "b", 5, 0.034, 1.5)]),
  network(
    "three bores in series",
    [tank("a", 1.5), joint("m"), joint("n"), tank("b", 0)],
    [pipe("p", "a", "m", 2, 0.0426, 0.5), pipe("q", "m", "n", 2, 0.034, 0.8), pipe("r", "n", "b", 2, 0.0272, 1)],
  ),
  network(
    "two loops",
    [tank("a", 2), joint("b"), joint("c"), joint("d", 0, 0.0003), joint("e", 0, 0.0002), tank("f", 0)],
    [
      pipe("ab", "a", "b", 2, 0.0426, 0.5),
      pipe("bc", "b", "c", 3, 0.034, 1),
      pipe("bd", "b", "d", 4, 0.0272, 1),
      pipe("cd", "c", "d", 1.5, 0.0212, 1),
      pipe("ce", "c", "e", 3, 0.0272, 1),
      pipe("de", "d", "e", 3, 0.0272, 1),
      pipe("ef", "e", "f", 2, 0.034, 1),
    ],
  ),
  grid(4),
  network(
    "return pump to a tank",
    [tank("sump", 0.3), joint("p"), tank("display", 1.6)],
    [pump("pump", "sump", "p", "large"), pipe("up", "p", "display", 3, 0.034, 6)],
  ),
  network(
    "two unequal pumps in parallel",
    [tank("sump", 0.3), joint("p"), tank("display", 1.6)],
    [pump("one", "sump", "p", "large"), pump("two", "sump", "p", "small"), pipe("up", "p", "display", 3, 0.0426, 4)],
  ),
  network(
    "two pumps in series",
    [tank("sump", 0), joint("m"), joint("p"), tank("display", 5)],
    [pump("one", "sump", "m", "large"), pump("two", "m", "p", "large"), pipe("up", "p", "display", 4, 0.034, 5)],
  ),
  network(
    "pump slowed to 0.8",
    [tank("sump", 0.3), joint("p"), tank("display", 1.4)],
    [pump("pump", "sump", "p", "large", 0.8), pipe("up", "p", "display", 3, 0.034, 3)],
  ),
  network(
    "pump with a five-point curve",
    [tank("sump", 0.3), joint("p"), tank("display", 1.6)],
    [pump("pump", "sump", "p", "many"), pipe("up", "p", "display", 3, 0.034, 6)],
    `${friction}; the cubic is given to EPANET as 60 straight pieces`,
  ),
  network(
    "check valve open",
    [tank("a", 1), joint("m"), tank("b", 0)],
    [pipe("p", "a", "m", 2, 0.034, 1, { checkValve: true }), pipe("q", "m", "b", 2, 0.034, 1)],
  ),
  network(
    "check valve shut beside an open way",
    [tank("a", 1), tank("c", 0.2), joint("m"), tank("b", 0)],
    [
      pipe("p", "a", "m", 2, 0.034, 1),
      pipe("shut", "c", "m", 2, 0.034, 1, { checkValve: true }),
      pipe("q", "m", "b", 2, 0.034, 1),
    ],
  ),
  network(
    "pump that cannot lift",
    [tank("sump", 0), joint("p"), tank("display", 4)],
    [pump("pump", "sump", "p", "small"), pipe("up", "p", "display", 3, 0.034, 3)],
    atRest,
  ),
  network(
    "weak pump held shut by a strong one",
    [tank("sump", 0), joint("p"), tank("display", 3.4)],
    [pump("strong", "sump", "p", "large"), pump("weak", "sump", "p", "small"), pipe("up", "p", "display", 3, 0.034, 3)],
  ),
  network(
    "laminar line, Re below 2000",
    [tank("a", 0.02), tank("b", 0)],
    [pipe("p", "a", "b", 6, 0.008, 0)],
    "64/Re in both; EPANET reckons with g = 32.2 ft/s2, which is 0.08 % more than standard gravity",
  ),
  network(
    "line in the transition, Re near 3000",
    [tank("a", 0.0033), joint("m"), tank("b", 0)],
    [pipe("p", "a", "m", 1, 0.02, 0), pipe("q", "m", "b", 1, 0.02, 0)],
    "both join laminar and turbulent by Dunlop's cubic; EPANET's starts from Swamee and Jain's factor, 1.6 % high at Re 4000",
  ),
  network(
    "manifold with four branches",
    [
      tank("sump", 0.3),
      joint("p"),
      ...manifoldBranches.map((i) => joint(`m${i}`)),
      ...manifoldBranches.map((i) => tank(`t${i}`, 0.8 + 0.2 * i)),
    ],
    [
      pump("pump", "sump", "p", "large"),
      pipe("riser", "p", "m1", 1.5, 0.0426, 2),
      ...[2, 3, 4].map((i) => pipe(`run${i}`, `m${i - 1}`, `m${i}`, 0.3, 0.0426, 0.4)),
      ...manifoldBranches.map((i) => pipe(`branch${i}`, `m${i}`, `t${i}`, 1.2, 0.0212, 3 + i)),
    ],
  ),
  network(
    "two tanks and a demand between",
    [tank("a", 2), tank("b", 1.8), joint("m", 0, 0.0012)],
    [pipe("p", "a", "m", 3, 0.034, 1), pipe("q", "b", "m", 4, 0.034, 1)],
  ),
  network(
    "throttled valve",
    [tank("a", 1.2), joint("m"), joint("n"), tank("b", 0)],
    [pipe("p", "a", "m", 1, 0.034, 0.5), valve("v", "m", "n", 0.034, 25), pipe("q", "n", "b", 1, 0.034, 1)],
  ),
  network(
    "closed valve beside an open way",
    [tank("a", 1.2), joint("m"), joint("n"), tank("b", 0)],
    [
      pipe("p", "a", "m", 1, 0.034, 0.5),
      valve("v", "m", "n", 0.034, Number.POSITIVE_INFINITY),
      pipe("by", "m", "n", 2, 0.0212, 2),
      pipe("q", "n", "b", 1, 0.034, 1),
    ],
  ),
  network(
    "below the datum",
    [tank("a", -1), joint("m", -3), joint("n", -4, 0.0002), tank("b", -2.5)],
    [pipe("p", "a", "m", 2, 0.034, 0.5), pipe("q", "m", "n", 2, 0.0272, 1), pipe("r", "n", "b", 2, 0.0272, 1)],
  ),
  network(
    "wide socket next to a thin line",
    [tank("a", 1), joint("m"), joint("n"), tank("b", 0)],
    [pipe("wide", "a", "m", 0.1, 0.1), pipe("thin", "m", "n", 6, 0.006), pipe("wide2", "n", "b", 0.1, 0.1)],
  ),
  network(
    "rough hoses",
    [tank("a", 2), joint("m"), tank("b", 0), tank("c", 0.5)],
    [
      pipe("p", "a", "m", 3, 0.032, 1, { roughness: 5e-4 }),
      pipe("q", "m", "b", 4, 0.025, 1, { roughness: 5e-4 }),
      pipe("r", "m", "c", 4, 0.025, 1, { roughness: 2e-4 }),
    ],
  ),
  network(
    "thirteen links: pump, four-branch manifold, two outlets",
    [
      tank("sump", 0.25),
      joint("suction"),
      joint("p"),
      ...manifoldBranches.map((i) => joint(`m${i}`, 0.4)),
      tank("reactor", 0.5),
      tank("refuge", 0.6),
      tank("chiller", 0.4),
      joint("riser", 1.5),
      tank("left", 1.6),
      tank("right", 1.6),
    ],
    [
      pipe("intake", "sump", "suction", 0.3, 0.0426, 0.8),
      pump("pump", "suction", "p", "large"),
      pipe("header", "p", "m1", 0.4, 0.0426, 1),
      pipe("run2", "m1", "m2", 0.15, 0.0426, 0.4),
      pipe("run3", "m2", "m3", 0.15, 0.0426, 0.4),
      pipe("run4", "m3", "m4", 0.15, 0.0426, 0.4),
      pipe("b1", "m1", "reactor", 1, 0.0132, 25),
      pipe("b2", "m2", "refuge", 1.2, 0.017, 20),
      pipe("b3", "m3", "chiller", 2, 0.017, 30),
      valve("check", "m4", "riser", 0.034, 2),
      pipe("left1", "riser", "left", 0.8, 0.0272, 2.5),
      pipe("right1", "riser", "right", 1.6, 0.0272, 3),
      pipe("drainback", "riser", "right", 1.6, 0.017, 3),
    ],
  ),
];
