import {
  emergencyCapacity,
  evaluateMonotoneCubic,
  type MonotoneCubic,
  monotoneCubic,
  type PumpAtSpeed,
  pumpHeadAtSpeed,
  pumpHeadSlopeAtSpeed,
} from "@tidewright/engine";
import { netFlowTo, pumpFlowOf } from "../system/levels.ts";
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
  #table: MonotoneCubic;
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
    this.otherWeirFlow = solved.weirFlow - netFlowTo(prepared, "display");
    this.headAtRest = this.#curve.at(1e-9).head;
    this.#end = Math.max(2 * this.flowNow, 1e-4);
    this.#table = this.#tabulate();
    this.drainCapacityAtRim = solved.drains.lines.reduce(
      (sum, line) => sum + emergencyCapacity(line, system.geometry.boxRim, system.water),
      0,
    );
  }

  /** Heads at flows spaced by squares, which suits a curve that rises with the square. */
  #tabulate(): MonotoneCubic {
    const flows = Array.from(
      { length: tableSize },
      (_, i) => 1e-9 + this.#end * ((i / (tableSize - 1)) * (0.3 + (0.7 * i) / (tableSize - 1))),
    );
    return monotoneCubic(
      flows,
      flows.map((flow) => this.#curve.at(flow).head),
    );
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
    const gap = (flow: number) => pumpHeadAtSpeed(pump, flow / count) - evaluateMonotoneCubic(this.#table, flow);
    while (gap(this.#end) > 0 && this.#end < 10) {
      this.#end *= 2;
      this.#table = this.#tabulate();
    }
    let low = 0;
    let high = this.#end;
    let flow = Math.min(near, high / 2);
    for (let step = 0; step < 40 && high - low > 1e-7 * high; step++) {
      if (gap(flow) > 0) low = flow;
      else high = flow;
      flow = (low + high) / 2;
    }
    const rough = this.#settle(pump, count, flow, 1e-6);
    return this.#mayServe(rough) ? this.#settle(pump, count, rough.flow, 1e-9) : rough;
  }

  #mayServe({ flow, flowToDisplay }: Met): boolean {
    const { low, high } = this.wish;
    const within = (value: number) => value > 0.99 * low && value < 1.01 * high;
    return within(flow) || within(flowToDisplay);
  }

  /** Newton on exact solutions, or on pieces certified against them to a relative error; the system's slope comes from the table, which only sets the pace. */
  #settle(pump: PumpAtSpeed, count: number, guess: number, allowed: number): Met {
    let flow = guess;
    let point = this.#certified.at(flow, allowed);
    for (let step = 0; step < 12; step++) {
      const error = pumpHeadAtSpeed(pump, flow / count) - point.head;
      const width = 1e-4 * flow;
      const systemSlope =
        (evaluateMonotoneCubic(this.#table, flow + width) - evaluateMonotoneCubic(this.#table, flow - width)) /
        (2 * width);
      const change = error / Math.max(systemSlope - pumpHeadSlopeAtSpeed(pump, flow / count) / count, 1e-6);
      if (Math.abs(change) <= 1e-9 * flow) break;
      flow = Math.max(flow / 2, flow + change);
      point = this.#certified.at(flow, allowed);
    }
    return { flow, ...point };
  }
}
