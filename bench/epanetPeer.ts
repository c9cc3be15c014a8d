import { type NetworkModel, pumpHeadAtSpeed } from "@tidewright/engine";
import {
  CurveType,
  FlowUnits,
  HeadLossType,
  InitHydOption,
  LinkProperty,
  LinkType,
  NodeProperty,
  NodeType,
  Option,
  Project,
  Workspace,
} from "epanet-js";

/** A model opened in EPANET with its hydraulics ready: solving is `cold()`; flows [m3/s] in the model's order. */
export interface EpanetPeer {
  readonly cold: () => void;
  readonly flows: () => number[];
}

/** EPANET takes its viscosity as a multiple of 1.1e-5 ft2/s. */
const epanetViscosity = 1.1e-5 * 0.3048 ** 2;

/** Opens a model of pipes and three-point pumps in EPANET: Darcy-Weisbach, litres a second, relative flow change `accuracy`. */
export async function openInEpanet(model: NetworkModel, accuracy: number): Promise<EpanetPeer> {
  const workspace = new Workspace();
  await workspace.loadModule();
  const project = new Project(workspace);
  project.init("report.rpt", "out.bin", FlowUnits.LPS, HeadLossType.DW);
  project.setOption(Option.SpViscos, model.liquid.kinematicViscosity / epanetViscosity);
  project.setOption(Option.SpGravity, model.liquid.density / 1000);
  project.setOption(Option.Accuracy, accuracy);
  for (const node of model.nodes) {
    const index = project.addNode(node.id, node.kind === "junction" ? NodeType.Junction : NodeType.Reservoir);
    project.setNodeValue(index, NodeProperty.Elevation, node.kind === "junction" ? node.elevation : node.head);
  }
  for (const link of model.links) {
    if (link.kind === "pipe") {
      const index = project.addLink(link.id, LinkType.Pipe, link.from, link.to);
      project.setPipeData(index, link.length, 1000 * link.diameter, 1000 * link.roughness, link.minorLoss);
    } else if (link.kind === "pump") {
      const index = project.addLink(link.id, LinkType.Pump, link.from, link.to);
      const name = `curve-${link.id}`;
      project.addCurve(name);
      const curve = project.getCurveIndex(name);
      const last = link.pump.upper.curve.lastFlow;
      const flows = [0, last / 2, last];
      project.setCurve(
        curve,
        flows.map((flow) => 1000 * flow),
        flows.map((flow) => pumpHeadAtSpeed(link.pump, flow)),
      );
      project.setCurveType?.(curve, CurveType.PumpCurve);
      project.setHeadCurveIndex(index, curve);
    } else throw new RangeError(`the peer takes pipes and pumps; ${link.id} is a ${link.kind}`);
  }
  project.openH();
  const indices = model.links.map((link) => project.getLinkIndex(link.id));
  return {
    cold: () => {
      project.initH(InitHydOption.InitFlow);
      project.runH();
    },
    flows: () => indices.map((index) => project.getLinkValue(index, LinkProperty.Flow) / 1000),
  };
}
