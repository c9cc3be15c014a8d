import {
  type DrainLine,
  drainFlow,
  pipeFroude,
  rimWeirFlow,
  siphonFlow,
  sweepingFroude,
  throatFlow,
  ventedStackFlow,
} from "../../overflow/index.ts";
import type { TransientDrain, TransientModel } from "../model.ts";
import type { Modes } from "../modes.ts";
import { type StateLayout, surfaceOf } from "../stateLayout.ts";
import type { FlowElement } from "./flowElement.ts";

/** Contraction behind a sharp edge [-]. Source: sharp-edged orifice in common handbooks, from memory. */
const contraction = 0.61;

/** Fillings of the pipe that pass before swept air is down to a third. Source: own judgement, no source: bubbles travel with the water, and
 *  some of them back. */
const airPassages = 2;

/** A drain as it works now: what its inlet takes, what its end lets out [m3/s], and what the inlet could feed against what the full
 *  pipe would take. */
export interface DrainRates {
  taken: number;
  given: number;
  /** Feed of the rim over flow of the full pipe [-]: below 1 a siphon draws air. */
  fed: number;
}

/** A drain with the water it holds. Vented kinds take what their inlet's rating says and let it fall as a film along the wall;
 *  a siphon runs full, or, with air in it, fills as a column that stands on its valve and end;
 *  water that drowns its rim at a Froude number above 1 sweeps the air out (Hills 1983 and Simpson 1978 as handbooks quote them).
 *  A blockage leaves a smaller round opening of the same share of section, and the pipe behind it loses the jet's speed (Borda-Carnot). */
export class DrainElement implements FlowElement {
  readonly changes: readonly number[];
  readonly #dependencies: readonly number[];
  readonly #model: TransientModel;
  readonly #drain: TransientDrain;
  readonly #index: number;
  readonly #modes: Modes;
  readonly #content: number;
  readonly #blocked: number;
  readonly #line: { -readonly [K in keyof DrainLine]: DrainLine[K] };
  readonly #rates: DrainRates = { taken: 0, given: 0, fed: 0 };
  #guess = 0;

  constructor(model: TransientModel, layout: StateLayout, modes: Modes, index: number) {
    const drain = model.drains[index];
    this.#model = model;
    this.#drain = drain;
    this.#index = index;
    this.#modes = modes;
    this.#content = layout.drain + index;
    this.#blocked = layout.blocked + index;
    this.#line = { ...drain.line };
    this.changes = [drain.from, drain.to, this.#content];
    this.#dependencies = [drain.from, drain.to, this.#content, this.#blocked];
  }

  dependsOn(): readonly number[] {
    return this.#dependencies;
  }

  add(y: Float64Array, out: Float64Array): void {
    const { taken, given } = this.rates(y);
    out[this.#drain.from] -= taken;
    out[this.#content] += taken - given;
    out[this.#drain.to] += given;
  }

  /** How it works at a state; the object is used again. */
  rates(y: Float64Array): DrainRates {
    const { kind, line: clear, content, endElevation, from, to } = this.#drain;
    const line = this.#line;
    const rates = this.#rates;
    const { water } = this.#model;
    const level = surfaceOf(this.#model, y, from);
    line.outletElevation = Math.max(endElevation, surfaceOf(this.#model, y, to));
    const open = 1 - y[this.#blocked];
    const held = Math.max(0, y[this.#content]) / content;
    if (open <= 1e-6) rates.taken = 0;
    else if (open < 1) {
      line.inletDiameter = clear.inletDiameter * Math.sqrt(open);
      line.valveLoss = clear.valveLoss + (1 / (contraction * open) - 1) ** 2 - (1 / contraction - 1) ** 2;
    } else {
      line.inletDiameter = clear.inletDiameter;
      line.valveLoss = clear.valveLoss;
    }
    if (kind !== "throttledSiphon") {
      if (open > 1e-6) {
        rates.taken = drainFlow(kind, line, level, water, this.#guess).flow;
        if (rates.taken > 0) this.#guess = rates.taken;
      }
      rates.given = ventedStackFlow(clear.bore, held);
      return rates;
    }
    const head = level - line.inletElevation;
    const feed = open > 1e-6 && head > 0 ? rimWeirFlow(line.inletDiameter, head) : 0;
    if (this.#modes.primed[this.#index]) {
      const full = feed > 0 ? siphonFlow(line, level, water, this.#guess) : 0;
      if (full > 0) this.#guess = full;
      rates.taken = Math.min(feed, full);
      rates.given = rates.taken;
      rates.fed = full > 0 ? feed / full : 0;
    } else {
      const throat = throatFlow(line, head);
      rates.taken = Math.min(feed, throat);
      // The column stands on the end; the blockage at the inlet is not in its way, the valve is.
      line.valveLoss = clear.valveLoss;
      const column = line.outletElevation + Math.max(0, line.inletElevation - line.outletElevation) * held;
      rates.given = siphonFlow(line, column, water);
      rates.fed = 0;
      // Water that drowns the rim faster than air can rise against it takes the air along. None can follow through a drowned rim, so
      // water takes its place.
      const sweeps = feed > throat && pipeFroude(rates.taken, clear.bore) > sweepingFroude;
      if (sweeps) rates.given = Math.min(rates.given, rates.taken * (1 - Math.max(0, 1.05 - held) / airPassages));
    }
    return rates;
  }
}
