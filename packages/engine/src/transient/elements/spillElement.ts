import { drownedWeirFlow, type OverflowWeir } from "../../overflow/index.ts";
import type { TransientModel } from "../model.ts";
import { type StateLayout, surfaceOf } from "../stateLayout.ts";
import type { FlowElement } from "./flowElement.ts";

/** The rim of a vessel as a crest: water that tops it runs into another vessel (and back, when that stands higher), or onto the
 *  floor, where it is counted. */
export function spillElement(model: TransientModel, layout: StateLayout, vessel: number): FlowElement | undefined {
  const { rim, rimLength, spillsInto } = model.vessels[vessel];
  if (!(rimLength > 0) || rim === Number.POSITIVE_INFINITY) return undefined;
  const edge: OverflowWeir = { length: rimLength, toothOpenShare: 1, toothHeight: 0, crestHeight: Infinity };
  const into = spillsInto ?? layout.spilled + vessel;
  const from = spillsInto === undefined ? [vessel] : [vessel, spillsInto];
  return {
    dependsOn: () => from,
    changes: [vessel, into],
    add(y, out) {
      const below = spillsInto === undefined ? Number.NEGATIVE_INFINITY : surfaceOf(model, y, spillsInto);
      const flow = drownedWeirFlow(edge, rim, surfaceOf(model, y, vessel), below);
      out[vessel] -= flow;
      out[into] += flow;
    },
  };
}
