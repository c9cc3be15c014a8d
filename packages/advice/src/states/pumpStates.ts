import { findController, findPump, type PumpRow } from "@tidewright/catalogue";
import { pumpHydraulics } from "@tidewright/design";
import {
  atmosphericPressure,
  circuitCurrent,
  electricalPower,
  hydraulicPower,
  lastFlowAtSpeed,
  npshAvailable,
  type PumpAtSpeed,
  pumpAtSpeed,
  pumpHeadAtSpeed,
  pumpHeatToWater,
} from "@tidewright/engine";
import { toSI } from "@tidewright/units";
import type { Curve, PumpState, TankPumpState } from "../assessment.ts";
import { levelOf } from "../system/levels.ts";
import type { PreparedLoop, PreparedSystem } from "../system/prepare.ts";
import type { SolvedSystem } from "../system/solveSystem.ts";

/** Share of an external pump's own losses that ends in the water: a fan-cooled motor gives most of it to the room.
 *  Common practice, no source. */
const externalMotorShare = 0.3;

/** Returns every pump of every loop at its operating point. `withCurves` adds the curves the picture needs.
 *  Source: engine pumps and energy. */
export function pumpStates(system: PreparedSystem, solved: SolvedSystem, withCurves = true): PumpState[] {
  return system.loops.flatMap((prepared) =>
    prepared.loop.pumps.map((_, i) => pumpState(system, solved, prepared, i, withCurves)),
  );
}

function pumpState(
  system: PreparedSystem,
  solved: SolvedSystem,
  prepared: PreparedLoop,
  i: number,
  withCurves: boolean,
): PumpState {
  const { water, design, catalogue } = system;
  const pump = prepared.loop.pumps[i] as PreparedLoop["loop"]["pumps"][number];
  const link = prepared.net.linkIndex.get(pump.link) as number;
  const flow = prepared.state.flow[link] ?? 0;
  const from = prepared.net.from[link] as number;
  const to = prepared.net.to[link] as number;
  const head =
    flow > 0 ? -(prepared.state.loss[link] ?? 0) : (prepared.state.head[to] ?? 0) - (prepared.state.head[from] ?? 0);
  const inletHead = prepared.state.head[from] ?? 0;
  const surface = levelOf(solved.levels, prepared.loop.sourcePlace);
  const altitude = design.room?.altitude ? toSI(design.room.altitude, "length") : 0;
  const available = npshAvailable({
    surfacePressure: atmosphericPressure(altitude),
    vapourPressure: water.vapourPressure,
    density: water.density,
    surfaceElevation: surface,
    pumpElevation: pump.elevation,
    headLoss: Math.max(0, surface - inletHead),
  });
  const { path, speed } = pump;
  const loop = prepared.index;
  if (!pump.row)
    return {
      path,
      loop,
      speed,
      flow,
      head,
      npshAvailable: available,
      // A pump that is gone from the catalogue is called by what the design still says of it.
      label: design.loops[prepared.index]?.pumps[i]?.ref ?? "no pump chosen",
      shutoffHead: 0,
      placeOnCurve: 0,
      beyondLastPoint: false,
      electricalPower: 0,
      hydraulicPower: 0,
      efficiency: 0,
      soundLevel: 0,
      current: 0,
      heatToWater: 0,
      curves: [],
      price: 0,
    };
  const { row } = pump;
  const hydraulics = pumpHydraulics(row);
  const set = pumpAtSpeed(hydraulics.head, speed);
  const watts = electricalPower(hydraulics.power, speed, flow);
  const useful = hydraulicPower(water.density, flow, Math.max(0, head));
  const last = lastFlowAtSpeed(set);
  const placed = design.loops[prepared.index]?.pumps[i]?.placed ?? "inSump";
  const speeds = speed === 1 ? [1] : [1, speed];
  return {
    path,
    loop,
    speed,
    flow,
    head,
    npshAvailable: available,
    ref: row.id,
    label: pumpLabel(row),
    shutoffHead: pumpHeadAtSpeed(set, 0),
    placeOnCurve: last > 0 ? flow / last : 0,
    beyondLastPoint: flow > last * (1 + 1e-9),
    electricalPower: watts,
    hydraulicPower: useful,
    efficiency: watts > 0 ? useful / watts : 0,
    soundLevel: soundAtSpeed(row, speed),
    current: circuitCurrent(watts, toSI(design.power.voltage, "voltage"), row.powerFactor),
    heatToWater: pumpHeatToWater({
      electricalPower: watts,
      hydraulicPower: Math.min(useful, watts),
      placed: placed === "external" ? "external" : "inWater",
      motorLossShareToWater: externalMotorShare,
    }),
    curves: withCurves
      ? speeds.map((speedRatio) => ({ speedRatio, curve: sampled(pumpAtSpeed(hydraulics.head, speedRatio)) }))
      : [],
    price: pumpPrice(row, design.loops[prepared.index]?.pumps[i]?.controller === true, catalogue).total,
  };
}

/** Sound falls with the fifth power of speed, 50 lg n: the fan law for sound power, used for pumps in want of a better one. */
export function soundAtSpeed(row: PumpRow, speed: number): number {
  return speed > 0 ? Math.max(0, row.soundLevel + 50 * Math.log10(speed)) : 0;
}

/** Maker and model in one. */
export function pumpLabel(row: PumpRow): string {
  return `${row.maker} ${row.model}`;
}

/** Price of a pump with the controller it needs: `withController` adds one that is bought apart. */
export function pumpPrice(
  row: PumpRow,
  withController: boolean,
  catalogue: PreparedSystem["catalogue"],
): { total: number; controller: number; label: string } {
  const own = row.controller;
  if (!withController || !own || own.included) return { total: row.price, controller: 0, label: "" };
  const listed = own.ref ? findController(catalogue, own.ref) : undefined;
  const controller = listed?.price ?? own.price ?? 0;
  return { total: row.price + controller, controller, label: listed?.label ?? own.label ?? "controller" };
}

function sampled(pump: PumpAtSpeed): Curve {
  const last = lastFlowAtSpeed(pump);
  const flow: number[] = [];
  const head: number[] = [];
  for (let i = 0; i <= 32; i++) {
    const q = (last * i) / 32;
    flow.push(q);
    head.push(pumpHeadAtSpeed(pump, q));
  }
  return { flow, head };
}

/** Returns the in-tank pumps: their flow is that of the last point of their curve, where the head is least, times speed and
 *  the mean share of their programme. Source: maker's curve; affinity Q ~ n. */
export function tankPumpStates(system: PreparedSystem): TankPumpState[] {
  return (system.design.tankPumps ?? []).flatMap((pump, i) => {
    const row = findPump(system.catalogue, pump.ref);
    if (!row) return [];
    const speed = pump.speed ?? 1;
    const share = pump.programme?.meanShare ?? 1;
    const hydraulics = pumpHydraulics(row);
    const full = lastFlowAtSpeed(pumpAtSpeed(hydraulics.head, speed));
    return [
      {
        path: `/tankPumps/${i}`,
        ref: row.id,
        label: pumpLabel(row),
        flow: full * share,
        electricalPower: electricalPower(hydraulics.power, speed * Math.cbrt(share), full),
        soundLevel: soundAtSpeed(row, speed),
        price: pumpPrice(row, false, system.catalogue).total,
      },
    ];
  });
}
