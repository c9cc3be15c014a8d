import { type NetworkModel, pumpHeadAtSpeed } from "@tidewright/engine";
import {
  CurveType,
  FlowUnits,
  HeadLossType,
  InitHydOption,
  LinkProperty,
  LinkStatusType,
  LinkType,
  NodeProperty,
  NodeType,
  Option,
  Project,
  Workspace,
} from "epanet-js";

/** EPANET's answer: flows [m3/s] and heads [m] in the model's own order. */
export interface EpanetAnswer {
  readonly flows: readonly number[];
  readonly heads: readonly number[];
  /** What EPANET says of the run, such as a pump that cannot deliver. */
  readonly warnings: readonly string[];
}

/** EPANET takes its viscosity as a multiple of 1.1e-5 ft2/s. */
const epanetViscosity = 1.1e-5 * 0.3048 ** 2;
const workspaceReady = new Workspace();
await workspaceReady.loadModule();

/** Solves one of our models with EPANET: Darcy-Weisbach, litres a second, 1e-8 accuracy. Takes pipes, valves (as throttle
 *  control valves) and pumps with two- or three-point curves (as EPANET's power function) or others (sampled finely). */
export function solveWithEpanet(model: NetworkModel): EpanetAnswer {
  const project = new Project(workspaceReady);
  project.init("report.rpt", "out.bin", FlowUnits.LPS, HeadLossType.DW);
  project.setOption(Option.SpViscos, model.liquid.kinematicViscosity / epanetViscosity);
  project.setOption(Option.SpGravity, model.liquid.density / 1000);
  project.setOption(Option.Trials, 500);
  project.setOption(Option.Accuracy, 1e-8);
  model.nodes.forEach((node) => {
    const index = project.addNode(node.id, node.kind === "junction" ? NodeType.Junction : NodeType.Reservoir);
    project.setNodeValue(index, NodeProperty.Elevation, node.kind === "junction" ? node.elevation : node.head);
    if (node.kind === "junction") project.setNodeValue(index, NodeProperty.BaseDemand, 1000 * (node.demand ?? 0));
  });
  model.links.forEach((link) => addLink(project, link));
  project.openH();
  project.initH(InitHydOption.InitFlow);
  const warnings = collectWarnings(() => project.runH());
  const flows = model.links.map(
    (link) => project.getLinkValue(project.getLinkIndex(link.id), LinkProperty.Flow) / 1000,
  );
  const heads = model.nodes.map((node) => project.getNodeValue(project.getNodeIndex(node.id), NodeProperty.Head));
  project.closeH();
  project.close();
  return { flows, heads, warnings };
}

/** The library writes warnings to the console; here they belong to the answer. */
function collectWarnings(run: () => void): string[] {
  const warnings: string[] = [];
  const { warn } = console;
  console.warn = (text: unknown) => warnings.push(String(text));
  try {
    run();
  } finally {
    console.warn = warn;
  }
  return warnings;
}

function addLink(project: Project, link: NetworkModel["links"][number]): void {
  switch (link.kind) {
    case "pipe": {
      const index = project.addLink(link.id, link.checkValve ? LinkType.CVPipe : LinkType.Pipe, link.from, link.to);
      // Roughness in millimetres, as EPANET has it in metric units.
      project.setPipeData(index, link.length, 1000 * link.diameter, 1000 * link.roughness, link.minorLoss);
      return;
    }
    case "valve": {
      const index = project.addLink(link.id, LinkType.TCV, link.from, link.to);
      project.setLinkValue(index, LinkProperty.Diameter, 1000 * link.diameter);
      if (link.lossCoefficient === Number.POSITIVE_INFINITY)
        project.setLinkValue(index, LinkProperty.InitStatus, LinkStatusType.Closed);
      else project.setLinkValue(index, LinkProperty.InitSetting, link.lossCoefficient);
      return;
    }
    case "pump": {
      const index = project.addLink(link.id, LinkType.Pump, link.from, link.to);
      const curve = `curve ${link.id}`.replaceAll(" ", "-");
      project.addCurve(curve);
      const curveIndex = project.getCurveIndex(curve);
      project.setCurve(curveIndex, ...pumpPoints(link.pump));
      project.setCurveType?.(curveIndex, CurveType.PumpCurve);
      project.setHeadCurveIndex(index, curveIndex);
      return;
    }
    default:
      throw new RangeError(`EPANET has no ${link.kind}`);
  }
}

/** Three points at no flow, half and the last flow make EPANET's own power function; other curves are sampled at 60. */
function pumpPoints(pump: Extract<NetworkModel["links"][number], { kind: "pump" }>["pump"]): [number[], number[]] {
  const last = (pump.upper.curve.lastFlow * pump.speedRatio) / pump.upper.speedRatio;
  const power = pump.weight === 1 && pump.upper.curve.law === "power";
  const flows = power ? [0, last / 2, last] : Array.from({ length: 60 }, (_, i) => (i * last) / 59);
  return [flows.map((flow) => 1000 * flow), flows.map((flow) => pumpHeadAtSpeed(pump, flow))];
}
