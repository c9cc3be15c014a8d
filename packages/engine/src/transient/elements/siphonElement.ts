import { hangOnSiphonFlow } from "../../overflow/index.ts";
import type { TransientModel, TransientSiphon } from "../model.ts";
import type { Modes } from "../modes.ts";
import { surfaceOf } from "../stateLayout.ts";
import type { FlowElement } from "./flowElement.ts";

/** The tubes of a hang-on overflow between its two boxes. Source: engine `hangOnSiphonFlow`. */
export function siphonElement(
  model: TransientModel,
  siphon: TransientSiphon,
  modes: Modes,
  index: number,
): FlowElement {
  const both = [siphon.from, siphon.to];
  return {
    dependsOn: () => both,
    changes: both,
    add(y, out) {
      if (!modes.tubesFull[index]) return;
      const inside = surfaceOf(model, y, siphon.from);
      const outside = surfaceOf(model, y, siphon.to);
      const flow = hangOnSiphonFlow(siphon.tubes, inside, outside, model.water);
      out[siphon.from] -= flow;
      out[siphon.to] += flow;
    },
  };
}
