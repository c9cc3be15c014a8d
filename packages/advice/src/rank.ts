import type { Catalogue, PumpRow } from "@tidewright/catalogue";
import { type Design, type PumpHydraulics, pumpHydraulics } from "@tidewright/design";
import {
  annualCost,
  electricalPower,
  hydraulicPower,
  lastFlowAtSpeed,
  type PumpAtSpeed,
  pumpAtSpeed,
  pumpHeadAtSpeed,
  pumpHeadSlopeAtSpeed,
  secondsPerYear,
} from "@tidewright/engine";
import { toSI } from "@tidewright/units";
import { circuitLoadWithout } from "./ranking/circuitLoad.ts";
import type { CoupledPoint } from "./ranking/coupledCurve.ts";
import { type Context, reasonsFor, rejectionsFor, type Wish } from "./ranking/judge.ts";
import { loopWish } from "./ranking/loopWish.ts";
import { type Met, OperatingPoints } from "./ranking/operatingPoints.ts";
import { markParetoFront, type Unmarked } from "./ranking/paretoFront.ts";
import type { Ranking, RankOptions, Rejection } from "./ranking.ts";
import { costOverHorizon } from "./states/costOverHorizon.ts";
import { priceCurrency } from "./states/priceCurrency.ts";
import { pumpLabel, pumpPrice, soundAtSpeed } from "./states/pumpStates.ts";
import { tariffOf } from "./states/tariffOf.ts";
import { returnFlowWish } from "./states/wishes.ts";
import { type PreparedSystem, withSystem } from "./system/prepare.ts";
import { type SolvedSystem, solveSystem } from "./system/solveSystem.ts";

/** Returns every pump of the catalogue, alone and in equal pairs, at its best speed in one loop of the design: candidates best
 *  first with their reasons, rejections with all their causes, and the Pareto front of price, cost over the horizon, power, sound
 *  and flow margin.
 *
 *  The whole system is solved without the pump, as a curve of head over flow; each pump then meets that curve. Where a controllable
 *  pump can give the wished flow, its speed follows from one exact head. Every other operating point is found on the tabulated
 *  curve and then settled on exact solutions of the network, to 1e-9 of flow.
 *  A loop without a wished flow is asked for what it gives now; one that stands still for what the wished turnover of all water still lacks, or,
 *  where that is not wished or there already, for no flow at all (see `loopWish`).
 *  score = horizon cost [hundreds] + 4 per dB over 30, /10 + 3 x miss of the aim in units of the wish's half width + 20 for each
 *  flaw; smaller is better. Where prices and tariff are in different currencies there is no horizon cost, and the price stands in its
 *  place: nothing is added that is not in one currency.
 *  design Design   catalogue Catalogue   options RankOptions   -> Ranking
 *  Findings: none. Throws: RangeError when the design has no such loop.
 *  Valid: pumps of one loop exchanged at a time. Levels, drains and all other loops follow, so flows are those of `assess` with that pump
 *  in it: to 1e-9 for candidates, 1e-6 for what is told of others, but where losses at tees leave several steady splits.
 *  Source: affinity laws (ISO 9906:2012); own search. */
export function rank(design: Design, catalogue: Catalogue, options: RankOptions = {}): Ranking {
  const loop = options.loop ?? Math.max(0, firstReturn(design));
  if (!design.loops[loop]) throw new RangeError(`the design has no loop ${loop}; it has ${design.loops.length}`);
  return withSystem(design, catalogue, (system) => rankIn(system, solveSystem(system), loop, options.pairs !== false));
}

function rankIn(system: PreparedSystem, solved: SolvedSystem, loop: number, pairs: boolean): Ranking {
  const { design, catalogue } = system;
  const prepared = system.loops[loop] as (typeof system.loops)[number];
  const { displayWaterArea, displayFloor } = system.geometry;
  const volumeAt = (displayLevel: number) => displayWaterArea * (displayLevel - displayFloor);
  const circuit = circuitLoadWithout(system, solved, loop);
  // Before the other loops are solved for flows of this one.
  const asked = loopWish(system, prepared, solved);
  const points = new OperatingPoints(system, prepared, solved);
  const isReturn = prepared.purpose === "return";
  const now = asked.aim;
  // A wished turnover asks for a little more where more water stands in the display; what other loops bring counts toward it.
  const perVolume = isReturn ? returnFlowWish(design, 1) : undefined;
  const wishAt = ({ displayLevel, others }: CoupledPoint): Wish => {
    if (!perVolume) return { ...asked, others: 0 };
    const volume = design.wishes.returnFlow ? 1 : volumeAt(displayLevel);
    return {
      low: Math.max(0, perVolume.low * volume - others),
      aim: Math.max(1e-6, perVolume.aim * volume - others),
      high: Math.max(1e-6, perVolume.high * volume - others),
      others,
      from: "wish",
    };
  };
  const aimed = isReturn
    ? points.whereZero((point) => point.flowToDisplay - wishAt(point).aim, now, now)
    : points.at(now);
  const own = wishAt(aimed);
  points.wish = own;

  const tariff = tariffOf(design);
  const currencies = { prices: priceCurrency(catalogue), running: tariff.currency };
  const years = design.wishes.horizon ? toSI(design.wishes.horizon, "time") / secondsPerYear : 5;
  const context: Context = {
    design,
    loop,
    purpose: prepared.purpose,
    voltage: toSI(design.power.voltage, "voltage"),
    drainLimit: isReturn && system.drains.length > 0 ? points.drainLimit : Number.POSITIVE_INFINITY,
    circuit,
  };

  const candidates: Unmarked[] = [];
  const rejections: Rejection[] = [];
  const counts = pairs ? [1, 2] : [1];
  for (const row of catalogue.pumps) {
    const impossible = rejectionsFor(row, context);
    const hydraulics = pumpHydraulics(row);
    const { full } = hydraulics;
    const name = pumpLabel(row);
    for (const count of counts) {
      const label = count === 1 ? name : `2 × ${name}`;
      const pumpIds = count === 1 ? [row.id] : [row.id, row.id];
      if (impossible.length > 0) {
        rejections.push({ pumpIds, label, causes: impossible });
        continue;
      }
      const point = bestPoint(row, hydraulics, count, points, aimed);
      if (!point) {
        const value = pumpHeadAtSpeed(full, 0);
        const limit = points.headAtRest;
        rejections.push({
          pumpIds,
          label,
          causes: [{ code: "too-weak-to-lift", value, limit, dimension: "head" }],
        });
        continue;
      }
      const { pump } = point;
      const speed = pump.speedRatio;
      const each = point.flow / count;
      const watts = count * electricalPower(hydraulics.power, speed, each);
      const price = pumpPrice(row, speed < 1 || row.control === "controllable", catalogue);
      const yearly = annualCost(watts, tariff.price);
      const overYears = costOverHorizon(count * price.total, yearly, years, currencies);
      const atFull = speed < 1 ? points.meet(full, count, point.flow) : point;
      const candidate: Unmarked = {
        pumpIds,
        label,
        arrangement: count === 1 ? "single" : "parallel",
        speed,
        flow: point.flow,
        head: point.head,
        flowToDisplay: point.flowToDisplay,
        watts,
        efficiency: watts > 0 ? hydraulicPower(system.water.density, point.flow, point.head) / watts : 0,
        soundLevel: soundAtSpeed(row, speed) + (count === 2 ? 10 * Math.log10(2) : 0),
        price: count * price.total,
        extras:
          price.controller > 0
            ? [{ label: count === 1 ? price.label : `2 × ${price.label}`, price: count * price.controller }]
            : [],
        annualCost: yearly,
        ...(overYears === undefined ? {} : { horizonCost: overYears }),
        flowMargin: (atFull?.flow ?? point.flow) / aimed.flow - 1,
        placeOnCurve: each / lastFlowAtSpeed(pump),
        score: 0,
        paretoFront: false,
        reasons: [],
      };
      const wish = wishAt(point);
      const judged = reasonsFor(candidate, row, wish, context);
      if (judged.out.length > 0) {
        rejections.push({ pumpIds, label, causes: judged.out });
        continue;
      }
      candidate.reasons = judged.reasons;
      candidate.score = scoreOf(candidate, wish, judged.flaws);
      candidates.push(candidate);
    }
  }
  markParetoFront(candidates);
  // Where nobody asks for a flow, what the pumps give is all that can be told.
  const high = Number.isFinite(own.high) ? own.high : Math.max(aimed.flow, ...candidates.map(({ flow }) => flow));
  return {
    loop,
    aim: aimed.flow,
    wish: { low: own.low, high },
    candidates: candidates.sort((a, b) => a.score - b.score),
    rejections,
    considered: catalogue.pumps.length * counts.length,
    currencies,
  };
}

function firstReturn(design: Design): number {
  return design.loops.findIndex(
    (loop) => loop.purpose === "return" || (loop.purpose === undefined && loop.from.place !== "display"),
  );
}

interface Point extends Met {
  readonly pump: PumpAtSpeed;
}

/** Full speed for a constant pump; for a controllable one the speed that gives the aim, kept within its range. */
function bestPoint(
  row: PumpRow,
  { full, slowest, head }: PumpHydraulics,
  count: number,
  points: OperatingPoints,
  aimed: Met,
): Point | undefined {
  if (row.control === "controllable") {
    const each = aimed.flow / count;
    const lift = aimed.head + points.lossOf(aimed.flow, count);
    const enough = each <= lastFlowAtSpeed(full) && pumpHeadAtSpeed(full, each) >= lift;
    if (enough) {
      const tooMuch = each <= lastFlowAtSpeed(slowest) && pumpHeadAtSpeed(slowest, each) > lift;
      if (tooMuch) return at(points, slowest, count, aimed.flow);
      return pointOf(aimed, lift, setForHead(head, slowest, full, each, lift));
    }
  }
  return at(points, full, count, aimed.flow);
}

function at(points: OperatingPoints, pump: PumpAtSpeed, count: number, near: number): Point | undefined {
  const met = points.meet(pump, count, near);
  return met && pointOf(met, met.head, pump);
}

function pointOf({ flow, flowToDisplay, others, displayLevel }: Met, head: number, pump: PumpAtSpeed): Point {
  return { flow, head, flowToDisplay, others, displayLevel, pump };
}

/** The pump at the speed at which it gives a head at a flow: n^2 h(Q/n) rises with n, so Newton's method inside a bracket cannot
 *  miss. Its slope 2 n h - Q h' leaves out how curves at several speeds are blended, which costs a step or two. */
function setForHead(
  curves: PumpHydraulics["head"],
  slowest: PumpAtSpeed,
  full: PumpAtSpeed,
  flow: number,
  head: number,
): PumpAtSpeed {
  let low = slowest.speedRatio;
  let high = full.speedRatio;
  let pump = full;
  let before = Number.NaN;
  let errorBefore = Number.NaN;
  for (let step = 0; step < 100; step++) {
    const speed = pump.speedRatio;
    const error = pumpHeadAtSpeed(pump, flow) - head;
    if (Math.abs(error) <= 1e-12 * Math.max(1, head) || high - low <= 1e-12) return pump;
    if (error > 0) high = speed;
    else low = speed;
    const secant = (error - errorBefore) / (speed - before);
    const slope = (2 * (error + head) - flow * pumpHeadSlopeAtSpeed(pump, flow)) / speed;
    let next = speed - error / (curves.length > 1 && secant > 0 ? secant : slope);
    if (!(next > low && next < high) || step > 20) next = (low + high) / 2;
    before = speed;
    errorBefore = error;
    pump = pumpAtSpeed(curves, next);
  }
  return pump;
}

function scoreOf(candidate: Unmarked, wish: Wish, flaws: number): number {
  const halfWidth = Math.max(0.05 * wish.aim, (wish.high - wish.low) / 2);
  const miss = Math.abs(candidate.flowToDisplay - wish.aim) / halfWidth;
  const money = candidate.horizonCost ?? candidate.price;
  return money / 100 + (4 * Math.max(0, candidate.soundLevel - 30)) / 10 + 3 * miss + 20 * flaws;
}
