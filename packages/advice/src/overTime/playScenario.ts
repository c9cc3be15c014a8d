import { type SimulateOptions, simulate, type TimedAction, type TransientRun } from "@tidewright/engine";
import type { PreparedSystem } from "../system/prepare.ts";
import type { Scenario, ScenarioAction } from "./scenario.ts";
import { crestId, type OverTimeModel, siphonId } from "./transientModelOf.ts";
import type { Film, Verdict, VesselTrack, WhatIf, WhatIfEvent } from "./whatIfResult.ts";

/** Distance to a rim below which a design is called tight [m]: ripples, and the hand that set the level.
 *  Source: common practice, no source. */
export const tightMargin = 0.01;
/** Water over a rim below this is a wet edge, not a wet floor [m3]. */
const drop = 1e-6;

/** Plays a scenario on a design's model. system PreparedSystem   over OverTimeModel   scenario Scenario   film: keep what draws it
 *  -> WhatIf, SI. Source: engine `simulate`. */
export function playScenario(
  system: PreparedSystem,
  over: OverTimeModel,
  scenario: Scenario,
  film: boolean,
  options: Partial<SimulateOptions> = {},
): WhatIf {
  const timed = scenario.events.flatMap((event, index) =>
    engineActions(over, event.action).map((action) => ({ at: event.at, action, index })),
  );
  const run = simulate(over.model, timed as readonly TimedAction[], {
    duration: scenario.duration,
    record: film,
    ...options,
  });
  const vessels = tracks(over, run);
  const events = eventsOf(
    system,
    over,
    run,
    timed.map((entry) => entry.index),
  );
  // Where nothing goes over, the integrator's error may leave a picolitre less than nothing.
  const spilled = run.booked.spilled.reduce((sum, volume) => sum + Math.max(0, volume), 0);
  const trouble = troubleTime(over, run);
  const reservoir = over.model.topOff?.reservoir;
  return {
    scenario,
    verdict: verdictOf(run, vessels, spilled),
    ...(trouble === undefined ? {} : { timeToTrouble: trouble }),
    status: run.status,
    reached: run.reached,
    vessels,
    events,
    spilled,
    evaporated: run.booked.evaporated,
    toppedUp:
      reservoir === undefined
        ? 0
        : ((vessels[reservoir]?.start ?? 0) - (vessels[reservoir]?.end ?? 0)) * (vessels[reservoir]?.area ?? 0),
    volumeError: run.volumeError,
    drainPeak: run.drainPeak,
    steps: run.steps,
    ...(film && run.record ? { film: filmOf(system, over, run.record) } : {}),
  };
}

/** What an action of the design means to the model. */
function engineActions({ model, circuitOf }: OverTimeModel, action: ScenarioAction): TimedAction["action"][] {
  const speeds = (speed: (own: number) => number): TimedAction["action"][] =>
    model.circuits.flatMap((circuit, c) =>
      circuit.pumps.map((pump, p) => ({ kind: "pumpSpeed" as const, circuit: c, pump: p, speed: speed(pump.speed) })),
    );
  const topOff = (mode: "auto" | "off" | "open"): TimedAction["action"][] =>
    model.topOff ? [{ kind: "topOff", mode }] : [];
  switch (action.kind) {
    case "powerOff":
      return [...speeds(() => 0), ...topOff("off")];
    case "powerOn":
      return [...speeds((own) => own), ...topOff("auto")];
    case "pumpStops":
    case "pumpStarts":
    case "pumpSpeed": {
      const circuit = circuitOf[action.loop];
      if (circuit === undefined) return [];
      const own = model.circuits[circuit]?.pumps[action.pump]?.speed ?? 0;
      const speed = action.kind === "pumpStops" ? 0 : action.kind === "pumpStarts" ? own : action.speed;
      return [{ kind: "pumpSpeed", circuit, pump: action.pump, speed }];
    }
    case "drainBlocks":
      return [
        {
          kind: "drainBlocked",
          drain: action.drain,
          share: action.share,
          ...(action.over === undefined ? {} : { over: action.over }),
        },
      ];
    case "checkValvesLeak": {
      const circuit = circuitOf[action.loop];
      return circuit === undefined ? [] : [{ kind: "checkValves", circuit, leak: action.share }];
    }
    case "siphonBreaksClog": {
      const circuit = circuitOf[action.loop];
      if (circuit === undefined) return [];
      return (model.circuits[circuit]?.outlets ?? []).map((_, outlet) => ({
        kind: "siphonBreak",
        circuit,
        outlet,
        works: false,
      }));
    }
    case "overflowSiphonDrawsAir":
      return (model.siphons ?? []).map((_, siphon) => ({ kind: "siphonAir", siphon }));
    case "topOffStops":
      return topOff("off");
    case "topOffRuns":
      return topOff("auto");
    case "topOffSticksOpen":
      return topOff("open");
  }
}

function tracks({ model, places }: OverTimeModel, run: TransientRun): VesselTrack[] {
  return model.vessels.map((vessel, i) => {
    const range = run.ranges[i] as TransientRun["ranges"][number];
    const rim = Number.isFinite(vessel.rim) ? vessel.rim : undefined;
    return {
      place: places[i]?.place ?? vessel.id,
      path: places[i]?.path ?? "",
      floor: vessel.floor,
      ...(rim === undefined ? {} : { rim, margin: rim - range.highest }),
      area: vessel.area,
      start: vessel.startLevel,
      end: run.finalLevels[i] ?? vessel.startLevel,
      highest: range.highest,
      highestAt: range.highestAt,
      lowest: range.lowest,
      lowestAt: range.lowestAt,
      spilled: Math.max(0, run.booked.spilled[i] ?? 0),
    };
  });
}

/** First moment at which water leaves a rim for the floor, or a pump draws air [s]. */
function troubleTime({ model }: OverTimeModel, run: TransientRun): number | undefined {
  const onFloor = new Set(
    model.vessels
      .filter((vessel, i) => vessel.spillsInto === undefined && (run.booked.spilled[i] ?? 0) > drop)
      .map((v) => v.id),
  );
  return run.events.find(
    (event) => event.code === "pump/drawsAir" || (event.code === "rim/over" && onFloor.has(event.at)),
  )?.t;
}

function verdictOf(run: TransientRun, vessels: readonly VesselTrack[], spilled: number): Verdict {
  if (spilled > drop) return "wet";
  if (run.status !== "finished") return "unsolved";
  if (run.events.some((event) => event.code === "pump/drawsAir")) return "dry";
  const tight = vessels.some((vessel) => vessel.margin !== undefined && vessel.margin < tightMargin);
  return tight ? "tight" : "safe";
}

function eventsOf(
  { design, loops }: PreparedSystem,
  over: OverTimeModel,
  run: TransientRun,
  actionOf: readonly number[],
): WhatIfEvent[] {
  const named = new Map<string, { path: string; name: string }>();
  over.model.vessels.forEach((vessel, i) => {
    named.set(vessel.id, { path: over.places[i]?.path ?? "", name: vessel.id });
  });
  // Drains, loops and outlets go by their paths in the model: two of them may have one name.
  const name = (path: string, text: string) => named.set(path, { path, name: text });
  design.drains.forEach((drain, i) => {
    name(`/drains/${i}`, drain.name);
  });
  for (const index of over.loopOf) {
    const loop = loops[index]?.loop;
    const called = design.loops[index]?.name ?? String(index);
    if (!loop) continue;
    name(loop.path, called);
    loop.outlets.forEach((outlet, o) => {
      name(outlet.path, `${called} outlet ${o + 1}`);
    });
  }
  named.set("topOff", { path: "/topOff", name: "topOff" });
  named.set(siphonId, { path: "/overflow/siphon", name: "overflowSiphon" });
  const told: WhatIfEvent[] = [];
  const seen = new Set<number>();
  for (const event of run.events) {
    if (event.code === "action") {
      // One action of the design may be several of the model.
      const action = actionOf[event.action ?? -1] ?? -1;
      if (seen.has(action)) continue;
      seen.add(action);
      told.push({ t: event.t, code: event.code, path: "", name: "", action });
      continue;
    }
    told.push({ t: event.t, code: event.code, ...(named.get(event.at) ?? { path: "", name: event.at }) });
  }
  return told;
}

function filmOf({ loops }: PreparedSystem, over: OverTimeModel, record: NonNullable<TransientRun["record"]>): Film {
  const weir = over.model.weirs.findIndex((entry) => entry.id === crestId);
  return {
    times: record.times,
    levels: record.levels,
    weirFlow: record.weirFlows[weir] ?? [],
    drainFlow: record.drainIntakes,
    drainFill: record.drainFill,
    outletFlow: loops.map((_, i) => record.outletFlows[over.circuitOf[i] ?? -1] ?? []),
    lineFill: loops.map((_, i) => record.circuitFill[over.circuitOf[i] ?? -1] ?? []),
  };
}
