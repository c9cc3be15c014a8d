import { type HybridSystem, hybridSystem } from "./hybridSystem.ts";
import type { TimedAction, TransientModel } from "./model.ts";
import { createOde } from "./ode/index.ts";
import { recorder } from "./recorder.ts";
import { startState } from "./startState.ts";
import { surfaceOf } from "./stateLayout.ts";
import type { TransientRun, TransientStatus } from "./transientRun.ts";
import { siphonHold, type TransientEvent, transitions } from "./transitions.ts";

/** How long, how closely and how much of it to keep. */
export interface SimulateOptions {
  /** Time to simulate [s]. */
  readonly duration: number;
  /** Keep moments to draw the run from; true where nothing is said. */
  readonly record?: boolean;
  /** Error of a level allowed in one step [m]; 1e-5 where nothing is said. */
  readonly levelTolerance?: number;
  /** Steps allowed in all; 40,000 where nothing is said. */
  readonly maximumSteps?: number;
}

/** Times closer than this are one moment [s]. */
const sameMoment = 1e-6;
/** Changes of mode allowed at nearly one moment: more is two states that chase each other, and is told. */
const changesAtOnce = 60;

/** Simulates a system through time: its volumes as differential equations between the moments at which something changes at once.
 *  model TransientModel   actions in any order   options SimulateOptions   -> TransientRun
 *  Findings: none; `status` says when the end was not reached, `volumeError` what was lost on the way. Throws: never for a sound model.
 *  Valid: levels and flows that change slowly against the water's own inertia (water hammer and sloshing are left out); one surface
 *  in each vessel; error of a level within about ten times the step tolerance.
 *  Source: continuity; integration by RODAS (E. Hairer and G. Wanner, Solving Ordinary Differential Equations II, 2nd ed. 1996).
 *  Example: simulate({ water: { kinematicViscosity: 1e-6 }, vessels: [{ id: "a", floor: 0, area: 1, rim: 1, rimLength: 4, startLevel: 0.5 }], weirs: [], drains: [], circuits: [], evaporation: [{ vessel: 0, flow: 1e-6 }], pumpTimeConstant: 1 }, [], { duration: 1000 }).finalLevels[0]  ->  0.499 */
export function simulate(
  model: TransientModel,
  actions: readonly TimedAction[],
  options: SimulateOptions,
): TransientRun {
  const system = hybridSystem(model);
  const { layout } = system;
  const ode = createOde(system);
  const watch = transitions(system);
  const y = startState(system);
  beginModes(system, y);
  const out = recorder(system, options.record !== false);
  const absoluteTolerance = tolerances(model, system.size, layout.volumes, options.levelTolerance ?? 1e-5);
  const queue = actions.map((entry, index) => ({ ...entry, index })).sort((a, b) => a.at - b.at || a.index - b.index);
  const events: TransientEvent[] = [];
  const total = sum(y, layout.volumes);
  let volumeError = 0;
  let t = 0;
  let steps = 0;
  let evaluations = 0;
  let nextStep: number | undefined;
  let crowd = 0;
  let crowdFrom = 0;
  let status: TransientStatus = "finished";
  const budget = options.maximumSteps ?? 40_000;
  const tell = (told: { code: TransientEvent["code"]; at: string } | undefined): void => {
    if (told) events.push({ t, ...told });
  };
  const settle = (): void => {
    for (const told of watch.settle(y)) tell(told);
  };
  const actNow = (): void => {
    while (queue.length > 0 && queue[0].at <= t + sameMoment) {
      const { action, index } = queue.shift() as (typeof queue)[number];
      watch.act(action, y);
      events.push({ t, code: "action", at: String(index), action: index });
      nextStep = 1e-3;
    }
    settle();
  };

  for (const vessel of model.vessels) if (vessel.startLevel > vessel.rim) tell({ code: "rim/over", at: vessel.id });
  out.moment(0, y);
  actNow();
  if (events.length > 0) out.moment(0, y);
  while (t < options.duration - sameMoment) {
    const until = Math.min(options.duration, queue[0]?.at ?? Number.POSITIVE_INFINITY);
    const result = ode.run(
      t,
      y,
      until,
      {
        relativeTolerance: 1e-6,
        absoluteTolerance,
        maximumSteps: budget - steps,
        ...(nextStep === undefined ? {} : { firstStep: nextStep }),
      },
      watch.events,
      (step) => out.step(step),
    );
    steps += result.steps + result.rejected;
    evaluations += result.evaluations;
    t = result.t;
    volumeError = Math.max(volumeError, Math.abs(sum(y, layout.volumes) - total) / total);
    if (result.status === "stepBudget" || result.status === "stepTooSmall") {
      status = result.status === "stepBudget" ? "stepBudget" : "stuck";
      break;
    }
    if (result.status === "event") {
      for (const index of result.events) tell(watch.pass(index));
      settle();
      // After a change the old step length says little.
      nextStep = Math.min(result.nextStep, 0.05);
      if (t - crowdFrom > 1e-3) {
        crowd = 0;
        crowdFrom = t;
      }
      if (++crowd > changesAtOnce) {
        status = "stuck";
        break;
      }
    } else nextStep = result.nextStep;
    const before = events.length;
    actNow();
    if (result.status === "event" || events.length > before) out.moment(t, y);
  }
  const record = out.record();
  return {
    status,
    reached: t,
    events,
    ranges: out.ranges(),
    booked: {
      spilled: model.vessels.map((_, i) => y[layout.spilled + i]),
      evaporated: y[layout.evaporated],
    },
    volumeError,
    drainPeak: out.drainPeak(),
    finalLevels: model.vessels.map((_, i) => surfaceOf(model, y, i)),
    steps,
    evaluations,
    ...(record ? { record } : {}),
  };
}

/** Modes that the levels at the start decide: what lies dry, what has air in it, what runs. */
function beginModes(system: HybridSystem, y: Float64Array): void {
  const { model, modes } = system;
  system.drains.forEach((drain, i) => {
    if (modes.primed[i] && drain.rates(y).fed < siphonHold) modes.primed[i] = false;
  });
  for (const element of system.circuits) {
    const { circuit, mode } = element;
    mode.bare = surfaceOf(model, y, circuit.source) < circuit.intakeElevation;
    mode.dry = mode.bare;
    mode.dryUntold = mode.dry;
    element.solve(y);
    mode.idle = element.upward() <= 0;
  }
}

/** Water in a pipe that makes no difference to any vessel [m3]: a tenth of a millilitre. */
const smallVolume = 1e-7;

/** Volumes to a level's tolerance in their vessel, pipes to a share of what they hold; booked amounts follow from the rest. */
function tolerances(model: TransientModel, size: number, volumes: number, level: number): Float64Array {
  const allowed = new Float64Array(size).fill(1e-4);
  let largest = 0;
  model.vessels.forEach((vessel, i) => {
    allowed[i] = level * vessel.area;
    largest = Math.max(largest, allowed[i]);
  });
  let next = model.vessels.length;
  for (const { content } of [...model.drains, ...model.circuits])
    allowed[next++] = Math.max(smallVolume, 1e-3 * content);
  for (; next < volumes; next++) allowed[next] = largest;
  return allowed;
}

function sum(y: Float64Array, count: number): number {
  let total = 0;
  for (let i = 0; i < count; i++) total += y[i];
  return total;
}
