import type { Catalogue } from "@tidewright/catalogue";
import {
  type Design,
  type DrainModel,
  drainModel,
  type Geometry,
  geometryOf,
  type HangOnModel,
  hangOnModel,
  type LoopModel,
  loopModel,
} from "@tidewright/design";
import { type FittingMethod, seaWater, type Water } from "@tidewright/engine";
import { toSI } from "@tidewright/units";
import { NetworkLoan, type WorkNetwork } from "./networkLoan.ts";

/** One loop of the design with its network compiled and work space to solve it in. */
export interface PreparedLoop extends WorkNetwork {
  readonly index: number;
  readonly loop: LoopModel;
  readonly purpose: "return" | "closed" | "side";
  /** Where its source and its outlets are in the network, in the order of `loop.outlets`. */
  readonly sourceNode: number;
  readonly outletNodes: readonly number[];
  readonly outletLinks: readonly number[];
}

/** A design ready to be solved: everything that does not depend on levels and flows. */
export interface PreparedSystem {
  readonly design: Design;
  readonly catalogue: Catalogue;
  readonly method: FittingMethod;
  readonly water: Water;
  readonly geometry: Geometry;
  /** Siphon of an overflow that hangs on the glass; undefined for every other. */
  readonly hangOn: HangOnModel | undefined;
  /** Place id of each sump chamber, in the order of the chambers. */
  readonly chamberPlaces: readonly string[];
  readonly loops: readonly PreparedLoop[];
  readonly drains: readonly DrainModel[];
  /** Where further networks of this design come from. */
  readonly networks: NetworkLoan;
}

/** Prepares a design, hands it to `use` and returns what that returns. The system's networks are lent for so long only: nothing of
 *  them may be kept.
 *  design Design accepted by `checkDesign` and `checkReferences`   catalogue Catalogue   use of the prepared system */
export function withSystem<Result>(
  design: Design,
  catalogue: Catalogue,
  use: (system: PreparedSystem) => Result,
): Result {
  const networks = new NetworkLoan();
  try {
    return use(prepareSystem(design, catalogue, networks));
  } finally {
    networks.giveBack();
  }
}

/** Returns a design in SI with its networks compiled.
 *  design Design accepted by `checkDesign` and `checkReferences`   catalogue Catalogue   networks that it may use, its own for good where
 *  nothing is said   -> PreparedSystem
 *  Source: design and engine packages. */
export function prepareSystem(design: Design, catalogue: Catalogue, networks = new NetworkLoan()): PreparedSystem {
  const method = design.fittingMethod ?? "crane";
  const water = seaWater(toSI(design.water.salinity, "salinity"), toSI(design.water.temperature, "temperature"));
  const geometry = geometryOf(design);
  const loops = design.loops.map((said, index): PreparedLoop => {
    const loop = loopModel(said, index, catalogue, water, method, geometry.sumpFloor);
    const { net, state, start } = networks.take(loop.model);
    return {
      index,
      loop,
      purpose: said.purpose ?? purposeOf(loop),
      net,
      state,
      start,
      sourceNode: net.nodeIndex.get("source") as number,
      outletNodes: loop.outlets.map((outlet) => net.nodeIndex.get(outlet.node) as number),
      outletLinks: loop.outlets.map((outlet) => net.linkIndex.get(outlet.link) as number),
    };
  });
  const drains = design.drains.map((drain, i) => drainModel(drain, i, catalogue, method, geometry.displayFloor));
  const hangOn = hangOnModel(design.overflow, geometry.displayFloor, method);
  const chamberPlaces = geometry.chambers.map((chamber) => `sump.${chamber.id}`);
  return { design, catalogue, method, water, geometry, hangOn, chamberPlaces, loops, drains, networks };
}

/** Where nothing is said: from the sump to the display is a return, round the display a closed loop, all else a side loop. */
function purposeOf(model: LoopModel): PreparedLoop["purpose"] {
  const toDisplay = model.outlets.some((outlet) => outlet.place === "display");
  if (!toDisplay) return "side";
  return model.sourcePlace === "display" ? "closed" : "return";
}
