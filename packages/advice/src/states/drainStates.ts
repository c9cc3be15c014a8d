import { drainCapacity, emergencyCapacity, pipeFroude } from "@tidewright/engine";
import type { DrainState } from "../assessment.ts";
import type { PreparedSystem } from "../system/prepare.ts";
import { valveOpeningOf } from "../system/solveDrains.ts";
import type { SolvedSystem } from "../system/solveSystem.ts";

/** Returns every drain as it runs, with its capacity as a bracket. Source: engine overflow. */
export function drainStates(system: PreparedSystem, solved: SolvedSystem): DrainState[] {
  const { box, lines, valves } = solved.drains;
  return system.design.drains.map((drain, i) => {
    const model = system.drains[i] as PreparedSystem["drains"][number];
    const line = lines[i] as (typeof lines)[number];
    const flow = box.flows[i] ?? 0;
    const rim = system.geometry.boxRim;
    // The bracket is the open line's: a throttle is a choice, not a limit of the pipe.
    const open = { ...line, valveLoss: 0 };
    const capacity = drainCapacity(
      open,
      Math.max(line.inletElevation, Math.min(rim, Math.max(box.level, line.inletElevation))),
      system.water,
    );
    const opening = valveOpeningOf(system, solved.drains, i);
    return {
      path: model.path,
      name: drain.name,
      role: drain.role,
      kind: drain.kind,
      flow,
      regime: box.regimes[i] ?? "dry",
      froude: pipeFroude(flow, line.bore),
      velocity: flow / ((Math.PI / 4) * line.bore ** 2),
      bore: line.bore,
      inletElevation: line.inletElevation,
      submergence: Math.max(0, box.level - line.inletElevation),
      capacity: { quiet: capacity.quiet, practice: capacity.practice, siphon: capacity.siphon },
      capacityAtRim: emergencyCapacity(line, rim, system.water),
      ...(opening === undefined ? {} : { valveOpening: opening }),
      ...(valves[i]?.solved ? { valveSolved: true } : {}),
    };
  });
}
