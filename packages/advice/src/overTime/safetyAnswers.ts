import type { Catalogue } from "@tidewright/catalogue";
import type { Design } from "@tidewright/design";
import { standpipeFlow, type TransientModel } from "@tidewright/engine";
import { type PreparedSystem, prepareSystem } from "../system/prepare.ts";
import { type SolvedSystem, solveSystem } from "../system/solveSystem.ts";
import { highestSolution } from "./highestSolution.ts";
import { playScenario, tightMargin } from "./playScenario.ts";
import type { SafetyAnswers } from "./safety.ts";
import type { Scenario } from "./scenario.ts";
import { sumpGain } from "./sumpGain.ts";
import { type OverTimeModel, transientModelOf } from "./transientModelOf.ts";
import type { WhatIf } from "./whatIfResult.ts";

/** What the answers are worked out from. */
export interface SweepGround {
  readonly design: Design;
  readonly catalogue: Catalogue;
  readonly system: PreparedSystem;
  readonly solved: SolvedSystem;
  readonly dry: OverTimeModel;
  readonly airy: OverTimeModel;
  readonly days: number;
  readonly played: readonly WhatIf[];
}

/** Kinds in which a drain is blocked: what a box does then is no measure of its freeboard. */
const blocking = new Set([
  "drainBlocked",
  "drainHalfBlocked",
  "twoDrainsBlocked",
  "strainerFurs",
  "overflowSiphonLost",
]);

/** Returns what follows from the scenarios beyond their own rows; each by simulating again with the thing in question changed.
 *  ground SweepGround   -> SafetyAnswers, SI. Source: engine `simulate`; geometry. */
export function safetyAnswers(ground: SweepGround): SafetyAnswers {
  const { design, system, solved, dry, airy, days, played } = ground;
  const { geometry } = system;
  const cut = played.find((result) => result.scenario.kind === "powerCut") as WhatIf;
  const rim = geometry.sumpRim;
  const unbounded = powerCutLevel(ground, dry);
  const floor = geometry.sumpFloor;
  const areas = geometry.chambers.reduce((sum, chamber) => sum + chamber.area, 0);
  const minimumSumpHeight = unbounded + tightMargin - floor;
  const line = highestSolution(
    (depth) => rim - tightMargin - powerCutLevel(ground, modelAt(ground, depth)),
    lowestDepth(ground),
    rim - floor,
    // As the return chamber is filled, so rises the whole sump after the cut, or less.
    { x: geometry.operatingLevel, spare: rim - tightMargin - unbounded, slope: -0.8 },
  );
  const outlets = dry.model.circuits.flatMap((circuit, c) =>
    circuit.outlets.flatMap((outlet, o) => {
      if (circuit.upper !== outlet.vessel) return [];
      const level = dry.model.vessels[outlet.vessel]?.startLevel ?? 0;
      const path = system.loops[dry.loopOf[c] ?? 0]?.loop.outlets[o]?.path ?? "";
      return [{ path, depth: level - outlet.breakElevation }];
    }),
  );
  const deepestNow = Math.max(0, ...outlets.map((outlet) => outlet.depth));
  const holds = (depth: number) => rim - tightMargin - powerCutLevel(ground, withBreaks(dry, depth));
  const crestDepth = Math.max(deepestNow, (dry.model.vessels[0]?.startLevel ?? 0) - geometry.displayFloor);
  // What the display gives for each millimetre, spread over the sump.
  const perDepth = (dry.model.vessels[0]?.area ?? 0) / areas;
  const breaks =
    outlets.length === 0
      ? undefined
      : highestSolution(holds, 0, crestDepth, {
          x: deepestNow,
          spare: holds(deepestNow),
          slope: -Math.max(0.05, perDepth),
        });
  const evaporation = airy.model.evaporation.reduce((sum, entry) => sum + entry.flow, 0) * 86400;
  const last = airy.model.vessels[1 + geometry.chambers.length];
  const intake = Math.max(
    0,
    ...airy.model.circuits
      .filter((circuit) => circuit.source === 1 + geometry.chambers.length)
      .map((circuit) => circuit.intakeElevation - floor),
  );
  const failing = played.find((result) => result.scenario.kind === "topOffFails");
  // Not the first trouble of any kind: a design that runs over has no pump that runs dry for that.
  const dryAt = failing?.events.find((event) => event.code === "pump/drawsAir")?.t;
  const boxMargins = played
    .filter((result) => !blocking.has(result.scenario.kind))
    .flatMap((result) => result.vessels.find((vessel) => vessel.place === "overflowBox")?.margin ?? []);
  const emergency = solved.drains.lines.flatMap((drainLine, i) =>
    design.drains[i]?.role === "emergency"
      ? [standpipeFlow(drainLine, geometry.boxRim, { kinematicViscosity: system.water.kinematicViscosity }).flow]
      : [],
  );
  return {
    ...(line === undefined ? {} : { highestSafeOperatingLevel: line.at }),
    margin: tightMargin,
    powerCutVolume: sumpGain(cut),
    powerCutLevel: unbounded,
    minimumSumpVolume: minimumSumpHeight * areas,
    minimumSumpHeight,
    siphonBreaks: outlets,
    ...(breaks === undefined || breaks.always ? {} : { deepestSiphonBreak: breaks.at }),
    anySiphonBreak: breaks?.always === true,
    evaporationPerDay: evaporation,
    days,
    minimumReturnVolume: evaporation * days + (last?.area ?? 0) * intake,
    ...(dryAt === undefined ? {} : { daysUntilDry: dryAt / 86400 }),
    emergencyFlow: solved.weirFlow,
    emergencyCapacity: emergency.reduce((sum, flow) => sum + flow, 0),
    boxFreeboard: Math.min(...boxMargins),
  };
}

/** A power cut with every check valve standing open: what the answers are measured by. */
function openPowerCut(design: Design): Scenario {
  return {
    id: "own",
    kind: "own",
    subjects: [],
    duration: 3600,
    evaporation: false,
    events: [
      ...design.loops.map((_, loop) => ({ at: 0, action: { kind: "checkValvesLeak" as const, loop, share: 1 } })),
      { at: 0, action: { kind: "powerOff" as const } },
    ],
  };
}

/** Highest level that the sump comes to on a power cut with glass without end [m above room floor]. */
function powerCutLevel({ design, system }: SweepGround, over: OverTimeModel): number {
  const vessels = over.model.vessels.map((vessel, i) =>
    over.places[i]?.place.startsWith("sump.") ? { ...vessel, rim: Number.POSITIVE_INFINITY } : vessel,
  );
  const result = playScenario(system, { ...over, model: { ...over.model, vessels } }, openPowerCut(design), false);
  const highest = result.vessels.filter(({ place }) => place.startsWith("sump.")).map((vessel) => vessel.highest);
  return Math.max(...highest);
}

/** The design with another operating level, solved anew. */
function modelAt({ design, catalogue }: SweepGround, depth: number): OverTimeModel {
  const changed = { ...design, sump: { ...design.sump, operatingLevel: { value: depth, unit: "m" } } };
  const system = prepareSystem(changed, catalogue);
  return transientModelOf(system, solveSystem(system), false);
}

/** Depth at which pumps of the return chamber just lie under water [m]. */
function lowestDepth({ dry, system }: SweepGround): number {
  const last = 1 + system.geometry.chambers.length;
  const intakes = dry.model.circuits
    .filter((circuit) => circuit.source === last)
    .map((circuit) => circuit.intakeElevation - system.geometry.sumpFloor);
  return Math.max(0.005, ...intakes) + 0.005;
}

/** The same system with every siphon of the display broken no deeper than a depth. */
function withBreaks(over: OverTimeModel, depth: number): OverTimeModel {
  const { model } = over;
  const circuits: TransientModel["circuits"] = model.circuits.map((circuit) => ({
    ...circuit,
    outlets: circuit.outlets.map((outlet) => {
      if (outlet.vessel !== circuit.upper) return outlet;
      const level = model.vessels[outlet.vessel]?.startLevel ?? 0;
      const breakElevation = level - depth;
      // A nozzle cannot break deeper than it lies.
      const elevation = Math.min(outlet.elevation, breakElevation);
      return { ...outlet, elevation, breakElevation };
    }),
  }));
  return { ...over, model: { ...model, circuits } };
}
