import type { Design, HangOnModel } from "@tidewright/design";
import { pumpHydraulics } from "@tidewright/design";
import {
  evaporationRate,
  type NetworkLink,
  stoppedPumpCoefficient,
  type TransientCircuit,
  type TransientDrain,
  type TransientModel,
  type TransientPump,
  type TransientSiphon,
  type TransientVessel,
  type TransientWeir,
} from "@tidewright/engine";
import { toSI } from "@tidewright/units";
import { levelOf } from "../system/levels.ts";
import type { PreparedLoop, PreparedSystem } from "../system/prepare.ts";
import type { SolvedSystem } from "../system/solveSystem.ts";

/** A design as vessels and ways between them, with the way back from indices to its parts. */
export interface OverTimeModel {
  readonly model: TransientModel;
  /** Place and path of each vessel. */
  readonly places: readonly { readonly place: string; readonly path: string }[];
  /** Circuit of each loop of the design; undefined where the loop moves no water between vessels. */
  readonly circuitOf: readonly (number | undefined)[];
  /** Loop of each circuit. */
  readonly loopOf: readonly number[];
}

/** Index of the overflow box among the vessels; the display is 0, the sump's chambers follow. */
const boxIndex = 1;
/** Id of the display's crest in the model. Source: own construction. */
export const crestId = "weir";
/** Id of a hang-on overflow's siphon in the model. Source: own construction. */
export const siphonId = "overflowSiphon";
const firstChamber = 2;

/** Plan area of the reservoir [m2]: a container's footprint. It only sets how deep its water stands. Source: common practice, no source. */
const reservoirArea = 0.1;
/** Air where the design says nothing: 22 C at 50 % relative humidity. Source: common practice for living rooms, no source. */
const roomTemperature = 22;
const roomHumidity = 0.5;
/** Lowest intake above the floor of its vessel [m], and that of a line from display or box whose depth nobody gave: the safe guess, since
 *  it siphons down to there. Source: common practice, no source. */
const intakeHeight = 0.03;
/** Run-down and start of small pumps [s]. Source: common practice, no source; it moves levels by less than a millimetre. */
const pumpTimeConstant = 0.5;

/** Returns a design, solved in its running state, as a model that can be simulated from there.
 *  system PreparedSystem   solved SolvedSystem   evaporation: let water be lost to the air   -> OverTimeModel, SI
 *  Source: geometry of the design; engine. */
export function transientModelOf(system: PreparedSystem, solved: SolvedSystem, evaporation: boolean): OverTimeModel {
  const { design, geometry, water } = system;
  const places = [
    { place: "display", path: "/display" },
    { place: "overflowBox", path: "/overflow/box" },
    ...geometry.chambers.map((chamber) => ({ place: `sump.${chamber.id}`, path: chamber.path })),
    ...(design.topOff ? [{ place: "topOff", path: "/topOff" }] : []),
    ...(system.hangOn ? [{ place: "innerBox", path: "/overflow/siphon" }] : []),
  ];
  const indexOf = (place: string): number => {
    const found = places.findIndex((entry) => entry.place === place);
    return found >= 0 ? found : firstChamber + geometry.chambers.length - 1;
  };
  const loopOf: number[] = [];
  const circuits: TransientCircuit[] = [];
  const circuitOf = system.loops.map((prepared) => {
    const circuit = circuitModel(system, solved, prepared, indexOf);
    if (!circuit) return undefined;
    loopOf.push(prepared.index);
    return circuits.push(circuit) - 1;
  });
  const topOff = topOffModel(design, system, indexOf("topOff"));
  return {
    model: {
      water: { kinematicViscosity: water.kinematicViscosity },
      vessels: vesselModels(system, solved),
      weirs: weirModels(system, system.hangOn ? indexOf("innerBox") : boxIndex),
      ...(system.hangOn ? { siphons: siphonModels(system.hangOn, indexOf("innerBox")) } : {}),
      drains: system.drains.map((_, i) => drainOf(system, solved, i, indexOf)),
      circuits,
      ...(topOff ? { topOff } : {}),
      evaporation: evaporation ? evaporationOf(system) : [],
      pumpTimeConstant,
    },
    places,
    circuitOf,
    loopOf,
  };
}

function vesselModels({ design, geometry, hangOn }: PreparedSystem, { levels }: SolvedSystem): TransientVessel[] {
  const metres = (q: { value: number; unit: string }) => toSI(q, "length");
  const around = (a: number, b: number) => 2 * (a + b);
  const { display, overflow, sump } = design;
  const box = around(metres(overflow.box.length), metres(overflow.box.width));
  const vessels: TransientVessel[] = [
    {
      id: "display",
      floor: geometry.displayFloor,
      area: Math.max(1e-4, geometry.displayWaterArea),
      rim: geometry.displayRim,
      rimLength: around(metres(display.length), metres(display.width)),
      startLevel: levelOf(levels, "display"),
    },
    {
      id: "overflowBox",
      floor: geometry.boxFloor,
      area: geometry.boxArea,
      rim: geometry.boxRim,
      rimLength: box,
      // A box inside the tank spills into the tank; one outside, on the floor.
      ...(overflow.kind === "internalBox" ? { spillsInto: 0 } : {}),
      startLevel: levelOf(levels, "overflowBox"),
    },
    ...geometry.chambers.map((chamber, i): TransientVessel => {
      const { length, width } = sump.chambers[i] as (typeof sump.chambers)[number];
      return {
        id: `sump.${chamber.id}`,
        floor: geometry.sumpFloor,
        area: chamber.area,
        rim: geometry.sumpRim,
        rimLength: around(metres(length), metres(width)),
        startLevel: levelOf(levels, `sump.${chamber.id}`),
      };
    }),
  ];
  if (design.topOff)
    vessels.push({
      id: "topOff",
      floor: 0,
      area: reservoirArea,
      rim: Number.POSITIVE_INFINITY,
      rimLength: 0,
      startLevel: toSI(design.topOff.reservoir, "volume") / reservoirArea,
    });
  // Its rim is the weir: water above it is the display's, on both sides of the crest.
  if (hangOn)
    vessels.push({
      id: "innerBox",
      floor: hangOn.innerBoxFloor,
      area: hangOn.innerBoxArea,
      rim: Number.POSITIVE_INFINITY,
      rimLength: 0,
      startLevel: levelOf(levels, "innerBox"),
    });
  return vessels;
}

/** The display's crest into the box behind it, then the baffles; chambers without a baffle between them stand at one level: a baffle of no height. */
function weirModels({ geometry }: PreparedSystem, behind: number): TransientWeir[] {
  const crest: TransientWeir = {
    id: crestId,
    from: 0,
    to: behind,
    weir: geometry.weir,
    crest: geometry.weirCrest,
  };
  const baffles = geometry.chambers.slice(0, -1).map((chamber, i): TransientWeir => {
    const height = chamber.baffle ?? 0;
    return {
      id: `baffle${i}`,
      from: firstChamber + i,
      to: firstChamber + i + 1,
      weir: { length: chamber.baffleWidth, toothOpenShare: 1, toothHeight: 0, crestHeight: height },
      crest: geometry.sumpFloor + height,
    };
  });
  return [crest, ...baffles];
}

function siphonModels({ tubes, mouth }: HangOnModel, inner: number): TransientSiphon[] {
  return [{ id: siphonId, from: inner, to: boxIndex, tubes, mouth }];
}

function drainOf(
  system: PreparedSystem,
  { drains, levels }: SolvedSystem,
  index: number,
  indexOf: (place: string) => number,
): TransientDrain {
  const drain = system.drains[index] as PreparedSystem["drains"][number];
  const line = drains.lines[index] as TransientDrain["line"];
  return {
    id: drain.path,
    from: boxIndex,
    to: indexOf(drain.place),
    kind: system.design.drains[index]?.kind ?? "ventedStandpipe",
    line,
    endElevation: levelOf(levels, drain.place) - drain.depth,
    content: Math.max(1e-5, drain.pipeVolume),
    primed: drains.box.regimes[index] === "siphon" || drains.box.regimes[index] === "beyondSiphon",
  };
}

function circuitModel(
  system: PreparedSystem,
  { levels }: SolvedSystem,
  { loop, index }: PreparedLoop,
  indexOf: (place: string) => number,
): TransientCircuit | undefined {
  const source = indexOf(loop.sourcePlace);
  // Round and round in one vessel: no volume changes.
  if (loop.outlets.every((outlet) => indexOf(outlet.place) === source)) return undefined;
  const { design } = system;
  const pumps = loop.pumps.map((pump, i): TransientPump => {
    const measured = design.loops[index]?.pumps[i]?.backflow;
    const head = pump.row ? pumpHydraulics(pump.row).head : undefined;
    const link = loop.model.links.find((entry) => entry.id === pump.link);
    const own = link?.kind === "pump" ? link.pump.lower : undefined;
    return {
      link: pump.link,
      curves: head ?? (own ? [{ speedRatio: 1, curve: own.curve }] : []),
      speed: pump.speed,
      reverseCoefficient: measured
        ? toSI(measured.head, "head") / toSI(measured.flow, "flow") ** 2
        : head
          ? stoppedPumpCoefficient(fullSpeedCurve(head))
          : 0,
    };
  });
  const links = loop.model.links.map((link): NetworkLink => {
    const pump = pumps.find((entry) => entry.link === link.id);
    if (link.kind !== "pump" || !pump || !(pump.reverseCoefficient > 0)) return link;
    return { ...link, reverseFlow: true, reverseCoefficient: pump.reverseCoefficient };
  });
  const toDisplay = source !== 0 && loop.outlets.some((outlet) => indexOf(outlet.place) === 0);
  const from = design.loops[index]?.from;
  const surface = levelOf(levels, loop.sourcePlace);
  const wished = from?.depth
    ? surface - toSI(from.depth, "length")
    : source >= firstChamber
      ? Math.min(...loop.pumps.map((pump) => pump.elevation))
      : Number.NEGATIVE_INFINITY;
  const floor = floorOf(system, source);
  const intake = Math.max(floor + intakeHeight, wished);
  return {
    id: loop.path,
    network: { ...loop.model, links },
    sourceNode: "source",
    source,
    intakeElevation: Math.min(intake, surface - 1e-3),
    outlets: loop.outlets.map((outlet) => {
      const level = levelOf(levels, outlet.place);
      const elevation = Math.max(floorOf(system, indexOf(outlet.place)), level - outlet.depth);
      return {
        id: outlet.path,
        node: outlet.node,
        vessel: indexOf(outlet.place),
        elevation,
        breakElevation:
          outlet.siphonBreakDepth === undefined ? elevation : Math.max(elevation, level - outlet.siphonBreakDepth),
      };
    }),
    ...(toDisplay ? { upper: 0 } : {}),
    pumps,
    content: Math.max(1e-5, loop.pipeVolume),
    checkValves: loop.model.links.flatMap((link) => (link.checkValve ? [link.id] : [])),
  };
}

/** Floor of a vessel [m above room floor]. */
function floorOf({ geometry }: PreparedSystem, vessel: number): number {
  if (vessel === boxIndex) return geometry.boxFloor;
  return vessel < boxIndex ? geometry.displayFloor : geometry.sumpFloor;
}

/** The curve nearest full speed. */
function fullSpeedCurve(head: ReturnType<typeof pumpHydraulics>["head"]) {
  return head.reduce((best, entry) => (entry.speedRatio > best.speedRatio ? entry : best)).curve;
}

function topOffModel(design: Design, { geometry }: PreparedSystem, reservoir: number): TransientModel["topOff"] {
  if (!design.topOff) return undefined;
  const off = geometry.sumpFloor + geometry.operatingLevel;
  const band = design.topOff.band ? toSI(design.topOff.band, "length") : 0.005;
  return {
    reservoir,
    to: firstChamber + geometry.chambers.length - 1,
    flow: toSI(design.topOff.flow, "flow"),
    onLevel: off - band,
    offLevel: off,
  };
}

/** Loss to the air of display and sump, as open pools; a cover lowers it, so it errs on the safe side for dry pumps. */
function evaporationOf({ design, geometry, water }: PreparedSystem): TransientModel["evaporation"] {
  const room = design.room;
  const air = {
    waterTemperature: water.temperature,
    airTemperature: room?.temperature ? toSI(room.temperature, "temperature") : roomTemperature,
    relativeHumidity: room?.relativeHumidity ?? roomHumidity,
    salinity: water.salinity,
  };
  const gross = toSI(design.display.length, "length") * toSI(design.display.width, "length");
  return [
    { vessel: 0, flow: evaporationRate({ ...air, area: gross }) },
    ...geometry.chambers.map((chamber, i) => ({
      vessel: firstChamber + i,
      flow: evaporationRate({ ...air, area: chamber.area }),
    })),
  ];
}
