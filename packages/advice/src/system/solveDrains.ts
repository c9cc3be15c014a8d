import {
  type BoxDrain,
  type BoxLevel,
  boxLevelFor,
  type DrainLine,
  siphonValveLossFor,
  valveOpeningFor,
} from "@tidewright/engine";
import { endHead, type Levels, levelOf } from "./levels.ts";
import type { PreparedSystem } from "./prepare.ts";

/** The drains as they run together, with the valves of throttled siphons set for their shares. */
export interface DrainSolution {
  readonly box: BoxLevel;
  readonly lines: readonly DrainLine[];
  /** For each drain: whether its valve loss was solved for, whether a wished share cannot be had. */
  readonly valves: readonly { readonly solved: boolean; readonly unreachable: boolean }[];
  /** Box level and flows of the drains that share what the siphons leave, where there are any. */
  readonly rest: BoxLevel | undefined;
}

const asGiven = { solved: false, unreachable: false };
const set = { solved: true, unreachable: false };
const beyond = { solved: false, unreachable: true };

/** Returns box level and drain flows for a weir flow. Where a throttled siphon has a wished share, the other drains carry the
 *  rest first, which gives the box level; the siphon's valve is then closed until it carries its share at that level.
 *  system PreparedSystem   flow over the weir [m3/s]   levels of the sump   near a solution close by, if known   -> DrainSolution
 *  Source: engine `boxLevelFor`, `siphonValveLossFor`. */
export function solveDrains(
  system: PreparedSystem,
  flow: number,
  levels: Levels,
  near: DrainSolution | undefined,
): DrainSolution {
  const { design, drains, geometry, water } = system;
  const limits = { floor: geometry.boxFloor, rim: geometry.boxRim };
  const box: { kind: BoxDrain["kind"]; line: DrainLine }[] = [];
  let shared = 0;
  for (let i = 0; i < drains.length; i++) {
    const drain = drains[i] as (typeof drains)[number];
    const outletElevation = endHead(levelOf(levels, drain.place), drain.depth);
    box.push({ kind: design.drains[i]?.kind ?? "ventedStandpipe", line: lineTo(drain.line, outletElevation) });
    shared += shareOf(system, i) ?? 0;
  }
  const valves: { solved: boolean; unreachable: boolean }[] = drains.map(() => asGiven);
  let rest: BoxLevel | undefined;
  let hint: { level: number; flows: readonly number[] } | undefined = near?.box;
  if (shared > 0 && shared < 1 && flow > 0) {
    const others = box.filter((_, i) => shareOf(system, i) === undefined);
    if (others.length > 0) rest = boxLevelFor(others, flow * (1 - shared), water, limits, near?.rest);
    const flows: number[] = [];
    let next = 0;
    for (let i = 0; i < box.length; i++) {
      const share = shareOf(system, i);
      const drain = box[i] as (typeof box)[number];
      if (share === undefined) {
        flows.push(rest?.flows[next++] ?? 0);
        continue;
      }
      flows.push(flow * share);
      const k = rest && !rest.overflows ? siphonValveLossFor(drain.line, flow * share, rest.level, water) : undefined;
      valves[i] = k === undefined ? beyond : set;
      drain.line = { ...drain.line, valveLoss: k ?? 0 };
    }
    // With every share as wished the level is found already; the search then only confirms it.
    if (rest) hint = { level: rest.level, flows };
  }
  return {
    box: boxLevelFor(box, Math.max(0, flow), water, limits, hint),
    lines: box.map(({ line }) => line),
    valves,
    rest,
  };
}

function shareOf(system: PreparedSystem, i: number): number | undefined {
  const drain = system.design.drains[i];
  return drain?.kind === "throttledSiphon" ? drain.share : undefined;
}

/** Every line with the same fields in the same order, so that what reads them stays fast. */
function lineTo(line: DrainLine, outletElevation: number): DrainLine {
  const { bore, inletDiameter, segments, valveLoss, inletElevation } = line;
  return { bore, inletDiameter, segments, valveLoss, inletElevation, outletElevation };
}

/** Returns the opening of a drain's valve: the one that gives the loss found for a wished share, else the one given; undefined
 *  where there is no valve. Source: engine `valveOpeningFor`. */
export function valveOpeningOf(system: PreparedSystem, drains: DrainSolution, i: number): number | undefined {
  const valve = system.drains[i]?.valve;
  const share = drains.valves[i];
  const line = drains.lines[i];
  if (!valve || !share || !line) return undefined;
  if (share.unreachable) return 1;
  if (!share.solved) return valve.opening;
  const onItsBore = line.valveLoss * (valve.diameter / line.bore) ** 4;
  return valveOpeningFor(valve.kind, valve.diameter, onItsBore, system.method);
}
