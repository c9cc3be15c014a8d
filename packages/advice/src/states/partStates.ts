import type { SizedPart } from "@tidewright/design";
import { darcyFrictionFactor, standardGravity } from "@tidewright/engine";
import type { PartState } from "../assessment.ts";
import type { PreparedSystem } from "../system/prepare.ts";
import type { SolvedSystem } from "../system/solveSystem.ts";

/** Returns every part of every run as it works: flow, speed, Reynolds number and head loss.
 *  Drains are told as if full, which is what their speed limits refer to; the valve of a siphon that is set for a share, at the
 *  opening that was found for it.
 *  Source: Darcy-Weisbach with the engine's `darcyFrictionFactor`; h = K V^2/2g. */
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
    const flow = solved.drains.box.flows[i] ?? 0;
    const found = foundLoss(system, solved, i);
    for (const part of drain.parts)
      parts.push(partState(found?.path === part.path ? { ...part, ...found } : part, flow, nu, "drain", 0));
  });
  return parts;
}

/** The valve of a drain with the loss that was solved for, on its own bore. */
function foundLoss(system: PreparedSystem, solved: SolvedSystem, i: number) {
  const valve = system.drains[i]?.valve;
  const line = solved.drains.lines[i];
  if (!valve || !line || !solved.drains.valves[i]?.solved) return undefined;
  return { path: valve.path, lossCoefficient: line.valveLoss * (valve.diameter / line.bore) ** 4, laminarLoss: 0 };
}

function partState(part: SizedPart, flow: number, nu: number, side: PartState["side"], linkLoss: number): PartState {
  const { path, kind, label, diameter } = part;
  const velocity = flow / ((Math.PI / 4) * diameter * diameter);
  const speed = Math.abs(velocity);
  const reynolds = (speed * diameter) / nu;
  const velocityHead = (velocity * speed) / (2 * standardGravity);
  if (kind === "pipe") {
    const { length } = part;
    // Below this Reynolds number friction factor and velocity head would make infinity times nothing.
    const f = reynolds > 1e-100 ? darcyFrictionFactor(reynolds, part.roughness / diameter) : 0;
    const headLoss = (f * length * velocityHead) / diameter;
    return { path, kind, label, flow, velocity, reynolds, diameter, side, headLoss, length, darcyFrictionFactor: f };
  }
  if (part.device) return { path, kind, label, flow, velocity, reynolds, diameter, side, headLoss: linkLoss };
  const k = part.lossCoefficient + (reynolds > 0 ? part.laminarLoss / reynolds : 0);
  if (!Number.isFinite(k)) return { path, kind, label, flow, velocity, reynolds, diameter, side, headLoss: 0 };
  const headLoss = k * velocityHead;
  return { path, kind, label, flow, velocity, reynolds, diameter, side, headLoss, lossCoefficient: k };
}
