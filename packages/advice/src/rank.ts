import type { Catalogue, PumpRow } from "@tidewright/catalogue";
import { type Design, pumpHydraulics } from "@tidewright/design";
import {
  annualCost,
  electricalPower,
  hydraulicPower,
  lastFlowAtSpeed,
  type PumpAtSpeed,
  pumpAtSpeed,
  pumpHeadAtSpeed,
  secondsPerYear,
} from "@tidewright/engine";
import { fromSI, toSI } from "@tidewright/units";
import { type Context, reasonsFor, rejectionsFor } from "./ranking/judge.ts";
import { OperatingPoints } from "./ranking/operatingPoints.ts";
import { markParetoFront } from "./ranking/paretoFront.ts";
import type { Candidate, Ranking, RankOptions, Rejection } from "./ranking.ts";
import { pumpLabel, pumpPrice, soundAtSpeed } from "./states/pumpStates.ts";
import { returnFlowWish } from "./states/wishes.ts";
import { levelOf } from "./system/levels.ts";
import { type PreparedSystem, withSystem } from "./system/prepare.ts";
import { type SolvedSystem, solveSystem } from "./system/solveSystem.ts";

/** Returns every pump of the catalogue, alone and in equal pairs, at its best speed in one loop of the design: candidates best
 *  first with their reasons, rejections with all their causes, and the Pareto front of price, cost over the horizon, power, sound
 *  and flow margin.
 *
 *  The system is solved once without the pump, as a curve of head over flow; each pump then meets that curve. Where a controllable
 *  pump can give the wished flow, its speed follows from one exact head. Every other operating point is found on the tabulated
 *  curve and then settled on exact solutions of the network, to 1e-9 of flow.
 *  score = horizon cost [hundreds] + 4 per dB over 30, /10 + 3 x miss of the aim in units of the wish's half width + 20 for each
 *  flaw; smaller is better.
 *  design Design   catalogue Catalogue   options RankOptions   -> Ranking
 *  Findings: none. Throws: RangeError when the design has no such loop.
 *  Valid: pumps of one loop exchanged at a time; all other loops and the sump's levels stay as they are, which moves flows by some 1e-5
 *  where branches end in sump chambers.
 *  Source: affinity laws (ISO 9906:2012); own search. */
export function rank(design: Design, catalogue: Catalogue, options: RankOptions = {}): Ranking {
  const loop = options.loop ?? Math.max(0, firstReturn(design));
  if (!design.loops[loop]) throw new RangeError(`the design has no loop ${loop}; it has ${design.loops.length}`);
  return withSystem(design, catalogue, (system) => rankIn(system, solveSystem(system), loop, options.pairs !== false));
}

function rankIn(system: PreparedSystem, solved: SolvedSystem, loop: number, pairs: boolean): Ranking {
  const { design, catalogue } = system;
  const prepared = system.loops[loop] as (typeof system.loops)[number];
  const volume = system.geometry.displayWaterArea * (levelOf(solved.levels, "display") - system.geometry.displayFloor);
  const points = new OperatingPoints(system, prepared, solved);
  const wish = prepared.purpose === "return" ? returnFlowWish(design, volume) : undefined;
  const now = points.flowNow > 0 ? points.flowNow : volume / 360;
  const target = wish ?? { low: 0.8 * now, aim: now, high: 1.2 * now };
  // What other loops bring over the weir counts toward the wish.
  const others = wish ? points.otherWeirFlow : 0;
  const own = {
    low: Math.max(0, target.low - others),
    aim: Math.max(1e-6, target.aim - others),
    high: Math.max(1e-6, target.high - others),
  };
  points.wish = own;
  const aimed = points.forDisplayFlow(own.aim, prepared.purpose === "return");

  const tariff = { price: fromSI(toSI(design.power.tariff, "tariff"), design.power.tariff.unit, "tariff") };
  const years = design.wishes.horizon ? toSI(design.wishes.horizon, "time") / secondsPerYear : 5;
  const drainLimit = solved.drains.lines.length === 0 ? Number.POSITIVE_INFINITY : points.drainCapacityAtRim;
  const context: Context = {
    design,
    loop,
    purpose: prepared.purpose,
    wish: own,
    voltage: toSI(design.power.voltage, "voltage"),
    drainLimit: drainLimit - others,
  };

  const candidates: Candidate[] = [];
  const rejections: Rejection[] = [];
  let considered = 0;
  for (const row of catalogue.pumps)
    for (const count of pairs ? [1, 2] : [1]) {
      considered++;
      const impossible = rejectionsFor(row, context);
      const label = count === 1 ? pumpLabel(row) : `2 × ${pumpLabel(row)}`;
      const pumpIds = Array.from({ length: count }, () => row.id);
      if (impossible.length > 0) {
        rejections.push({ pumpIds, label, causes: impossible });
        continue;
      }
      const point = bestPoint(row, count, points, aimed);
      if (!point) {
        rejections.push({
          pumpIds,
          label,
          causes: [{ code: "too-weak-to-lift", value: shutoff(row), limit: points.headAtRest, dimension: "head" }],
        });
        continue;
      }
      const hydraulics = pumpHydraulics(row);
      const each = point.flow / count;
      const watts = count * electricalPower(hydraulics.power, point.speed, each);
      const price = pumpPrice(row, point.speed < 1 || row.control === "controllable", catalogue);
      const yearly = annualCost(watts, tariff.price);
      const full = point.speed < 1 ? points.meet(scaled(row, 1), count, point.flow) : point;
      const candidate: Candidate = {
        pumpIds,
        label,
        arrangement: count === 1 ? "single" : "parallel",
        speed: point.speed,
        flow: point.flow,
        head: point.head,
        flowToDisplay: point.flowToDisplay,
        watts,
        efficiency: watts > 0 ? hydraulicPower(system.water.density, point.flow, point.head) / watts : 0,
        soundLevel: soundAtSpeed(row, point.speed) + (count === 2 ? 10 * Math.log10(2) : 0),
        price: count * price.total,
        extras:
          price.controller > 0
            ? [{ label: count === 1 ? price.label : `2 × ${price.label}`, price: count * price.controller }]
            : [],
        annualCost: yearly,
        horizonCost: count * price.total + years * yearly,
        flowMargin: (full?.flow ?? point.flow) / aimed.flow - 1,
        placeOnCurve: each / lastFlowAtSpeed(scaled(row, point.speed)),
        score: 0,
        paretoFront: false,
        reasons: [],
      };
      const judged = reasonsFor(candidate, row, context);
      if (judged.out.length > 0) rejections.push({ pumpIds, label, causes: judged.out });
      else candidates.push({ ...candidate, reasons: judged.reasons, score: scoreOf(candidate, context, judged.flaws) });
    }
  return {
    loop,
    aim: aimed.flow,
    wish: { low: own.low, high: own.high },
    candidates: markParetoFront(candidates).sort((a, b) => a.score - b.score),
    rejections,
    considered,
  };
}

function firstReturn(design: Design): number {
  return design.loops.findIndex(
    (loop) => loop.purpose === "return" || (loop.purpose === undefined && loop.from.place !== "display"),
  );
}

function scaled(row: PumpRow, speed: number): PumpAtSpeed {
  return pumpAtSpeed(pumpHydraulics(row).head, speed);
}

function shutoff(row: PumpRow): number {
  return pumpHeadAtSpeed(scaled(row, 1), 0);
}

interface Point {
  readonly speed: number;
  readonly flow: number;
  readonly head: number;
  readonly flowToDisplay: number;
}

/** Full speed for a constant pump; for a controllable one the speed that gives the aim, kept within its range. */
function bestPoint(
  row: PumpRow,
  count: number,
  points: OperatingPoints,
  aimed: { flow: number; head: number; flowToDisplay: number },
): Point | undefined {
  if (row.control === "controllable") {
    const full = scaled(row, 1);
    const each = aimed.flow / count;
    const enough = each <= lastFlowAtSpeed(full) && pumpHeadAtSpeed(full, each) >= aimed.head;
    if (enough) {
      const slowest = scaled(row, row.minimumSpeed);
      const tooMuch = each <= lastFlowAtSpeed(slowest) && pumpHeadAtSpeed(slowest, each) > aimed.head;
      if (tooMuch) return at(points, slowest, count, aimed.flow);
      return { speed: speedFor(row, each, aimed.head), ...aimed };
    }
  }
  return at(points, scaled(row, 1), count, aimed.flow);
}

function at(points: OperatingPoints, pump: PumpAtSpeed, count: number, near: number): Point | undefined {
  const met = points.meet(pump, count, near);
  return met && { speed: pump.speedRatio, ...met };
}

/** Speed at which a pump gives a head at a flow: n^2 h(Q/n) rises with n, so Illinois' false position cannot miss. */
function speedFor(row: PumpRow, flow: number, head: number): number {
  let low = row.minimumSpeed;
  let high = 1;
  let atLow = pumpHeadAtSpeed(scaled(row, low), flow) - head;
  let atHigh = pumpHeadAtSpeed(scaled(row, high), flow) - head;
  for (let step = 0; step < 60 && high - low > 1e-12; step++) {
    const middle = atHigh === atLow ? (low + high) / 2 : high - (atHigh * (high - low)) / (atHigh - atLow);
    const error = pumpHeadAtSpeed(scaled(row, middle), flow) - head;
    if (Math.abs(error) <= 1e-12 * Math.max(1, head)) return middle;
    if (error > 0) {
      high = middle;
      atHigh = error;
      atLow /= 2;
    } else {
      low = middle;
      atLow = error;
      atHigh /= 2;
    }
  }
  return (low + high) / 2;
}

function scoreOf(candidate: Candidate, context: Context, flaws: number): number {
  const { wish } = context;
  const halfWidth = Math.max(0.05 * wish.aim, (wish.high - wish.low) / 2);
  const miss = Math.abs(candidate.flowToDisplay - wish.aim) / halfWidth;
  return candidate.horizonCost / 100 + (4 * Math.max(0, candidate.soundLevel - 30)) / 10 + 3 * miss + 20 * flaws;
}
