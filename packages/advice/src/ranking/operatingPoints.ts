import {
  emergencyCapacity,
  evaluateMonotoneCubic,
  type MonotoneCubic,
  monotoneCubic,
  type PumpAtSpeed,
  pumpHeadAtSpeed,
  pumpHeadSlopeAtSpeed,
  slopeOfMonotoneCubic,
} from "@tidewright/engine";
import { otherFlowToDisplay, pumpFlowOf } from "../system/levels.ts";
import type { PreparedLoop, PreparedSystem } from "../system/prepare.ts";
import type { SolvedSystem } from "../system/solveSystem.ts";
import { SystemCurve } from "../system/systemCurve.ts";
import { CertifiedCurve } from "./certifiedCurve.ts";

interface Met {
  readonly flow: number;
  readonly head: number;
  readonly flowToDisplay: number;
}

const tableSize = 40;

/** Where pumps meet one loop's system curve. The curve is tabulated once from exact solutions to find points near by; each
 *  point is then settled on exact solutions, or on pieces certified against them, so the table costs no accuracy. */
export class OperatingPoints {
  readonly #curve: SystemCurve;
  readonly #certified: CertifiedCurve;
  #table: MonotoneCubic | undefined;
  #end: number;
  readonly headAtRest: number;
  readonly flowNow: number;
  readonly otherWeirFlow: number;
  readonly drainCapacityAtRim: number;
  /** Flows that could make a pump a candidate [m3/s]: points there, and a little beyond, are settled to 1e-9, others to 1e-6. */
  wish = { low: 0, high: Number.POSITIVE_INFINITY };

  constructor(system: PreparedSystem, prepared: PreparedLoop, solved: SolvedSystem) {
    const curve = new SystemCurve(system, prepared, solved);
    this.#curve = curve;
    this.#certified = new CertifiedCurve((flow) => curve.at(flow));
    this.flowNow = pumpFlowOf(prepared);
    this.otherWeirFlow = otherFlowToDisplay(system.loops, prepared);
    this.headAtRest = this.#curve.at(1e-9).head;
    this.#end = Math.max(2 * this.flowNow, 1e-4);
    this.drainCapacityAtRim = solved.drains.lines.reduce(
      (sum, line) => sum + emergencyCapacity(line, system.geometry.boxRim, system.water),
      0,
    );
  }

  /** Heads at flows spaced by squares, which suits a curve that rises with the square. */
  #tabulate(): MonotoneCubic {
    const flows = new Float64Array(tableSize);
    const heads = new Float64Array(tableSize);
    for (let i = 0; i < tableSize; i++) {
      const share = i / (tableSize - 1);
      flows[i] = 1e-9 + this.#end * share * (0.3 + 0.7 * share);
      heads[i] = this.#curve.at(flows[i] as number).head;
    }
    return monotoneCubic(flows, heads);
  }

  /** Pump flow and head at which a flow reaches the display (or, where `display` is false, passes the pumps). What reaches the
   *  display rises with what the pumps give, from below zero where open branches draw it back, so a bracket cannot miss. */
  forDisplayFlow(target: number, display: boolean): Met {
    if (!display) return { flow: target, ...this.#curve.at(target) };
    let low = 0;
    let atLow = -target;
    let high = Math.max(target, this.flowNow);
    let point = this.#curve.at(high);
    while (point.flowToDisplay < target && high < 10) {
      low = high;
      atLow = point.flowToDisplay - target;
      high *= 1.5;
      point = this.#curve.at(high);
    }
    let atHigh = point.flowToDisplay - target;
    let flow = high;
    for (let step = 0; step < 80 && Math.abs(point.flowToDisplay - target) > 1e-9 * target; step++) {
      flow = step % 3 === 2 ? (low + high) / 2 : high - (atHigh * (high - low)) / (atHigh - atLow);
      point = this.#curve.at(flow);
      const error = point.flowToDisplay - target;
      if (error > 0) {
        high = flow;
        atHigh = error;
      } else {
        low = flow;
        atLow = error;
      }
    }
    return { flow, ...point };
  }

  /** Where `count` equal pumps in parallel meet the system, or undefined where they cannot lift it. */
  meet(pump: PumpAtSpeed, count: number, near: number): Met | undefined {
    if (pumpHeadAtSpeed(pump, 0) <= this.headAtRest) return undefined;
    const table = this.#tableFor(pump, count);
    const rough = this.#settle(table, pump, count, tabulated(table, pump, count, Math.min(near, this.#end / 2)), 1e-6);
    return this.#mayServe(rough) ? this.#settle(table, pump, count, rough.flow, 1e-9) : rough;
  }

  /** A table that is long enough for a pump, and for what is wished. */
  #tableFor(pump: PumpAtSpeed, count: number): MonotoneCubic {
    const falls = (head: number) => pumpHeadAtSpeed(pump, this.#end / count) <= head;
    if (this.#table) {
      const { x, y } = this.#table;
      if (this.#end >= 10 || falls(y[x.length - 1] as number)) return this.#table;
      this.#end *= 2;
    } else if (Number.isFinite(this.wish.high)) this.#end = Math.max(this.#end, 3 * this.wish.high);
    while (this.#end < 10 && !falls(this.#curve.at(this.#end).head)) this.#end *= 2;
    this.#table = this.#tabulate();
    return this.#table;
  }

  #mayServe({ flow, flowToDisplay }: Met): boolean {
    const low = 0.99 * this.wish.low;
    const high = 1.01 * this.wish.high;
    return (flow > low && flow < high) || (flowToDisplay > low && flowToDisplay < high);
  }

  /** Newton on exact solutions, or on pieces certified against them to a relative error; the system's slope comes from the table, which only sets the pace. */
  #settle(table: MonotoneCubic, pump: PumpAtSpeed, count: number, guess: number, allowed: number): Met {
    let flow = guess;
    let point = this.#certified.at(flow, allowed);
    for (let step = 0; step < 12; step++) {
      const error = pumpHeadAtSpeed(pump, flow / count) - point.head;
      const slope = slopeOfMonotoneCubic(table, flow) - pumpHeadSlopeAtSpeed(pump, flow / count) / count;
      const change = error / Math.max(slope, 1e-6);
      if (Math.abs(change) <= Math.max(1e-9, 0.01 * allowed) * flow) break;
      flow = Math.max(flow / 2, flow + change);
      point = this.#certified.at(flow, allowed);
    }
    return { flow, head: point.head, flowToDisplay: point.flowToDisplay };
  }
}

/** Where a pump meets the table, nearly: Newton's method inside a bracket. */
function tabulated(table: MonotoneCubic, pump: PumpAtSpeed, count: number, near: number): number {
  let low = 0;
  let high = table.x[table.x.length - 1] as number;
  let flow = near;
  for (let step = 0; step < 40; step++) {
    const gap = pumpHeadAtSpeed(pump, flow / count) - evaluateMonotoneCubic(table, flow);
    if (gap > 0) low = flow;
    else high = flow;
    let next = flow + gap / (slopeOfMonotoneCubic(table, flow) - pumpHeadSlopeAtSpeed(pump, flow / count) / count);
    if (!(next > low && next < high)) next = (low + high) / 2;
    const moved = Math.abs(next - flow);
    flow = next;
    // The table itself is no better than this.
    if (moved <= 1e-4 * flow) break;
  }
  return flow;
}
