import { type Catalogue, findDevice } from "@tidewright/catalogue";
import type { Design, Part } from "@tidewright/design";
import {
  addSoundLevels,
  annualCost,
  annualEnergy,
  circuitCurrent,
  continuousLoadLimit,
  overflowWeirHead,
  secondsPerYear,
  temperatureRiseRate,
  weirUncertainty,
} from "@tidewright/engine";
import { toSI } from "@tidewright/units";
import { animalTargets } from "./animalTargets.ts";
import type {
  AnimalTarget,
  Assessment,
  CostState,
  DeviceState,
  PowerState,
  PumpState,
  TankPumpState,
} from "./assessment.ts";
import { findingsOf } from "./findings/findingsOf.ts";
import { costOverHorizon } from "./states/costOverHorizon.ts";
import { drainStates } from "./states/drainStates.ts";
import { loopStates, outletStates } from "./states/loopStates.ts";
import { overflowSiphonState } from "./states/overflowSiphonState.ts";
import { partStates } from "./states/partStates.ts";
import { priceCurrency } from "./states/priceCurrency.ts";
import { pumpLabel, pumpPrice, pumpStates, tankPumpStates } from "./states/pumpStates.ts";
import { sumpState } from "./states/sumpState.ts";
import { tariffOf } from "./states/tariffOf.ts";
import { returnFlowWish } from "./states/wishes.ts";
import { levelOf } from "./system/levels.ts";
import { type PreparedSystem, withSystem } from "./system/prepare.ts";
import { type SolvedSystem, solveSystem } from "./system/solveSystem.ts";

export interface AssessOptions {
  /** System curves, pump curves and flow intervals for the curve picture; true where nothing is said. */
  readonly curves?: boolean;
}

/** Returns everything a design does when it runs: flows, speeds, heads, levels, drains as a bracket, pumps on their curves, power,
 *  heat, cost, sound, and findings, worst first.
 *  design Design accepted by `checkDesign` and `checkReferences`   catalogue Catalogue   -> Assessment, SI throughout
 *  Findings: every code of `FindingCode`. Throws: never for an accepted document; not converging is a finding.
 *  Valid: steady running state; what happens over time is a matter of its own.
 *  Source: engine, each function with its own. */
export function assess(design: Design, catalogue: Catalogue, options: AssessOptions = {}): Assessment {
  return withSystem(design, catalogue, (system) =>
    describeSystem(system, solveSystem(system), options.curves !== false),
  );
}

/** Returns the assessment of a system that is solved already. Source: as `assess`. */
export function describeSystem(system: PreparedSystem, solved: SolvedSystem, curves: boolean): Assessment {
  const { design, catalogue, geometry, water } = system;
  const display = levelOf(solved.levels, "display");
  const boxLevel = levelOf(solved.levels, "overflowBox");
  const weirHead = overflowWeirHead(geometry.weir, solved.weirFlow);
  const pumps = pumpStates(system, solved, curves);
  const tankPumps = tankPumpStates(system);
  const parts = partStates(system, solved);
  const loops = loopStates(system, solved, curves);
  const sump = sumpState(system, solved);
  const displayVolume = geometry.displayWaterArea * (display - geometry.displayFloor);
  const pipeVolume = system.loops.reduce((sum, { loop }) => sum + loop.pipeVolume, 0);
  const sumpVolume = sump.chambers.reduce((sum, chamber) => sum + chamber.volume, 0);
  const siphon = overflowSiphonState(system, solved);
  const behind = siphon?.innerLevel ?? boxLevel;
  const boxVolume =
    geometry.boxArea * Math.max(0, boxLevel - geometry.boxFloor) +
    (system.hangOn ? geometry.innerBoxArea * Math.max(0, behind - system.hangOn.innerBoxFloor) : 0);
  const volumes = {
    display: displayVolume,
    sump: sumpVolume,
    pipes: pipeVolume,
    system: displayVolume + sumpVolume + pipeVolume + boxVolume,
  };
  const devices = deviceStates(system);
  const deviceWatts = devices.reduce((sum, device) => sum + (findDevice(catalogue, device.ref)?.watts ?? 0), 0);
  const power = powerState(design, pumps, tankPumps, deviceWatts);
  const wish = returnFlowWish(design, displayVolume);
  const closed = loops.filter((loop) => loop.purpose === "closed").reduce((sum, loop) => sum + loop.flow, 0);
  const tankFlow = tankPumps.reduce((sum, pump) => sum + pump.flow, 0);
  const range = (quantity: NonNullable<Design["wishes"]["totalTurnover"]>) =>
    [toSI(quantity[0], "turnover"), toSI(quantity[1], "turnover")] as const;
  const chillerCapacity = devices.reduce(
    (sum, device) => sum + (findDevice(catalogue, device.ref)?.coolingWatts ?? 0),
    0,
  );
  const heat =
    pumps.reduce((sum, pump) => sum + pump.heatToWater, 0) +
    tankPumps.reduce((sum, pump) => sum + pump.electricalPower, 0);
  const levels = [...pumps.map((pump) => pump.soundLevel), ...tankPumps.map((pump) => pump.soundLevel)].filter(
    (level) => level > 0,
  );
  const assessment: Omit<Assessment, "findings"> = {
    name: design.name,
    water,
    volumes,
    solve: { converged: solved.converged, levelIterations: solved.levelIterations, loops: solved.records },
    overflow: {
      flow: solved.weirFlow,
      weirHead,
      weirHeadRange: [
        overflowWeirHead(geometry.weir, solved.weirFlow * (1 - weirUncertainty)),
        overflowWeirHead(geometry.weir, solved.weirFlow * (1 + weirUncertainty)),
      ],
      displayLevel: display,
      boxLevel,
      displayFreeboard: geometry.displayRim - display,
      boxFreeboard: geometry.boxRim - boxLevel,
      fall: geometry.weirCrest - behind,
      ...(siphon ? { siphon } : {}),
    },
    drains: drainStates(system, solved),
    sump,
    loops,
    parts,
    pumps,
    tankPumps,
    outlets: outletStates(system, solved),
    devices,
    turnover: {
      return: {
        value: displayVolume > 0 ? (3600 * solved.weirFlow) / displayVolume : 0,
        ...(design.wishes.returnTurnover ? { wish: range(design.wishes.returnTurnover) } : {}),
      },
      total: {
        value: displayVolume > 0 ? (3600 * (solved.weirFlow + closed + tankFlow)) / displayVolume : 0,
        ...(design.wishes.totalTurnover ? { wish: range(design.wishes.totalTurnover) } : {}),
      },
      ...(wish ? { returnFlowWish: wish } : {}),
      animals: animalTargetsOf(design),
    },
    power,
    heat: {
      intoWater: heat,
      chillerCapacity,
      riseRate: temperatureRiseRate(heat, volumes.system, water.density, water.specificHeat),
    },
    cost: costState(system, tankPumps, power.annualCost, power.tariffCurrency),
    sound: {
      level: levels.length > 0 ? addSoundLevels(levels) : 0,
      ...(design.wishes.sound ? { wish: toSI(design.wishes.sound, "soundLevel") } : {}),
    },
  };
  return { ...assessment, findings: findingsOf(system, solved, assessment) };
}

function deviceStates(system: PreparedSystem): DeviceState[] {
  return system.loops.flatMap(({ loop, net, state }) =>
    loop.sections.flatMap((section) => {
      const part = section.parts[0];
      const device = part?.device;
      if (!part || !device) return [];
      const link = net.linkIndex.get(section.link) as number;
      return [
        {
          path: part.path,
          ref: device.id,
          label: device.label,
          flow: state.flow[link] ?? 0,
          headLoss: state.loss[link] ?? 0,
          flowRange: device.flowRange,
        },
      ];
    }),
  );
}

function powerState(
  design: Design,
  pumps: readonly PumpState[],
  tankPumps: readonly TankPumpState[],
  deviceWatts: number,
): PowerState {
  const watts = [...pumps, ...tankPumps].reduce((sum, pump) => sum + pump.electricalPower, 0) + deviceWatts;
  const voltage = toSI(design.power.voltage, "voltage");
  const pumpCurrent = pumps.reduce((sum, pump) => sum + pump.current, 0);
  const rest = tankPumps.reduce((sum, pump) => sum + pump.electricalPower, 0) + deviceWatts;
  const tariff = tariffOf(design);
  return {
    watts,
    annualEnergy: annualEnergy(watts),
    annualCost: annualCost(watts, tariff.price),
    tariffCurrency: tariff.currency,
    // The design does not say what hangs on which circuit: all of it is reckoned to hang on the first.
    circuits: (design.power.circuits ?? []).map((circuit, i) => {
      const rating = toSI(circuit.rating, "current");
      const other = circuit.otherLoad ? toSI(circuit.otherLoad, "power") : 0;
      const own = i === 0 ? pumpCurrent + circuitCurrent(rest, voltage) : 0;
      return {
        path: `/power/circuits/${i}`,
        name: circuit.name,
        current: own + circuitCurrent(other, voltage),
        limit: continuousLoadLimit(rating),
        rating,
      };
    }),
  };
}

function costState(
  system: PreparedSystem,
  tankPumps: readonly TankPumpState[],
  yearly: number,
  running: string,
): CostState {
  const { design, catalogue } = system;
  const items: { path: string; label: string; price: number }[] = [];
  for (const { loop, index } of system.loops) {
    loop.pumps.forEach((pump, i) => {
      if (!pump.row) return;
      const price = pumpPrice(pump.row, design.loops[index]?.pumps[i]?.controller === true, catalogue);
      items.push({ path: pump.path, label: pumpLabel(pump.row), price: pump.row.price });
      if (price.controller > 0) items.push({ path: pump.path, label: price.label, price: price.controller });
    });
  }
  tankPumps.forEach((pump) => {
    items.push({ path: pump.path, label: pump.label, price: pump.price });
  });
  const pumps = items.reduce((sum, item) => sum + item.price, 0);
  design.loops.forEach((loop, i) => {
    addDevices(loop.run, `/loops/${i}/run`, catalogue, items);
  });
  const purchase = items.reduce((sum, item) => sum + item.price, 0);
  const horizon = design.wishes.horizon ? toSI(design.wishes.horizon, "time") : 5 * secondsPerYear;
  const currency = priceCurrency(catalogue);
  const total = costOverHorizon(purchase, yearly, horizon / secondsPerYear, { prices: currency, running });
  return { currency, items, pumps, purchase, horizon, ...(total === undefined ? {} : { total }) };
}

function addDevices(
  run: readonly Part[],
  path: string,
  catalogue: Catalogue,
  items: { path: string; label: string; price: number }[],
): void {
  run.forEach((part, i) => {
    const at = `${path}/${i}`;
    if (part.kind === "device") {
      const device = findDevice(catalogue, part.ref);
      if (device) items.push({ path: at, label: device.label, price: device.price });
    } else if (part.kind === "tee")
      part.branches.forEach((branch, b) => {
        addDevices(branch, `${at}/branches/${b}`, catalogue, items);
      });
  });
}

function animalTargetsOf(design: Design): AnimalTarget[] {
  return (design.display.zones ?? []).map((zone) => {
    const row = animalTargets[zone.animals];
    return {
      zone: zone.name,
      animals: row.label,
      practiceTurnover: row.practice,
      ...(row.speed ? { speed: row.speed } : {}),
      source: row.source,
    };
  });
}
