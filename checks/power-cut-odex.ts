import { pumpAtSpeed, pumpCurve, simulate, type TimedAction, type TransientModel } from "@tidewright/engine";
import { Solver } from "odex";
import { checksOf } from "./check.ts";

// One system, written down once as numbers: the project gets them as a model, the separate model below reads them itself.
const g = 9.80665;
const viscosity = 9.4e-7;
const pump = { shutoff: 3, lastFlow: 0.0012, back: 2e6, timeConstant: 0.5 };
const riser = { bore: 0.027, length: 2, roughness: 1.5e-6, losses: 3 };
const intake = 0.1;
const nozzle = 1.42;
const siphonBreak = 1.43;
const weir = { length: 0.35, crest: 1.45 };
const standpipe = { bore: 0.05, inlet: 1.33, length: 1.2, end: 0.2 };
const baffle = { length: 0.4, crest: 0.25 };
const areas = { display: 0.5, box: 0.04, first: 0.12, last: 0.3 };
const floors = { display: 0.9, box: 1.1, sump: 0.05 };
const displayRim = 1.5;
const operating = 0.24;
const section = (bore: number): number => (Math.PI / 4) * bore ** 2;
const riserContent = section(riser.bore) * riser.length;
const pipeContent = section(standpipe.bore) * standpipe.length;

const cutAt = 10;
const restartAt = 100;

/** Where everything stands: surfaces [m], water in the standpipe [m3], height of the water in the riser [m], speed of the pump [-]. */
type State = [display: number, box: number, first: number, last: number, held: number, column: number, speed: number];

const weirCoefficient = (2 / 3) * 0.602 * Math.sqrt(2 * g);

/** Crest with water on both sides, after Villemonte; within 0.5 % of level water a straight line takes over. */
function crestFlow(length: number, crest: number, up: number, down: number): number {
  if (down > up) return -crestFlow(length, crest, down, up);
  const head = up - crest;
  if (head <= 0) return 0;
  const ratio = Math.max(0, down - crest) / head;
  const share = ratio < 0.995 ? (1 - ratio ** 1.5) ** 0.385 : (1 - 0.995 ** 1.5) ** 0.385 * ((1 - ratio) / 0.005);
  return weirCoefficient * length * head ** 1.5 * share;
}

/** Rim of the standpipe as a weir, or as a drowned hole. */
function rimFlow(head: number): number {
  if (head <= 0) return 0;
  const hole = 0.6 * section(standpipe.bore) * Math.sqrt(2 * g * head);
  return Math.min(weirCoefficient * Math.PI * standpipe.bore * head ** 1.5, hole);
}

/** Water on the wall of the standpipe, Wyly and Eaton in SI: 31.46 r^(5/3) D^(8/3). */
const wallFlow = (held: number): number =>
  31.46 * Math.max(0, held / pipeContent) ** (5 / 3) * standpipe.bore ** (8 / 3);

/** Colebrook by repeated substitution from Swamee and Jain's value; laminar below Reynolds 2000, a straight line between. */
function friction(reynolds: number): number {
  if (reynolds <= 2000) return 64 / reynolds;
  if (reynolds < 4000) return 0.032 + ((reynolds - 2000) / 2000) * (friction(4000) - 0.032);
  const rough = riser.roughness / (3.7 * riser.bore);
  let f = (-2 * Math.log10(rough + 5.74 / reynolds ** 0.9)) ** -2;
  for (let i = 0; i < 4; i++) f = (-2 * Math.log10(rough + 2.51 / (reynolds * Math.sqrt(f)))) ** -2;
  return f;
}

/** Flow up the riser [m3/s] between two surfaces at a speed of the pump, a parabola forward, shut-off head and a square
 *  backward. `wet` is the share of the riser that holds water. */
function riserFlow(lower: number, upper: number, speed: number, wet: number): number {
  const excess = (flow: number): number => {
    const size = Math.abs(flow);
    const speedHead = (size / section(riser.bore)) ** 2 / (2 * g);
    const reynolds = (4 * size) / (Math.PI * riser.bore * viscosity);
    const pipe = size > 0 ? ((friction(reynolds) * riser.length * wet) / riser.bore + riser.losses) * speedHead : 0;
    const shutoff = pump.shutoff * speed ** 2;
    const head = flow >= 0 ? shutoff - pump.shutoff * (flow / pump.lastFlow) ** 2 : shutoff + pump.back * flow ** 2;
    // A standing pump resists alike both ways.
    const lift = speed < 1e-3 ? -pump.back * flow * size : head;
    return lift + lower - upper - Math.sign(flow) * pipe;
  };
  // False position after Illinois.
  let [low, high] = [-0.003, 0.003];
  let [atLow, atHigh] = [excess(low), excess(high)];
  let side = 0;
  while (high - low > 1e-13) {
    const flow = (low * atHigh - high * atLow) / (atHigh - atLow);
    const value = excess(flow);
    if (Math.abs(value) < 1e-10) return flow;
    if (value > 0) {
      [low, atLow] = [flow, value];
      if (side > 0) atHigh /= 2;
      side = 1;
    } else {
      [high, atHigh] = [flow, value];
      if (side < 0) atLow /= 2;
      side = -1;
    }
  }
  return 0.5 * (low + high);
}

interface Regime {
  /** The riser stands open to the air and holds a column. */
  readonly aired: boolean;
  readonly target: number;
  readonly blocked: boolean;
  readonly chambers: 1 | 2;
}

const riserSlope = (nozzle - intake) / riserContent;

function slopes({ aired, target, blocked, chambers }: Regime, y: readonly number[]): State {
  const [display, box, first, last, held, column, speed] = y as State;
  const over = crestFlow(weir.length, weir.crest, display, box);
  const taken = blocked ? 0 : rimFlow(box - standpipe.inlet);
  const given = wallFlow(held);
  const passed = chambers === 2 ? crestFlow(baffle.length, baffle.crest, first, last) : given;
  const wet = aired ? Math.min(1, (column - intake) / (nozzle - intake)) : 1;
  const up = riserFlow(last, aired ? column : Math.max(display, nozzle), speed, wet);
  return [
    ((aired ? 0 : up) - over) / areas.display,
    (over - taken) / areas.box,
    chambers === 2 ? (given - passed) / areas.first : 0,
    (passed - up) / areas.last,
    taken - given,
    aired ? up * riserSlope : 0,
    (target - speed) / pump.timeConstant,
  ];
}

function advance(regime: Regime, from: readonly number[], time: number): State {
  if (!(time > 0)) return [...from] as State;
  const solver = new Solver(7);
  solver.absoluteTolerance = 1e-6;
  solver.relativeTolerance = 1e-6;
  solver.maxSteps = 1_000_000;
  return solver.solve((_t, y) => slopes(regime, y), 0, from, time).y as State;
}

/** Goes on until `value` falls to zero, or to the end: walked in pieces, the last one halved. */
function advanceTo(
  regime: Regime,
  from: State,
  time: number,
  value: (y: State) => number,
): { readonly y: State; readonly after: number; readonly met: boolean } {
  const piece = 2;
  let y = from;
  for (let t = 0; t < time; ) {
    const length = Math.min(piece, time - t);
    const next = advance(regime, y, length);
    if (value(next) <= 0) {
      let low = 0;
      let high = length;
      for (let i = 0; i < 14; i++) {
        const middle = 0.5 * (low + high);
        if (value(advance(regime, y, middle)) <= 0) high = middle;
        else low = middle;
      }
      return { y: advance(regime, y, high), after: t + high, met: true };
    }
    y = next;
    t += length;
  }
  return { y, after: time, met: false };
}

/** Levels at which nothing moves: the flow at which pump, riser, weir, rim and baffle agree. */
function atRest(chambers: 1 | 2): State {
  let flow = 0;
  const head = (length: number) => (flow / (weirCoefficient * length)) ** (2 / 3);
  for (let i = 0; i < 50; i++) flow = 0.5 * (flow + riserFlow(operating, weir.crest + head(weir.length), 1, 1));
  const drowned = (flow / (0.6 * section(standpipe.bore))) ** 2 / (2 * g);
  return [
    weir.crest + head(weir.length),
    standpipe.inlet + Math.max(head(Math.PI * standpipe.bore), drowned),
    chambers === 2 ? baffle.crest + head(baffle.length) : operating,
    operating,
    pipeContent * (flow / (31.46 * standpipe.bore ** (8 / 3))) ** 0.6,
    nozzle,
    1,
  ];
}

/** The power cut and the restart, in regimes one after the other: full and running back, open to the air, filling, full. */
function separateCut(chambers: 1 | 2, moments: readonly number[]) {
  const full: Regime = { aired: false, target: 0, blocked: false, chambers };
  const airedAfterCut: Regime = { ...full, aired: true };
  const start = atRest(chambers);
  const toBreak = advanceTo(full, start, 200, ([display]) => display - siphonBreak);
  const breakAt = cutAt + toBreak.after;
  const beforeRestart = advance(airedAfterCut, toBreak.y, restartAt - breakAt);
  const toFull = advanceTo({ ...airedAfterCut, target: 1 }, beforeRestart, 60, ([, , , , , column]) => nozzle - column);
  const fullAt = restartAt + toFull.after;
  const regimes = [
    { from: cutAt, regime: full, y: start },
    { from: breakAt, regime: airedAfterCut, y: toBreak.y },
    { from: restartAt, regime: { ...airedAfterCut, target: 1 }, y: beforeRestart },
    { from: fullAt, regime: { ...full, target: 1 }, y: toFull.y },
  ];
  const at = (t: number): State => {
    const now = regimes.filter(({ from }) => from <= t).at(-1) as (typeof regimes)[number];
    now.y = advance(now.regime, now.y, t - now.from);
    now.from = t;
    return now.y;
  };
  const sump = (y: State) => (chambers === 2 ? areas.first * y[2] : 0) + areas.last * y[3];
  return { start, breakAt, fullAt, states: moments.map(at), returned: sump(beforeRestart) - sump(start) };
}

/** Time from the blocking of the standpipe until the display stands at its rim. */
function separateRise(chambers: 1 | 2): number {
  const regime: Regime = { aired: false, target: 1, blocked: true, chambers };
  return advanceTo(regime, atRest(chambers), 1000, ([display]) => displayRim - display).after;
}

// The same system for the project.
const curves = [
  {
    speedRatio: 1,
    curve: pumpCurve([
      { flow: 0, head: pump.shutoff },
      { flow: pump.lastFlow, head: 0 },
    ]),
  },
];
const plain = { toothOpenShare: 1, toothHeight: 0, crestHeight: Number.POSITIVE_INFINITY };

function projectModel(chambers: 1 | 2): TransientModel {
  const [display, box, first, last] = atRest(chambers);
  const dry = { rim: Number.POSITIVE_INFINITY, rimLength: 0 };
  const sump = [
    ...(chambers === 2 ? [{ id: "first", floor: floors.sump, area: areas.first, ...dry, startLevel: first }] : []),
    { id: "last", floor: floors.sump, area: areas.last, ...dry, startLevel: last },
  ];
  const lastIndex = 1 + chambers;
  return {
    water: { kinematicViscosity: viscosity },
    vessels: [
      { id: "display", floor: floors.display, area: areas.display, rim: displayRim, rimLength: 3, startLevel: display },
      { id: "box", floor: floors.box, area: areas.box, ...dry, startLevel: box },
      ...sump,
    ],
    weirs: [
      { id: "weir", from: 0, to: 1, weir: { length: weir.length, ...plain }, crest: weir.crest },
      ...(chambers === 2
        ? [{ id: "baffle", from: 2, to: 3, weir: { length: baffle.length, ...plain }, crest: baffle.crest }]
        : []),
    ],
    drains: [
      {
        id: "standpipe",
        from: 1,
        to: 2,
        kind: "ventedStandpipe",
        line: {
          bore: standpipe.bore,
          inletDiameter: standpipe.bore,
          segments: [
            {
              length: standpipe.length,
              diameter: standpipe.bore,
              roughness: 1.5e-6,
              lossCoefficient: 2.5,
              laminarLoss: 0,
            },
          ],
          valveLoss: 0,
          inletElevation: standpipe.inlet,
          outletElevation: standpipe.end,
        },
        endElevation: standpipe.end,
        content: pipeContent,
        primed: false,
      },
    ],
    circuits: [
      {
        id: "return",
        network: {
          liquid: { density: 1023, kinematicViscosity: viscosity },
          nodes: [
            { id: "source", kind: "fixedHead", head: 0 },
            { id: "discharge", kind: "junction", elevation: floors.sump },
            { id: "out", kind: "fixedHead", head: 0 },
          ],
          links: [
            {
              id: "pump",
              kind: "pump",
              from: "source",
              to: "discharge",
              pump: pumpAtSpeed(curves, 1),
              reverseFlow: true,
              reverseCoefficient: pump.back,
            },
            {
              id: "riser",
              kind: "pipe",
              from: "discharge",
              to: "out",
              length: riser.length,
              diameter: riser.bore,
              roughness: riser.roughness,
              minorLoss: riser.losses,
            },
          ],
        },
        sourceNode: "source",
        source: lastIndex,
        intakeElevation: intake,
        outlets: [{ id: "nozzle", node: "out", vessel: 0, elevation: nozzle, breakElevation: siphonBreak }],
        upper: 0,
        pumps: [{ link: "pump", curves, speed: 1, reverseCoefficient: pump.back }],
        content: riserContent,
        checkValves: [],
      },
    ],
    evaporation: [],
    pumpTimeConstant: pump.timeConstant,
  };
}

const speedAt = (at: number, speed: number): TimedAction => ({
  at,
  action: { kind: "pumpSpeed", circuit: 0, pump: 0, speed },
});
const cutAndRestart = [speedAt(cutAt, 0), speedAt(restartAt, 1)];
const play = (chambers: 1 | 2, duration: number, actions: readonly TimedAction[] = cutAndRestart) =>
  simulate(projectModel(chambers), actions, { duration, record: false });
const timeOf = (run: ReturnType<typeof simulate>, code: string): number =>
  run.events.find((event) => event.code === code)?.t ?? Number.NaN;

const moments = [12, 20, 30, 50, 95, 110, 130, 300] as const;
const names = { 1: "one chamber", 2: "two chambers" } as const;
const source =
  "odex 2.0.4 (Hairer and Wanner's ODEX) on a model written apart: weir, Villemonte, rim, Wyly and Eaton, Colebrook, pump parabola, switched by hand";
const remains =
  "the riser's friction counts on its wet part here, on all of it there; other curves from laminar to turbulent and for nearly level water; a hundredth of the riser to fill";

function cutChecks(chambers: 1 | 2) {
  const separate = separateCut(chambers, moments);
  const levels = (vessel: 0 | 1 | 2 | 3, name: string) =>
    moments.map((t, i): readonly [string, number, () => number] => [
      `${name} ${t} s, cut at ${cutAt}, back at ${restartAt} s, ${names[chambers]}, m`,
      separate.states[i]?.[vessel] as number,
      () => play(chambers, t).finalLevels[chambers === 1 && vessel === 3 ? 2 : vessel] as number,
    ]);
  const common = { source, tag: "other program" as const };
  const gained = (): number => {
    const model = projectModel(chambers);
    const run = play(chambers, restartAt);
    return model.vessels
      .map(({ area, startLevel }, i) => (i < 2 ? 0 : area * ((run.finalLevels[i] as number) - startLevel)))
      .reduce((sum, volume) => sum + volume, 0);
  };
  return [
    ...checksOf({ ...common, tolerance: 1e-4 / 1.43, why: `0.1 mm; ${remains}` }, levels(0, "display at")),
    ...checksOf({ ...common, tolerance: 1e-4 / 1.33, why: `0.1 mm; ${remains}` }, levels(1, "box at")),
    ...checksOf({ ...common, tolerance: 1e-4 / 0.24, why: `0.1 mm; ${remains}` }, [
      ...(chambers === 2 ? levels(2, "first chamber at") : []),
      ...levels(3, "return chamber at"),
    ]),
    ...checksOf({ ...common, tolerance: 0.02 / 22, why: `0.02 s; ${remains}` }, [
      [
        `time until the siphon break lets air in, ${names[chambers]}, s`,
        separate.breakAt - cutAt,
        () => timeOf(play(chambers, restartAt), "outlet/uncovered") - cutAt,
      ],
    ]),
    ...checksOf({ ...common, tolerance: 0.05 / 1.5, why: `0.05 s; ${remains}` }, [
      [
        `time until the riser is full again, ${names[chambers]}, s`,
        separate.fullAt - restartAt,
        () => timeOf(play(chambers, restartAt + 60), "circuit/full") - restartAt,
      ],
    ]),
    ...checksOf({ ...common, tolerance: 1e-4, why: remains }, [
      [`water returned to the sump, ${names[chambers]}, m3`, separate.returned, gained],
    ]),
    ...checksOf({ ...common, tolerance: 5e-4, why: `0.02 s; ${remains}` }, [
      [
        `time from a blocked standpipe to the display's rim, ${names[chambers]}, s`,
        separateRise(chambers),
        () =>
          timeOf(
            play(chambers, 1000, [{ at: cutAt, action: { kind: "drainBlocked", drain: 0, share: 1 } }]),
            "rim/over",
          ) - cutAt,
      ],
    ]),
  ];
}

/** A power cut, a restart and a blocked drain of a whole system, levels and times against a model written apart. */
export const powerCutOdex = [...cutChecks(1), ...cutChecks(2)];
