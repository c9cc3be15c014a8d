import { weirFlow } from "./elements/weirElement.ts";
import type { HybridSystem } from "./hybridSystem.ts";
import type { OdeStep } from "./ode/index.ts";
import { surfaceOf } from "./stateLayout.ts";
import type { LevelRange, TransientRecord } from "./transientRun.ts";

/** Straight lines between recorded moments leave the true level by less than this [m]. */
const recordPrecision = 2e-4;

/** Keeps extremes of every level, and, where wanted, moments close enough together to draw the run from. */
export interface Recorder {
  /** Takes in a step just accepted. */
  step(step: OdeStep): void;
  /** Takes in a state as it stands: at the start, before and after a sudden change. */
  moment(t: number, y: Float64Array): void;
  ranges(): LevelRange[];
  drainPeak(): number[];
  record(): TransientRecord | undefined;
}

/** Returns a recorder. system HybridSystem   full: moments too, not just extremes. Source: own construction. */
export function recorder(system: HybridSystem, full: boolean): Recorder {
  const { model, layout } = system;
  const vessels = model.vessels.length;
  const ranges = model.vessels.map(() => ({
    lowest: Number.POSITIVE_INFINITY,
    lowestAt: 0,
    highest: Number.NEGATIVE_INFINITY,
    highestAt: 0,
  }));
  const peaks = new Float64Array(model.drains.length);
  const lists = (count: number): number[][] => Array.from({ length: count }, () => []);
  const kept = {
    times: [] as number[],
    levels: lists(vessels),
    weirFlows: lists(model.weirs.length),
    drainIntakes: lists(model.drains.length),
    drainFlows: lists(model.drains.length),
    outletFlows: model.circuits.map((circuit) => lists(circuit.outlets.length)),
    drainFill: lists(model.drains.length),
    circuitFill: lists(model.circuits.length),
  };
  const samples = Array.from({ length: 5 }, () => new Float64Array(layout.size));

  const look = (t: number, y: Float64Array): void => {
    for (let i = 0; i < vessels; i++) {
      const level = surfaceOf(model, y, i);
      const range = ranges[i];
      if (level < range.lowest) {
        range.lowest = level;
        range.lowestAt = t;
      }
      if (level > range.highest) {
        range.highest = level;
        range.highestAt = t;
      }
    }
  };
  const peak = (y: Float64Array): void => {
    for (let i = 0; i < peaks.length; i++) peaks[i] = Math.max(peaks[i], system.drains[i].rates(y).taken);
  };
  const keep = (t: number, y: Float64Array): void => {
    kept.times.push(t);
    for (let i = 0; i < vessels; i++) kept.levels[i].push(surfaceOf(model, y, i));
    model.weirs.forEach((weir, i) => {
      kept.weirFlows[i].push(weirFlow(model, weir, y));
    });
    system.drains.forEach((drain, i) => {
      const { taken, given } = drain.rates(y);
      kept.drainIntakes[i].push(taken);
      kept.drainFlows[i].push(given);
      kept.drainFill[i].push(Math.max(0, y[layout.drain + i]) / model.drains[i].content);
    });
    system.circuits.forEach((circuit, i) => {
      circuit.solve(y);
      for (let o = 0; o < circuit.outflow.length; o++) kept.outletFlows[i][o].push(circuit.outflow[o]);
      kept.circuitFill[i].push(Math.max(0, y[layout.circuit + i]) / model.circuits[i].content);
    });
  };
  return {
    moment(t, y) {
      look(t, y);
      peak(y);
      if (full) keep(t, y);
    },
    step(step) {
      const length = step.t1 - step.t0;
      for (let k = 0; k <= 4; k++) step.at(step.t0 + (k / 4) * length, samples[k]);
      for (let k = 1; k <= 4; k++) look(step.t0 + (k / 4) * length, samples[k]);
      peak(samples[4]);
      if (!full) return;
      // Halves and quarters only where a chord would leave the curve.
      const bends = (a: number, m: number, b: number): boolean => {
        for (let i = 0; i < vessels; i++) {
          const sag = samples[m][i] - 0.5 * (samples[a][i] + samples[b][i]);
          if (Math.abs(sag) > recordPrecision * model.vessels[i].area) return true;
        }
        return false;
      };
      const wide = bends(0, 2, 4);
      if (wide || bends(0, 1, 2)) keep(step.t0 + 0.25 * length, samples[1]);
      if (wide) keep(step.t0 + 0.5 * length, samples[2]);
      if (wide || bends(2, 3, 4)) keep(step.t0 + 0.75 * length, samples[3]);
      keep(step.t1, samples[4]);
    },
    drainPeak: () => [...peaks],
    ranges: () => ranges.map((range) => ({ ...range })),
    record: () => (full ? kept : undefined),
  };
}
