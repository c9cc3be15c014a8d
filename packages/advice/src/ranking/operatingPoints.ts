import {
  evaluateMonotoneCubic,
  type MonotoneCubic,
  monotoneCubic,
  type PumpAtSpeed,
  pumpHeadAtSpeed,
  pumpHeadSlopeAtSpeed,
  slopeOfMonotoneCubic,
} from "@tidewright/engine";
import { pumpFlowOf } from "../system/levels.ts";
import type { PreparedLoop, PreparedSystem } from "../system/prepare.ts";
import type { SolvedSystem } from "../system/solveSystem.ts";
import { type BranchLoss, branchLoss, lossAt } from "./branchLoss.ts";
import { CertifiedCurve } from "./certifiedCurve.ts";
import { CoupledCurve, type CoupledPoint } from "./coupledCurve.ts";

/** Where pumps meet the system. */
export interface Met extends CoupledPoint {
  /** Flow through the pumps together [m3/s]; their head, `head`, includes what their own check valves take. */
  readonly flow: number;
}

const tableSize = 40;
const mostSteps = 40;

/** Where pumps meet one loop's system curve. The curve is tabulated once from exact solutions to find points near by; each
 *  point is then settled on exact solutions, or on pieces certified against them, so the table costs no accuracy. */
export class OperatingPoints {
  readonly #curve: CoupledCurve;
  readonly #certified: CertifiedCurve;
  readonly #loss: BranchLoss;
  #table: MonotoneCubic | undefined;
  #end: number;
  readonly headAtRest: number;
  readonly flowNow: number;
  /** Flows that could make a pump a candidate [m3/s]: points there, and a little beyond, are settled to 1e-9, others to 1e-7. */
  wish = { low: 0, high: Number.POSITIVE_INFINITY };

  constructor(system: PreparedSystem, prepared: PreparedLoop, solved: SolvedSystem) {
    this.flowNow = pumpFlowOf(prepared);
    const curve = new CoupledCurve(system, prepared, solved);
    this.#curve = curve;
    this.#certified = new CertifiedCurve((flow) => curve.at(flow));
    this.#loss = branchLoss(prepared, system.water.kinematicViscosity);
    this.headAtRest = this.#curve.at(1e-9).head;
    this.#end = Math.max(2 * this.flowNow, 1e-4);
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

  /** The system at a flow through the pumps. */
  at(flow: number): Met {
    const { head, flowToDisplay, others, displayLevel } = this.#curve.at(flow);
    return { flow, head, flowToDisplay, others, displayLevel };
  }

  /** The system where something that rises with the pumps' flow is zero, searched from a flow near by. It may begin below zero, where open
   *  branches draw water back, so a bracket cannot miss. `scale` is what it is measured against. */
  whereZero(missing: (point: Met) => number, near: number, scale: number): Met {
    let low = 0;
    let atLow = -scale;
    let high = near;
    let point = this.at(high);
    let error = missing(point);
    while (error < 0 && high < 10) {
      low = high;
      atLow = error;
      high *= 1.5;
      point = this.at(high);
      error = missing(point);
    }
    let atHigh = error;
    for (let step = 0; step < 80 && Math.abs(error) > 1e-9 * scale; step++) {
      const flow = step % 3 === 2 ? (low + high) / 2 : high - (atHigh * (high - low)) / (atHigh - atLow);
      point = this.at(flow);
      error = missing(point);
      if (error > 0) {
        high = flow;
        atHigh = error;
      } else {
        low = flow;
        atLow = error;
      }
    }
    return point;
  }

  /** What goes over the weir when the box is about to run over, found by halving; infinite where it never does. */
  get drainLimit(): number {
    if (!this.#curve.spillsAt(10)) return Number.POSITIVE_INFINITY;
    let low = 0;
    let high = Math.max(this.flowNow, 1e-4);
    while (!this.#curve.spillsAt(high)) {
      low = high;
      high *= 2;
    }
    while (high - low > 4e-7 * high) {
      const middle = (low + high) / 2;
      if (this.#curve.spillsAt(middle)) high = middle;
      else low = middle;
    }
    const { flowToDisplay, others } = this.#curve.at(low);
    return flowToDisplay + others;
  }

  /** What each of `count` pumps' own check valve takes at their flow together [m]. */
  lossOf(flow: number, count: number): number {
    return lossAt(this.#loss, flow / count);
  }

  /** Where `count` equal pumps in parallel meet the system, or undefined where they cannot lift it. */
  meet(pump: PumpAtSpeed, count: number, near: number): Met | undefined {
    if (pumpHeadAtSpeed(pump, 0) <= this.headAtRest) return undefined;
    const table = this.#tableFor(pump, count);
    const guess = this.#tabulated(table, pump, count, Math.min(near, this.#end / 2));
    const rough = this.#settle(table, pump, count, guess, 1e-7);
    return this.#mayServe(rough) ? this.#settle(table, pump, count, rough.flow, 1e-9) : rough;
  }

  /** Head that pumps have left for the system at their flow together, and how that changes with it. */
  #gives(pump: PumpAtSpeed, flow: number, count: number): number {
    return pumpHeadAtSpeed(pump, flow / count) - this.lossOf(flow, count);
  }

  #falls(pump: PumpAtSpeed, flow: number, count: number): number {
    const { linear, quadratic } = this.#loss;
    return (pumpHeadSlopeAtSpeed(pump, flow / count) - linear - (2 * quadratic * flow) / count) / count;
  }

  /** A table that is long enough for a pump, and for what is wished. */
  #tableFor(pump: PumpAtSpeed, count: number): MonotoneCubic {
    const falls = (head: number) => this.#gives(pump, this.#end, count) <= head;
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
    const low = 0.98 * this.wish.low;
    const high = 1.02 * this.wish.high;
    return (flow > low && flow < high) || (flowToDisplay > low && flowToDisplay < high);
  }

  /** Newton on exact solutions, or on pieces certified against them to a relative error. The table's slope sets the first step; after
   *  it the last two points tell the slope, which in the transition from laminar flow the table does not. */
  #settle(table: MonotoneCubic, pump: PumpAtSpeed, count: number, guess: number, allowed: number): Met {
    let flow = guess;
    let point = this.#certified.at(flow, allowed);
    let low = 0;
    let high = Number.POSITIVE_INFINITY;
    let flowBefore = Number.NaN;
    let errorBefore = Number.NaN;
    for (let step = 0; step < mostSteps; step++) {
      const error = this.#gives(pump, flow, count) - point.head;
      if (error > 0) low = Math.max(low, flow);
      else high = Math.min(high, flow);
      const tabulated = Math.max(slopeOfMonotoneCubic(table, flow) - this.#falls(pump, flow, count), 1e-6);
      const secant = (errorBefore - error) / (flow - flowBefore);
      const change = error / (secant > 0.1 * tabulated && secant < 10 * tabulated ? secant : tabulated);
      if (Math.abs(change) <= Math.max(1e-9, 0.01 * allowed) * flow) break;
      flowBefore = flow;
      errorBefore = error;
      flow += change;
      if (!(flow > low && flow < high)) flow = high < Number.POSITIVE_INFINITY ? (low + high) / 2 : 2 * low;
      point = this.#certified.at(flow, allowed);
    }
    const { head, flowToDisplay, others, displayLevel } = point;
    return { flow, head: head + this.lossOf(flow, count), flowToDisplay, others, displayLevel };
  }

  /** Where a pump meets the table, nearly: Newton's method inside a bracket. */
  #tabulated(table: MonotoneCubic, pump: PumpAtSpeed, count: number, near: number): number {
    let low = 0;
    let high = table.x[table.x.length - 1] as number;
    let flow = near;
    for (let step = 0; step < 40; step++) {
      const gap = this.#gives(pump, flow, count) - evaluateMonotoneCubic(table, flow);
      if (gap > 0) low = flow;
      else high = flow;
      let next = flow + gap / (slopeOfMonotoneCubic(table, flow) - this.#falls(pump, flow, count));
      if (!(next > low && next < high)) next = (low + high) / 2;
      const moved = Math.abs(next - flow);
      flow = next;
      // The table itself is no better than this.
      if (moved <= 1e-4 * flow) break;
    }
    return flow;
  }
}
