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
  /** For each drain: opening of its valve, whether it was solved for, whether a wished share cannot be had. */
  readonly valves: readonly { readonly opening?: number; readonly solved: boolean; readonly unreachable: boolean }[];
}

/** Returns box level and drain flows for a weir flow. Where a throttled siphon has a wished share, the other drains carry the
 *  rest first, which gives the box level; the siphon's valve is then closed until it carries its share at that level.
 *  system PreparedSystem   flow over the weir [m3/s]   levels of the sump   -> DrainSolution
 *  Source: engine `boxLevelFor`, `siphonValveLossFor`, `valveOpeningFor`. */
export function solveDrains(system: PreparedSystem, flow: number, levels: Levels): DrainSolution {
  const { design, drains, geometry, water, method } = system;
  const limits = { floor: geometry.boxFloor, rim: geometry.boxRim };
  const lines: DrainLine[] = drains.map((drain) => ({
    ...drain.line,
    outletElevation: endHead(levelOf(levels, drain.place), drain.depth),
  }));
  const kind = (i: number) => design.drains[i]?.kind ?? "ventedStandpipe";
  const shares = design.drains.map((drain) => (drain.kind === "throttledSiphon" ? drain.share : undefined));
  const valves = drains.map((drain): { opening?: number; solved: boolean; unreachable: boolean } => ({
    ...(drain.valve ? { opening: drain.valve.opening } : {}),
    solved: false,
    unreachable: false,
  }));
  const shared = shares.reduce((sum: number, share) => sum + (share ?? 0), 0);
  if (shared > 0 && shared < 1 && flow > 0) {
    const rest: BoxDrain[] = lines.flatMap((line, i) => (shares[i] === undefined ? [{ kind: kind(i), line }] : []));
    const level = rest.length > 0 ? boxLevelFor(rest, flow * (1 - shared), water, limits) : undefined;
    shares.forEach((share, i) => {
      const drain = drains[i];
      const line = lines[i];
      const valve = valves[i];
      if (share === undefined || !drain || !line || !valve) return;
      const k = level && !level.overflows ? siphonValveLossFor(line, flow * share, level.level, water) : undefined;
      valve.solved = k !== undefined;
      valve.unreachable = k === undefined;
      lines[i] = { ...line, valveLoss: k ?? 0 };
      if (!drain.valve) return;
      const onItsBore = (k ?? 0) * (drain.valve.diameter / line.bore) ** 4;
      valve.opening = k === undefined ? 1 : valveOpeningFor(drain.valve.kind, drain.valve.diameter, onItsBore, method);
    });
  }
  const box = boxLevelFor(
    lines.map((line, i) => ({ kind: kind(i), line })),
    Math.max(0, flow),
    water,
    limits,
  );
  return { box, lines, valves };
}
