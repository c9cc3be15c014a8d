import type { Catalogue } from "@tidewright/catalogue";
import {
  type Design,
  type DrainModel,
  drainModel,
  type Geometry,
  geometryOf,
  type LoopModel,
  loopModel,
} from "@tidewright/design";
import {
  type CompiledNetwork,
  compileNetwork,
  type FittingMethod,
  type NetworkState,
  newNetworkState,
  seaWater,
  type Water,
} from "@tidewright/engine";
import { toSI } from "@tidewright/units";

/** One loop of the design with its network compiled and work space to solve it in. */
export interface PreparedLoop {
  readonly index: number;
  readonly loop: LoopModel;
  readonly purpose: "return" | "closed" | "side";
  readonly net: CompiledNetwork;
  readonly state: NetworkState;
}

/** A design ready to be solved: everything that does not depend on levels and flows. */
export interface PreparedSystem {
  readonly design: Design;
  readonly catalogue: Catalogue;
  readonly method: FittingMethod;
  readonly water: Water;
  readonly geometry: Geometry;
  readonly loops: readonly PreparedLoop[];
  readonly drains: readonly DrainModel[];
}

/** Returns a design in SI with its networks compiled.
 *  design Design accepted by `checkDesign` and `checkReferences`   catalogue Catalogue   -> PreparedSystem
 *  Source: design and engine packages. */
export function prepareSystem(design: Design, catalogue: Catalogue): PreparedSystem {
  const method = design.fittingMethod ?? "crane";
  const water = seaWater(toSI(design.water.salinity, "salinity"), toSI(design.water.temperature, "temperature"));
  const geometry = geometryOf(design);
  const loops = design.loops.map((loop, index): PreparedLoop => {
    const model = loopModel(loop, index, catalogue, water, method, geometry.sumpFloor);
    const net = compileNetwork(model.model);
    return { index, loop: model, purpose: loop.purpose ?? purposeOf(model), net, state: newNetworkState(net) };
  });
  const drains = design.drains.map((drain, i) => drainModel(drain, i, catalogue, method, geometry.displayFloor));
  return { design, catalogue, method, water, geometry, loops, drains };
}

/** Where nothing is said: from the sump to the display is a return, round the display a closed loop, all else a side loop. */
function purposeOf(model: LoopModel): PreparedLoop["purpose"] {
  const toDisplay = model.outlets.some((outlet) => outlet.place === "display");
  if (!toDisplay) return "side";
  return model.sourcePlace === "display" ? "closed" : "return";
}
