import type { TransientModel, TransientTopOff } from "../model.ts";
import type { Modes } from "../modes.ts";
import type { StateLayout } from "../stateLayout.ts";
import type { FlowElement } from "./flowElement.ts";

/** Below this depth [m] a vessel gives up less and less to the air and to the top-off: nothing can fall below zero. */
const filmDepth = 1e-3;

/** Share of a rate that a vessel can still feed [-]. */
function shareLeft(model: TransientModel, y: Float64Array, vessel: number): number {
  const depth = y[vessel] / model.vessels[vessel].area;
  return depth >= filmDepth ? 1 : depth <= 0 ? 0 : depth / filmDepth;
}

/** Fresh water lost to the air by one vessel. */
export function evaporationElement(
  model: TransientModel,
  layout: StateLayout,
  entry: TransientModel["evaporation"][number],
): FlowElement {
  const from = [entry.vessel];
  return {
    dependsOn: () => from,
    changes: [entry.vessel, layout.evaporated],
    add(y, out) {
      const flow = entry.flow * shareLeft(model, y, entry.vessel);
      out[entry.vessel] -= flow;
      out[layout.evaporated] += flow;
    },
  };
}

/** Fresh water let in from the reservoir. */
export function topOffElement(model: TransientModel, topOff: TransientTopOff, modes: Modes): FlowElement {
  const from = [topOff.reservoir];
  return {
    dependsOn: () => from,
    changes: [topOff.reservoir, topOff.to],
    add(y, out) {
      const runs = modes.topOff === "open" || (modes.topOff === "auto" && modes.topOffRuns);
      if (!runs) return;
      const flow = topOff.flow * shareLeft(model, y, topOff.reservoir);
      out[topOff.reservoir] -= flow;
      out[topOff.to] += flow;
    },
  };
}

/** Pump speeds that follow their targets: dn/dt = (target - n) / time constant. */
export function speedElement(model: TransientModel, layout: StateLayout, modes: Modes, circuit: number): FlowElement {
  const first = layout.speed[circuit];
  const own = model.circuits[circuit].pumps.map((_, i) => first + i);
  return {
    dependsOn: () => own,
    changes: own,
    add(y, out) {
      const { target, dry } = modes.circuits[circuit];
      own.forEach((index, i) => {
        out[index] += ((dry ? 0 : target[i]) - y[index]) / model.pumpTimeConstant;
      });
    },
  };
}

/** Blockages that grow at their rates. */
export function blockageElement(model: TransientModel, layout: StateLayout, modes: Modes): FlowElement {
  const own = model.drains.map((_, i) => layout.blocked + i);
  return {
    dependsOn: () => [],
    changes: own,
    add(_y, out) {
      own.forEach((index, i) => {
        out[index] += modes.blockRate[i];
      });
    },
  };
}
