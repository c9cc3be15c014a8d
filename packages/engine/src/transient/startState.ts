import { ventedStackFlow } from "../overflow/index.ts";
import type { HybridSystem } from "./hybridSystem.ts";

/** Returns the state at the start: vessels at their levels, lines full, pumps at speed, drains holding what they carry.
 *  system HybridSystem   -> state vector
 *  Source: the model; a vented pipe holds the share at which its wall film carries its flow (Wyly and Eaton 1961). */
export function startState(system: HybridSystem): Float64Array {
  const { model, layout } = system;
  const y = new Float64Array(layout.size);
  model.vessels.forEach((vessel, i) => {
    y[i] = Math.max(0, vessel.startLevel - vessel.floor) * vessel.area;
  });
  model.circuits.forEach((circuit, i) => {
    y[layout.circuit + i] = circuit.content;
    circuit.pumps.forEach((pump, p) => {
      y[layout.speed[i] + p] = pump.speed;
    });
  });
  model.drains.forEach((drain, i) => {
    const at = layout.drain + i;
    if (drain.primed) {
      y[at] = drain.content;
      return;
    }
    const element = system.drains[i];
    const { taken } = element.rates(y);
    if (drain.kind !== "throttledSiphon") {
      y[at] = drain.content * (taken / ventedStackFlow(drain.line.bore, 1)) ** 0.6;
      return;
    }
    // The column at which the end lets out what the rim takes in.
    let low = 0;
    let high = drain.content;
    for (let k = 0; k < 50; k++) {
      y[at] = 0.5 * (low + high);
      if (element.rates(y).given < taken) low = y[at];
      else high = y[at];
    }
  });
  return y;
}
