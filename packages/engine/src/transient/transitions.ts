import { type CircuitElement, fillReserve } from "./elements/circuitElement.ts";
import type { HybridSystem } from "./hybridSystem.ts";
import type { TransientAction } from "./model.ts";
import { type CircuitMode, dryStarts, fedStarts } from "./modes.ts";
import type { OdeEvents } from "./ode/index.ts";
import { surfaceOf } from "./stateLayout.ts";

/** Everything that can be told of a run. `at` names the vessel, drain, outlet or circuit by its id. */
export type TransientEventCode =
  | "action"
  | "rim/over"
  | "rim/under"
  | "drain/starts"
  | "drain/stops"
  | "siphon/lost"
  | "siphon/primed"
  | "tubes/lost"
  | "outlet/uncovered"
  | "outlet/covered"
  | "circuit/reversed"
  | "circuit/forward"
  | "circuit/air"
  | "circuit/full"
  | "pump/drawsAir"
  | "pump/floodedAgain"
  | "pump/givenUp"
  | "topOff/on"
  | "topOff/off"
  | "topOff/empty"
  | "blockage/done";

/** One moment of a run. */
export interface TransientEvent {
  /** Time since the start [s]. */
  readonly t: number;
  readonly code: TransientEventCode;
  readonly at: string;
  /** For "action": which of the actions given. */
  readonly action?: number;
}

/** A siphon draws air when its rim feeds less than this share of what the full pipe takes [-]. It runs full again when its pipe is full
 *  but for a hundredth: because its valve holds the column up to the rim, or because water that drowns the rim sweeps the air
 *  down (`DrainElement`). The gap between the two keeps it from doing both at once.
 *  Source: own criterion; common practice, no source. */
export const siphonHold = 0.9;
const fullPipe = 0.99;
/** Water runs up to the display from where more than `flowing` passes until less than `seeping` does [m3/s]: 1.1 and 0.36 L/h. */
const flowing = 3e-7;
const seeping = 1e-7;
/** A pump that has drawn air starts again when its intake lies this deep [m]. Source: common practice, no source. */
const floodedAgain = 0.02;

/** A drain is told to start when its inlet lies this deep, and to stop when it lies this deep [m]: a film counts for nothing. A rim is
 *  told to be free again by as much. */
const startDepth = 1e-3;
const stopDepth = 2e-4;

/** What is told of a change. */
interface Told {
  readonly code: TransientEventCode;
  readonly at: string;
}

interface Watch {
  readonly direction: -1 | 0 | 1;
  value(y: Float64Array): number;
  /** What changes when the value passes zero, `rising` or falling; returns what to tell, if anything. */
  happen(rising: boolean): Told | undefined;
}

/** The watches of a system: everything that changes its modes, and all that is worth telling. */
export interface Transitions {
  readonly events: OdeEvents;
  /** Carries out the change that belongs to an event just passed. */
  pass(index: number): Told | undefined;
  /** Carries out an action. */
  act(action: TransientAction, y: Float64Array): void;
  /** Changes modes that follow from others, after an event or action; returns what to tell. */
  settle(y: Float64Array): Told[];
}

/** Returns the watches of a system. Source: own construction; criteria as stated at each. */
export function transitions(system: HybridSystem): Transitions {
  const watches = [
    ...vesselWatches(system),
    ...siphonWatches(system),
    ...drainWatches(system),
    ...circuitWatches(system),
    ...topOffWatches(system),
  ];
  const direction = Int8Array.from(watches, (watch) => watch.direction);
  // Which side of zero each value is on. A crossing leaves it at zero to rounding, so the side is kept, not read again.
  const above = watches.map(() => true);
  const look = (y: Float64Array): void => {
    watches.forEach((watch, i) => {
      const value = watch.value(y);
      if (Math.abs(value) > 1e-12) above[i] = value > 0;
    });
  };
  return {
    events: {
      count: watches.length,
      direction,
      values(y, out) {
        for (let i = 0; i < watches.length; i++) out[i] = watches[i].value(y);
      },
    },
    pass(index) {
      const watch = watches[index];
      above[index] = watch.direction === 0 ? !above[index] : watch.direction > 0;
      return watch.happen(above[index]);
    },
    act: (action, y) => act(system, action, y),
    settle(y) {
      const told = [...settleCircuits(system, y), ...settleTopOff(system, y)];
      look(y);
      return told;
    },
  };
}

function vesselWatches({ model }: HybridSystem): Watch[] {
  return model.vessels.flatMap((vessel, i) => {
    if (vessel.rim === Number.POSITIVE_INFINITY || !(vessel.rimLength > 0)) return [];
    let over = vessel.startLevel > vessel.rim;
    const watch: Watch = {
      direction: 0,
      value: (y) => surfaceOf(model, y, i) - vessel.rim + (over ? stopDepth : 0),
      happen: (rising) => {
        over = rising;
        return { code: rising ? "rim/over" : "rim/under", at: vessel.id };
      },
    };
    return [watch];
  });
}

/** Tubes between two boxes draw air as soon as the water in one of them falls to their ends. */
function siphonWatches({ model, modes }: HybridSystem): Watch[] {
  return (model.siphons ?? []).map(
    (siphon, i): Watch => ({
      direction: -1,
      value: (y) =>
        modes.tubesFull[i]
          ? Math.min(surfaceOf(model, y, siphon.from), surfaceOf(model, y, siphon.to)) - siphon.mouth
          : 1,
      happen: () => {
        modes.tubesFull[i] = false;
        return { code: "tubes/lost", at: siphon.id };
      },
    }),
  );
}

function drainWatches({ model, layout, modes, drains }: HybridSystem): Watch[] {
  return model.drains.flatMap((drain, i) => {
    let running = (model.vessels[drain.from]?.startLevel ?? 0) > drain.line.inletElevation + startDepth;
    const runs: Watch = {
      direction: 0,
      value: (y) => surfaceOf(model, y, drain.from) - drain.line.inletElevation - (running ? stopDepth : startDepth),
      happen: (rising) => {
        running = rising;
        return { code: rising ? "drain/starts" : "drain/stops", at: drain.id };
      },
    };
    const blocked: Watch = {
      direction: 1,
      value: (y) => (modes.blockRate[i] > 0 ? y[layout.blocked + i] - modes.blockTarget[i] : -1),
      happen: () => {
        modes.blockRate[i] = 0;
        return { code: "blockage/done", at: drain.id };
      },
    };
    if (drain.kind !== "throttledSiphon") return [runs, blocked];
    const loses: Watch = {
      direction: -1,
      value: (y) => (modes.primed[i] ? drains[i].rates(y).fed - siphonHold : 1),
      happen: () => {
        modes.primed[i] = false;
        return { code: "siphon/lost", at: drain.id };
      },
    };
    const primes: Watch = {
      direction: 1,
      value: (y) => (modes.primed[i] ? -1 : y[layout.drain + i] / drain.content - fullPipe),
      happen: () => {
        modes.primed[i] = true;
        return { code: "siphon/primed", at: drain.id };
      },
    };
    return [runs, blocked, loses, primes];
  });
}

function circuitWatches(system: HybridSystem): Watch[] {
  const { model, layout, circuits } = system;
  return circuits.flatMap((element, i) => {
    const { circuit, mode } = element;
    const outlets = circuit.outlets.map((outlet, o): Watch => {
      const height = () => (mode.breakWorks[o] ? outlet.breakElevation : outlet.elevation);
      return {
        direction: 0,
        value: (y) => surfaceOf(model, y, outlet.vessel) - height(),
        happen: (rising) => {
          // What has taken in air stays so until a pump pushes water through it again.
          if (!rising || (!mode.idle && !mode.aired)) mode.uncovered[o] = !rising;
          return { code: rising ? "outlet/covered" : "outlet/uncovered", at: outlet.id };
        },
      };
    });
    const turns: Watch = {
      direction: 0,
      value: (y) => {
        if (mode.aired) return 1;
        element.solve(y);
        return element.upward() - (mode.idle ? flowing : seeping);
      },
      happen: (rising) => {
        mode.idle = !rising;
        return { code: rising ? "circuit/forward" : "circuit/reversed", at: circuit.id };
      },
    };
    const fills: Watch = {
      direction: 1,
      value: (y) => (mode.aired ? y[layout.circuit + i] / circuit.content - 1 - fillReserve : -1),
      happen: () => {
        mode.aired = false;
        mode.idle = false;
        return { code: "circuit/full", at: circuit.id };
      },
    };
    const intake: Watch = {
      direction: 0,
      value: (y) => surfaceOf(model, y, circuit.source) - circuit.intakeElevation - (mode.bare ? floodedAgain : 0),
      happen: (rising) => {
        mode.bare = !rising;
        if (mode.givenUp) return undefined;
        if (!rising) {
          mode.dry = true;
          mode.dryUntold = stands(mode);
          return mode.dryUntold ? undefined : drawsAir(system, element);
        }
        if (!mode.dry) return undefined;
        mode.dry = false;
        mode.dryUntold = false;
        if (stands(mode)) return undefined;
        return { code: "pump/floodedAgain", at: circuit.id };
      },
    };
    return [...outlets, turns, fills, intake];
  });
}

const stands = (mode: CircuitMode): boolean => mode.target.every((speed) => speed === 0);

function drawsAir({ model, modes }: HybridSystem, { circuit, mode }: CircuitElement): Told {
  const fed = model.topOff?.to === circuit.source && modes.topOffRuns && !modes.topOffEmpty;
  mode.timesDry++;
  mode.givenUp = mode.timesDry > (fed ? fedStarts : dryStarts);
  return { code: mode.givenUp ? "pump/givenUp" : "pump/drawsAir", at: circuit.id };
}

function topOffWatches({ model, modes }: HybridSystem): Watch[] {
  const { topOff } = model;
  if (!topOff) return [];
  const level = (y: Float64Array) => surfaceOf(model, y, topOff.to);
  const turns: Watch = {
    direction: 0,
    value: (y) =>
      modes.topOff !== "auto" ? 1 : modes.topOffRuns ? topOff.offLevel - level(y) : level(y) - topOff.onLevel,
    happen: (rising) => {
      if (rising) return undefined;
      modes.topOffRuns = !modes.topOffRuns;
      return { code: modes.topOffRuns ? "topOff/on" : "topOff/off", at: "topOff" };
    },
  };
  const empties: Watch = {
    direction: -1,
    value: (y) => y[topOff.reservoir] / model.vessels[topOff.reservoir].area - 1e-3,
    happen: () => {
      modes.topOffEmpty = true;
      return { code: "topOff/empty", at: "topOff" };
    },
  };
  return [turns, empties];
}

function act({ layout, modes, circuits }: HybridSystem, action: TransientAction, y: Float64Array): void {
  if (action.kind === "pumpSpeed") {
    const mode = modes.circuits[action.circuit];
    // Switched on anew, a pump that was given up tries again.
    if (mode.givenUp && action.speed > 0 && stands(mode)) {
      mode.givenUp = false;
      mode.timesDry = 0;
      mode.dry = mode.bare;
      mode.dryUntold = mode.bare;
    }
    mode.target[action.pump] = action.speed;
  } else if (action.kind === "drainBlocked") {
    const i = action.drain;
    const share = Math.min(1, Math.max(0, action.share));
    const rise = share - y[layout.blocked + i];
    if (action.over !== undefined && action.over > 0 && rise > 0) {
      modes.blockTarget[i] = share;
      modes.blockRate[i] = rise / action.over;
    } else {
      modes.blockRate[i] = 0;
      y[layout.blocked + i] = share;
    }
  } else if (action.kind === "checkValves") {
    circuits[action.circuit].leak(action.leak);
  } else if (action.kind === "siphonBreak") {
    modes.circuits[action.circuit].breakWorks[action.outlet] = action.works;
  } else if (action.kind === "siphonAir") {
    modes.tubesFull[action.siphon] = false;
  } else {
    modes.topOff = action.mode;
    if (action.mode !== "auto") modes.topOffRuns = action.mode === "open";
  }
}

/** A line whose upper outlets have all let in air, with nothing pumped up, stands as a column from then on. */
function settleCircuits(system: HybridSystem, y: Float64Array): Told[] {
  const { model, circuits } = system;
  const told: Told[] = [];
  for (const element of circuits) {
    const { circuit, mode } = element;
    if (mode.dryUntold && !stands(mode)) {
      mode.dryUntold = false;
      told.push(drawsAir(system, element));
    }
    circuit.outlets.forEach((outlet, o) => {
      const height = mode.breakWorks[o] ? outlet.breakElevation : outlet.elevation;
      const under = surfaceOf(model, y, outlet.vessel) > height + 1e-6;
      // Pumped water closes an opening that lies under the surface again.
      if (under && mode.uncovered[o] && !mode.aired && !mode.idle) mode.uncovered[o] = false;
    });
    if (mode.aired) continue;
    // A pump that draws air or is told to stop may turn the flow at once, with no crossing to see.
    element.solve(y);
    const idle = element.upward() <= (mode.idle ? flowing : seeping);
    if (idle !== mode.idle) {
      mode.idle = idle;
      told.push({ code: idle ? "circuit/reversed" : "circuit/forward", at: circuit.id });
    }
    if (!idle || circuit.upper === undefined) continue;
    const open = circuit.outlets.every((outlet, o) => outlet.vessel !== circuit.upper || mode.uncovered[o]);
    if (!open) continue;
    mode.aired = true;
    told.push({ code: "circuit/air", at: circuit.id });
  }
  return told;
}

/** A top-off left to itself again takes the level as it finds it: beyond where it starts or stops there is no crossing to see. */
function settleTopOff({ model, modes }: HybridSystem, y: Float64Array): Told[] {
  const { topOff } = model;
  if (!topOff || modes.topOff !== "auto") return [];
  const level = surfaceOf(model, y, topOff.to);
  if (modes.topOffRuns ? level <= topOff.offLevel : level >= topOff.onLevel) return [];
  modes.topOffRuns = !modes.topOffRuns;
  return [{ code: modes.topOffRuns ? "topOff/on" : "topOff/off", at: "topOff" }];
}
