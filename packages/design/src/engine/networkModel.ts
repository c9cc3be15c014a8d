import {
  type NetworkLink,
  type NetworkModel,
  pumpAtSpeed,
  pumpCurve,
  seaWater,
  type ValveKind,
  valveLoss,
} from "@tidewright/engine";
import { type Dimension, toSI } from "@tidewright/units";
import type { NetworkDocument } from "../schema/network.ts";
import { deviceCurve } from "./loopModel.ts";

type Loose = number | { value: number; unit: string };

/** Returns the engine's network for a network document: quantities brought to SI, water's properties worked out.
 *  document NetworkDocument   -> NetworkModel
 *  Findings: none. Throws: never for a document that `readNetwork` accepts.
 *  Valid: any; roughness is 1.5e-6 m where nothing is said.
 *  Source: the network contract of this project.
 *  Example: networkModel({ tidewright: 1, water: { density: 1000, kinematicViscosity: 1e-6 }, network: { nodes: [{ id: "a", kind: "fixedHead", head: { value: 500, unit: "mm" } }], links: [] } }).nodes[0].head  ->  0.5 */
export function networkModel(document: NetworkDocument): NetworkModel {
  const { water, network } = document;
  const liquid =
    "density" in water
      ? {
          density: si(water.density, "density"),
          kinematicViscosity: si(water.kinematicViscosity, "kinematicViscosity"),
        }
      : seaWater(si(water.salinity, "salinity"), si(water.temperature, "temperature"));
  const nodes = network.nodes.map((node) =>
    node.kind === "fixedHead"
      ? {
          id: node.id,
          kind: node.kind,
          head: si(node.head, "head"),
          ...(node.elevation === undefined ? {} : { elevation: si(node.elevation, "length") }),
        }
      : {
          id: node.id,
          kind: node.kind,
          elevation: si(node.elevation ?? 0, "length"),
          demand: si(node.demand ?? 0, "flow"),
        },
  );
  return {
    liquid: { density: liquid.density, kinematicViscosity: liquid.kinematicViscosity },
    nodes,
    links: network.links.map(linkModel),
  };
}

function linkModel(link: NetworkDocument["network"]["links"][number]): NetworkLink {
  const { id, from, to } = link;
  switch (link.kind) {
    case "pipe":
      return {
        id,
        kind: "pipe",
        from,
        to,
        length: si(link.length, "length"),
        diameter: si(link.diameter, "length"),
        roughness: si(link.roughness ?? 1.5e-6, "length"),
        minorLoss: link.minorLoss ?? 0,
        checkValve: link.checkValve ?? false,
      };
    case "pump": {
      const points = link.curve.points.map((point) => ({ flow: si(point.flow, "flow"), head: si(point.head, "head") }));
      const curve = pumpCurve(points, link.curve.method ?? "auto");
      return {
        id,
        kind: "pump",
        from,
        to,
        pump: pumpAtSpeed([{ speedRatio: 1, curve }], link.speedRatio ?? 1),
        reverseFlow: link.reverseFlow ?? false,
      };
    }
    case "valve": {
      const diameter = si(link.diameter, "length");
      const byOpening = link.valve ? valveLoss(link.valve as ValveKind, link.opening ?? 1, diameter).turbulent : 0;
      const lossCoefficient =
        link.lossCoefficient === null ? Number.POSITIVE_INFINITY : (link.lossCoefficient ?? byOpening);
      return { id, kind: "valve", from, to, diameter, lossCoefficient, checkValve: link.checkValve ?? false };
    }
    case "device": {
      const lossPoints = link.lossPoints.map((point) => ({
        flow: si(point.flow, "flow"),
        headLoss: si(point.headLoss, "head"),
      }));
      return { id, kind: "device", from, to, ...deviceCurve({ lossPoints }), checkValve: link.checkValve ?? false };
    }
  }
}

function si(quantity: Loose, dimension: Dimension): number {
  return typeof quantity === "number" ? quantity : toSI(quantity, dimension);
}
