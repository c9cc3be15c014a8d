import { drownedWeirFlow } from "../../overflow/index.ts";
import type { TransientModel, TransientWeir } from "../model.ts";
import { surfaceOf } from "../stateLayout.ts";
import type { FlowElement } from "./flowElement.ts";

/** Flow over a crest between two vessels [m3/s], positive from -> to. Source: engine `drownedWeirFlow`. */
export function weirFlow(model: TransientModel, weir: TransientWeir, y: Float64Array): number {
  return drownedWeirFlow(weir.weir, weir.crest, surfaceOf(model, y, weir.from), surfaceOf(model, y, weir.to));
}

/** A crest between two vessels. */
export function weirElement(model: TransientModel, weir: TransientWeir): FlowElement {
  const both = [weir.from, weir.to];
  return {
    dependsOn: () => both,
    changes: both,
    add(y, out) {
      const flow = weirFlow(model, weir, y);
      out[weir.from] -= flow;
      out[weir.to] += flow;
    },
  };
}
