import type { SizedPart } from "@tidewright/design";
import { darcyFrictionFactor, pipeHeadLoss, standardGravity } from "@tidewright/engine";
import type { PartState } from "../assessment.ts";
import type { PreparedSystem } from "../system/prepare.ts";
import type { SolvedSystem } from "../system/solveSystem.ts";

/** Returns every part of every run as it works: flow, speed, Reynolds number and head loss.
 *  Drains are told as if full, which is what their speed limits refer to.
 *  Source: engine `pipeHeadLoss`; h = K V^2/2g. */
export function partStates(system: PreparedSystem, solved: SolvedSystem): PartState[] {
  const parts: PartState[] = [];
  const nu = system.water.kinematicViscosity;
  for (const { loop, net, state } of system.loops)
    for (const section of loop.sections) {
      const link = net.linkIndex.get(section.link) as number;
      const flow = state.flow[link] ?? 0;
      for (const part of section.parts) parts.push(partState(part, flow, nu, section.side, state.loss[link] ?? 0));
    }
  system.drains.forEach((drain, i) => {
    for (const part of drain.parts) parts.push(partState(part, solved.drains.box.flows[i] ?? 0, nu, "drain", 0));
  });
  return parts;
}

function partState(part: SizedPart, flow: number, nu: number, side: PartState["side"], linkLoss: number): PartState {
  const area = (Math.PI / 4) * part.diameter ** 2;
  const velocity = flow / area;
  const reynolds = (Math.abs(velocity) * part.diameter) / nu;
  const base = {
    path: part.path,
    kind: part.kind,
    label: part.label,
    flow,
    velocity,
    reynolds,
    diameter: part.diameter,
    side,
  };
  if (part.kind === "pipe") {
    const { headLoss } = pipeHeadLoss({
      length: part.length,
      diameter: part.diameter,
      roughness: part.roughness,
      flow,
      kinematicViscosity: nu,
    });
    const f = reynolds > 0 ? darcyFrictionFactor(reynolds, part.roughness / part.diameter) : 0;
    return { ...base, headLoss, length: part.length, darcyFrictionFactor: f };
  }
  if (part.device) return { ...base, headLoss: linkLoss };
  const k = part.lossCoefficient + (reynolds > 0 ? part.laminarLoss / reynolds : 0);
  if (!Number.isFinite(k)) return { ...base, headLoss: 0 };
  return { ...base, headLoss: (k * velocity * Math.abs(velocity)) / (2 * standardGravity), lossCoefficient: k };
}
