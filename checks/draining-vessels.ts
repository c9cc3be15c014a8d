import {
  createOde,
  type DrainLine,
  type OdeEvents,
  type OdeSystem,
  orificeFlow,
  seaWater,
  siphonFlow,
} from "@tidewright/engine";
import { Solver } from "odex";
import { checksOf } from "./check.ts";

const g = 9.80665;
const hole = { area: Math.PI * 0.01 ** 2, coefficient: 0.61 };

/** Integrates a system with the project's integrator to a time, or to where a value of the state falls to zero. */
function integrate(system: OdeSystem, start: readonly number[], end: number, value?: (y: Float64Array) => number) {
  const y = Float64Array.from(start);
  const events: OdeEvents | undefined = value && {
    count: 1,
    direction: Int8Array.of(-1),
    values(state, out) {
      out[0] = value(state);
    },
  };
  const options = {
    relativeTolerance: 1e-10,
    absoluteTolerance: new Float64Array(start.length).fill(1e-11),
    maximumSteps: 100_000,
  };
  const result = createOde(system).run(0, y, end, options, events);
  return { t: result.t, y };
}

// A pool of 0.6 x 0.45 m that empties through a hole.
const pool: OdeSystem = {
  size: 1,
  derivative(y, out) {
    out[0] = -orificeFlow(hole.coefficient, hole.area, y[0]) / 0.27;
  },
};

// Two vessels of 0.27 and 0.09 m2 joined by the same hole.
const areas = [0.27, 0.09] as const;
const pair: OdeSystem = {
  size: 2,
  derivative(y, out) {
    const difference = y[0] - y[1];
    const flow = Math.sign(difference) * orificeFlow(hole.coefficient, hole.area, Math.abs(difference));
    out[0] = -flow / areas[0];
    out[1] = flow / areas[1];
  },
};
const rootRate = 0.5 * hole.coefficient * hole.area * Math.sqrt(2 * g) * (1 / areas[0] + 1 / areas[1]);
const differenceAfter = (time: number): number => (Math.sqrt(0.3) - rootRate * time) ** 2;
const meanLevel = (0.4 * areas[0] + 0.1 * areas[1]) / (areas[0] + areas[1]);

// A display of 1.2 x 0.6 m that a siphon of 32 mm pipe empties into a sump of 0.9 x 0.45 m, both levels from the sump's floor.
const siphon = { diameter: 0.0286, length: 2.4, roughness: 1.5e-6, losses: 4.1 };
const displayArea = 0.72;
const sumpArea = 0.405;
const startLevels = [1.45, 0.2] as const;
const water = seaWater(35, 25);
const line = (outletElevation: number): DrainLine => ({
  bore: siphon.diameter,
  inletDiameter: siphon.diameter,
  segments: [{ ...siphon, lossCoefficient: siphon.losses, laminarLoss: 0 }],
  valveLoss: 0,
  inletElevation: 1.2,
  outletElevation,
});
const siphonSystem: OdeSystem = {
  size: 2,
  derivative(y, out) {
    const flow = siphonFlow(line(y[1]), y[0], water);
    out[0] = -flow / displayArea;
    out[1] = flow / sumpArea;
  },
};

/** The same siphon written anew, from the energy equation with Colebrook's formula iterated in place. */
function separateSiphonFlow(drop: number): number {
  let friction = 0.02;
  let speed = 0;
  for (let i = 0; i < 100; i++) {
    speed = Math.sqrt((2 * g * drop) / (siphon.losses + (friction * siphon.length) / siphon.diameter));
    const reynolds = (speed * siphon.diameter) / water.kinematicViscosity;
    const root = -2 * Math.log10(siphon.roughness / (3.7 * siphon.diameter) + 2.51 / (reynolds * Math.sqrt(friction)));
    friction = 1 / (root * root);
  }
  return (Math.PI / 4) * siphon.diameter ** 2 * speed;
}

function separateSolver(size: number): Solver {
  const solver = new Solver(size);
  solver.absoluteTolerance = 1e-13;
  solver.relativeTolerance = 1e-12;
  return solver;
}

/** Display and sump after a time, by odex. */
const separateLevels = (time: number): number[] =>
  separateSolver(2).solve(
    (_t, [display, sump]) => {
      const flow = separateSiphonFlow(display - sump);
      return [-flow / displayArea, flow / sumpArea];
    },
    0,
    startLevels,
    time,
  ).y;

/** Time until the display has fallen to a level, by odex with the level in place of the time: dt/dh = -A/Q. */
const separateTime = (level: number): number =>
  separateSolver(1).solve(
    (fall) => {
      const sump = startLevels[1] + (fall * displayArea) / sumpArea;
      return [displayArea / separateSiphonFlow(startLevels[0] - fall - sump)];
    },
    0,
    [0],
    startLevels[0] - level,
  ).y[0];

/** Vessels that drain, equalise and siphon, integrated in time. */
export const drainingVessels = [
  ...checksOf(
    {
      source:
        "E. Torricelli, integrated: t = 2 A/(Cd a sqrt(2 g)) (sqrt h0 - sqrt h1); 0.6 x 0.45 m, 20 mm hole, Cd 0.61",
      tag: "analytic",
      tolerance: 1e-9,
      why: "integrated to 1e-10 a step",
    },
    [
      [
        "time to fall from 0.40 to 0.10 m, integrated, s",
        ((2 * 0.27) / (hole.coefficient * hole.area * Math.sqrt(2 * g))) * (Math.sqrt(0.4) - Math.sqrt(0.1)),
        () => integrate(pool, [0.4], 1000, (y) => y[0] - 0.1).t,
      ],
      [
        "level after 100 s, integrated, m",
        (Math.sqrt(0.4) - (100 * hole.coefficient * hole.area * Math.sqrt(2 * g)) / (2 * 0.27)) ** 2,
        () => integrate(pool, [0.4], 100).y[0],
      ],
    ],
  ),
  ...checksOf(
    {
      source: "the same as printed: 201.2 s",
      tag: "analytic",
      tolerance: 3e-4,
      why: "four figures",
    },
    [["time to fall from 0.40 to 0.10 m, s", 201.2, () => integrate(pool, [0.4], 1000, (y) => y[0] - 0.1).t]],
  ),
  ...checksOf(
    {
      source:
        "two vessels through a hole: sqrt d = sqrt d0 - Cd a sqrt(g/2) (1/A1 + 1/A2) t, 0.27 and 0.09 m2, 0.40 and 0.10 m",
      tag: "analytic",
      tolerance: 1e-9,
      why: "integrated to 1e-10 a step",
    },
    [
      ["difference of level after 30 s, m", differenceAfter(30), () => levelsOfPair(30)[0] - levelsOfPair(30)[1]],
      [
        "upper level after 30 s, m",
        meanLevel + (differenceAfter(30) * areas[1]) / (areas[0] + areas[1]),
        () => levelsOfPair(30)[0],
      ],
      [
        "time until the difference is 1 cm, s",
        (Math.sqrt(0.3) - Math.sqrt(0.01)) / rootRate,
        () => integrate(pair, [0.4, 0.1], 1000, (y) => y[0] - y[1] - 0.01).t,
      ],
      [
        "water in both after 30 s over water at the start",
        1,
        () => (levelsOfPair(30)[0] * areas[0] + levelsOfPair(30)[1] * areas[1]) / (meanLevel * (areas[0] + areas[1])),
      ],
    ],
  ),
  ...checksOf(
    {
      source:
        "falling-head siphon: odex 2.0.4 (Hairer and Wanner's ODEX) on a model written apart, Colebrook iterated in place",
      tag: "other program",
      tolerance: 1e-9,
      why: "both integrations to 1e-10 a step; the friction factor is Colebrook's in both",
    },
    [
      ["display after 60 s, m", separateLevels(60)[0], () => integrate(siphonSystem, startLevels, 60).y[0]],
      ["sump after 60 s, m", separateLevels(60)[1], () => integrate(siphonSystem, startLevels, 60).y[1]],
      ["display after 150 s, m", separateLevels(150)[0], () => integrate(siphonSystem, startLevels, 150).y[0]],
      [
        "time until the display has fallen to 1.25 m, s",
        separateTime(1.25),
        () => integrate(siphonSystem, startLevels, 1000, (y) => y[0] - 1.25).t,
      ],
    ],
  ),
];

function levelsOfPair(time: number): Float64Array {
  return integrate(pair, [0.4, 0.1], time).y;
}
