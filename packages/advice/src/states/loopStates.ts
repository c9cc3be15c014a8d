import { setLink } from "@tidewright/engine";
import type { LoopState, OutletState, SystemCurveSamples } from "../assessment.ts";
import { endHead, levelOf, outletFlowTo, pumpFlowOf } from "../system/levels.ts";
import type { PreparedLoop, PreparedSystem } from "../system/prepare.ts";
import { solveNear } from "../system/solveNear.ts";
import type { SolvedSystem } from "../system/solveSystem.ts";
import { SystemCurve } from "../system/systemCurve.ts";

/** Returns one state a loop. `withCurves` adds the system curve and the flow's interval, which cost further solutions.
 *  Source: engine network; spread between published fitting methods. */
export function loopStates(system: PreparedSystem, solved: SolvedSystem, withCurves = true): LoopState[] {
  return system.loops.map((prepared) => {
    const { loop, net, state } = prepared;
    const flow = pumpFlowOf(prepared);
    const source = levelOf(solved.levels, loop.sourcePlace);
    const heads = loop.outlets.map((outlet) => endHead(levelOf(solved.levels, outlet.place), outlet.depth));
    const toDisplay = outletFlowTo(prepared, "display");
    const inlet = net.nodeIndex.get("suction") ?? (net.nodeIndex.get("source") as number);
    const discharge = net.nodeIndex.get("discharge") as number;
    return {
      path: loop.path,
      name: system.design.loops[prepared.index]?.name ?? "",
      purpose: prepared.purpose,
      flow,
      flowToDisplay: toDisplay,
      staticHead: Math.max(...heads) - source,
      totalHead: (state.head[discharge] ?? 0) - (state.head[inlet] ?? 0),
      systemCurve: withCurves ? systemCurveOf(system, prepared, solved, flow) : { flow: [], head: [], toDisplay: [] },
      flowRange: withCurves ? flowRange(prepared, flow) : [flow, flow],
    };
  });
}

const curvePoints = 9;

function systemCurveOf(
  system: PreparedSystem,
  prepared: PreparedLoop,
  solved: SolvedSystem,
  flow: number,
): SystemCurveSamples {
  const curve = new SystemCurve(system, prepared, solved);
  const largest =
    Math.max(...prepared.loop.pumps.map((pump) => pump.row?.curves[0]?.points.at(-1)?.flow ?? 0)) *
    prepared.loop.pumps.length;
  const end = Math.max(1.4 * flow, largest, 1e-4);
  const flows = Array.from({ length: curvePoints }, (_, i) => (end * (i + 0.02)) / (curvePoints - 1 + 0.02));
  const points = flows.map((q) => curve.at(q));
  return {
    flow: flows,
    head: points.map((point) => point.head),
    toDisplay: points.map((point) => point.flowToDisplay),
  };
}

/** Flow with every fitting at its most and its least pessimistic published loss; the network and its solution are put back. */
function flowRange(prepared: PreparedLoop, flow: number): readonly [number, number] {
  const { net, state, loop } = prepared;
  const kept = [state.flow, state.head, state.loss] as const;
  const before = kept.map((values) => values.slice());
  let low = flow;
  let high = flow;
  for (const side of [1, 0] as const) {
    for (const section of loop.sections) {
      const index = net.linkIndex.get(section.link) as number;
      const link = net.model.links[index];
      if (!link || (link.kind !== "pipe" && link.kind !== "valve")) continue;
      let k = 0;
      for (const part of section.parts) k += part.lossRange[side];
      setLink(
        net,
        index,
        link.kind === "pipe"
          ? { ...link, minorLoss: k, laminarLoss: 0 }
          : { ...link, lossCoefficient: k, laminarLoss: 0 },
      );
    }
    solveNear(prepared, true);
    const found = pumpFlowOf(prepared);
    low = Math.min(low, found);
    high = Math.max(high, found);
  }
  net.model.links.forEach((link, i) => {
    setLink(net, i, link);
  });
  kept.forEach((values, i) => {
    values.set(before[i] as Float64Array);
  });
  return [low, high];
}

/** Returns every outlet with its jet. Source: V = Q / A. */
export function outletStates(system: PreparedSystem, solved: SolvedSystem): OutletState[] {
  return system.loops.flatMap(({ loop, state, outletLinks }) =>
    loop.outlets.map((outlet, i) => {
      const flow = state.flow[outletLinks[i] as number] ?? 0;
      return {
        path: outlet.path,
        place: outlet.place,
        flow,
        jetVelocity: flow / ((Math.PI / 4) * outlet.jetDiameter ** 2),
        jetDiameter: outlet.jetDiameter,
        elevation: levelOf(solved.levels, outlet.place) - outlet.depth,
        submerged: outlet.depth >= 0,
      };
    }),
  );
}
