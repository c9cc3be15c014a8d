import type { Assessment, DrainState, LoopState, PumpState } from "@tidewright/advice";
import { englishWords, type Words } from "@tidewright/words";
import type { ScreenFormat } from "../format/useFormat.ts";

/** Numbers whose origin can be asked for. */
export type ProvenanceId =
  | "pump"
  | "flow"
  | "head"
  | "turnover"
  | "totalTurnover"
  | "drain"
  | "weirHead"
  | "watts"
  | "annualCost"
  | "sound"
  | "dangers"
  | "volume"
  | "powerCut"
  | "operatingLevel"
  | "heat"
  | "circuit"
  | "price"
  | "horizonCost"
  | "pumpPlace"
  | "efficiency"
  | "npsh"
  | "partLoss"
  | "partSpeed"
  | "reynolds";

/** Where one number comes from. */
export interface Provenance {
  readonly title: string;
  readonly value: string;
  readonly formula: string;
  readonly inputs: readonly (readonly [label: string, value: string])[];
  /** The honest interval, where one is known. */
  readonly range?: string;
  readonly source: string;
}

type Tell = (
  assessment: Assessment,
  format: ScreenFormat,
  index: number,
  say: Words["say"],
  known: Words["known"],
) => Provenance | undefined;

const loopOf = (a: Assessment, index: number): LoopState | undefined => a.loops[index] ?? a.loops[0];
const pumpOf = (a: Assessment, index: number): PumpState | undefined => a.pumps[index] ?? a.pumps[0];
const between = (range: readonly [number, number], words: (si: number) => string, say: Words["say"]) =>
  say("provenance.between", { low: words(range[0]), high: words(range[1]) });

/** Says that what is bought and what it costs to run are in two currencies. */
const notAdded = ({ cost, power }: Assessment, say: Words["say"]) =>
  say("bench.cost.notAdded", { one: cost.currency, other: power.tariffCurrency });

/** The text of every origin, in one place. `index` is the place of the loop, pump, drain, part or circuit in its list. */
const tellers: Readonly<Record<ProvenanceId, Tell>> = {
  pump: (a, f, index, say) => {
    const pump = pumpOf(a, index);
    return (
      pump && {
        title: say("provenance.pump.title"),
        value: `${pump.label}, ${f.perCent(pump.speed)}`,
        formula: say("provenance.pump.formula"),
        inputs: [
          [say("provenance.pump.shutoff"), f(pump.shutoffHead, "head")],
          [say("provenance.flow"), f(pump.flow, "flow")],
          [say("provenance.head"), f(pump.head, "head")],
        ],
        source: say("provenance.pump.source"),
      }
    );
  },
  flow: (a, f, index, say) => {
    const loop = loopOf(a, index);
    return (
      loop && {
        title: say("provenance.flow.title"),
        value: f(loop.flow, "flow"),
        formula: say("provenance.flow.formula"),
        inputs: [
          [say("provenance.staticHead"), f(loop.staticHead, "head")],
          [say("provenance.totalHead"), f(loop.totalHead, "head")],
          [say("provenance.reachesDisplay"), f(loop.flowToDisplay, "flow")],
          [say("provenance.solver"), a.solve.converged ? say("provenance.converged") : say("provenance.notConverged")],
        ],
        range: say("provenance.flow.range", { range: between(loop.flowRange, (q) => f(q, "flow"), say) }),
        source: say("provenance.flow.source"),
      }
    );
  },
  head: (a, f, index, say) => {
    const loop = loopOf(a, index);
    return (
      loop && {
        title: say("provenance.head.title"),
        value: f(loop.totalHead, "head"),
        formula: say("provenance.head.formula"),
        inputs: [
          [say("provenance.head.static"), f(loop.staticHead, "head")],
          [say("provenance.head.losses"), f(loop.totalHead - loop.staticHead, "head")],
          [say("provenance.head.density"), f(a.water.density, "density")],
        ],
        source: say("provenance.head.source"),
      }
    );
  },
  turnover: (a, f, _index, say) => ({
    title: say("provenance.turnover.title"),
    value: f(a.turnover.return.value, "turnover"),
    formula: say("provenance.turnover.formula"),
    inputs: [
      [say("provenance.turnover.weir"), f(a.overflow.flow, "flow")],
      [say("provenance.displayWater"), f(a.volumes.display, "volume")],
      ...(a.turnover.return.wish
        ? ([[say("provenance.wished"), between(a.turnover.return.wish, (t) => f(t, "turnover"), say)]] as const)
        : []),
    ],
    source: say("provenance.turnover.source"),
  }),
  totalTurnover: (a, f, _index, say) => ({
    title: say("provenance.totalTurnover.title"),
    value: f(a.turnover.total.value, "turnover"),
    formula: say("provenance.totalTurnover.formula"),
    inputs: [
      [say("provenance.displayWater"), f(a.volumes.display, "volume")],
      ...a.turnover.animals.map(
        (target) =>
          [
            say("provenance.totalTurnover.usual", { zone: target.zone }),
            between(target.practiceTurnover, (t) => f(t, "turnover"), say),
          ] as const,
      ),
    ],
    source: say("provenance.totalTurnover.source"),
  }),
  drain: (a, f, index, say) => {
    const drain: DrainState | undefined = a.drains[index] ?? a.drains[0];
    return (
      drain && {
        title: say("provenance.drain.title", { name: drain.name }),
        value: f(drain.flow, "flow"),
        formula: say("provenance.drain.formula"),
        inputs: [
          [say("provenance.drain.quiet"), f(drain.capacity.quiet, "flow")],
          [say("provenance.drain.practice"), f(drain.capacity.practice, "flow")],
          [say("provenance.drain.siphon"), f(drain.capacity.siphon, "flow")],
          [say("provenance.drain.atRim"), f(drain.capacityAtRim, "flow")],
          [say("provenance.froude"), f.plain(drain.froude)],
          [say("provenance.drain.bore"), f(drain.bore, "length")],
        ],
        range: say("provenance.drain.range"),
        source: say("provenance.drain.source"),
      }
    );
  },
  weirHead: (a, f, _index, say) => ({
    title: say("provenance.weirHead.title"),
    value: f(a.overflow.weirHead, "length"),
    formula: say("provenance.weirHead.formula"),
    inputs: [
      [say("provenance.flow"), f(a.overflow.flow, "flow")],
      [say("provenance.weirHead.display"), f(a.overflow.displayFreeboard, "length")],
      [say("provenance.weirHead.box"), f(a.overflow.boxFreeboard, "length")],
    ],
    range: between(a.overflow.weirHeadRange, (h) => f(h, "length"), say),
    source: say("provenance.weirHead.source"),
  }),
  watts: (a, f, _index, say) => {
    const pumps = [...a.pumps, ...a.tankPumps];
    const devices = a.power.watts - pumps.reduce((sum, pump) => sum + pump.electricalPower, 0);
    return {
      title: say("provenance.watts.title"),
      value: f(a.power.watts, "power"),
      formula: say("provenance.watts.formula"),
      inputs: [
        ...pumps.map((pump) => [pump.label, f(pump.electricalPower, "power")] as const),
        // What is left over binary dust is drawn by devices.
        ...(devices > 1e-6 ? [[say("provenance.watts.devices"), f(devices, "power")] as const] : []),
      ],
      source: say("provenance.watts.source"),
    };
  },
  annualCost: (a, f, _index, say) => ({
    title: say("provenance.annualCost.title"),
    value: f.sum(a.power.annualCost, a.power.tariffCurrency),
    formula: say("provenance.annualCost.formula"),
    inputs: [
      [say("provenance.power"), f(a.power.watts, "power")],
      [say("provenance.energyAYear"), f(a.power.annualEnergy, "energy")],
    ],
    source: say("provenance.annualCost.source"),
  }),
  sound: (a, f, _index, say) => ({
    title: say("provenance.sound.title"),
    value: f(a.sound.level, "soundLevel"),
    formula: "L = 10 log₁₀ Σ 10^(Li/10)",
    inputs: a.pumps.map((pump) => [pump.label, f(pump.soundLevel, "soundLevel")] as const),
    source: say("provenance.sound.source"),
  }),
  dangers: (a, _format, _index, say) => ({
    title: say("provenance.dangers.title"),
    value: String(a.findings.length),
    formula: say("provenance.dangers.formula"),
    inputs: (["danger", "warning", "notice"] as const).map(
      (severity) =>
        [
          say(`provenance.${severity}`),
          String(a.findings.filter((finding) => finding.severity === severity).length),
        ] as const,
    ),
    source: say("provenance.dangers.source"),
  }),
  volume: (a, f, _index, say) => ({
    title: say("provenance.volume.title"),
    value: f(a.volumes.system, "volume"),
    formula: say("provenance.volume.formula"),
    inputs: [
      [say("provenance.volume.display"), f(a.volumes.display, "volume")],
      [say("provenance.volume.sump"), f(a.volumes.sump, "volume")],
      [say("provenance.volume.pipes"), f(a.volumes.pipes, "volume")],
    ],
    source: say("provenance.geometry"),
  }),
  powerCut: (a, f, _index, say) => ({
    title: say("provenance.powerCut.title"),
    value: f(a.sump.margin, "volume"),
    formula: say("provenance.powerCut.formula"),
    inputs: [
      [say("provenance.powerCut.room"), f(a.sump.room, "volume")],
      [say("provenance.powerCut.display"), f(a.sump.drainDown.display, "volume")],
      [say("provenance.powerCut.box"), f(a.sump.drainDown.box, "volume")],
      [say("provenance.powerCut.pipes"), f(a.sump.drainDown.pipes, "volume")],
    ],
    range: say("provenance.powerCut.range"),
    source: say("provenance.levels"),
  }),
  operatingLevel: (a, f, _index, say) => ({
    title: say("provenance.operatingLevel.title"),
    value: f(a.sump.safeOperatingLevel, "length"),
    formula: say("provenance.operatingLevel.formula"),
    inputs: [
      [say("provenance.operatingLevel.fallsBack"), f(a.sump.drainDown.total, "volume")],
      [say("provenance.operatingLevel.level"), f(a.sump.powerCutLevel, "length")],
    ],
    source: say("provenance.levels"),
  }),
  heat: (a, f, _index, say) => ({
    title: say("provenance.heat.title"),
    value: f(a.heat.intoWater, "power"),
    formula: say("provenance.heat.formula"),
    inputs: [
      [say("provenance.heat.chillers"), f(a.heat.chillerCapacity, "power")],
      [say("provenance.heat.rise"), say("provenance.heat.anHour", { kelvin: f.plain(a.heat.riseRate * 3600, 2) })],
    ],
    source: say("provenance.heat.source"),
  }),
  circuit: (a, f, index, say) => {
    const circuit = a.power.circuits[index];
    return (
      circuit && {
        title: say("provenance.circuit.title", { name: circuit.name }),
        value: f(circuit.current, "current"),
        formula: say("provenance.circuit.formula"),
        inputs: [
          [say("provenance.circuit.breaker"), f(circuit.rating, "current")],
          [say("provenance.circuit.limit"), f(circuit.limit, "current")],
        ],
        source: say("provenance.circuit.source"),
      }
    );
  },
  price: (a, f, _index, say, known) => ({
    title: say("provenance.price.title"),
    value: f(a.cost.purchase, "money"),
    formula: say("provenance.price.formula"),
    inputs: a.cost.items.map((item) => [known(item.label), f(item.price, "money")] as const),
    source: say("provenance.price.source"),
  }),
  horizonCost: (a, f, _index, say) => ({
    title: say("provenance.horizonCost.title"),
    value: a.cost.total === undefined ? notAdded(a, say) : f.sum(a.cost.total, a.cost.currency),
    formula: say("provenance.horizonCost.formula"),
    inputs: [
      [say("provenance.horizonCost.purchase"), f(a.cost.purchase, "money")],
      [say("provenance.horizonCost.running"), f.sum(a.power.annualCost, a.power.tariffCurrency)],
      [say("provenance.horizonCost.over"), f(a.cost.horizon, "time")],
    ],
    source: say("provenance.horizonCost.source"),
  }),
  pumpPlace: (a, f, index, say) => {
    const pump = pumpOf(a, index);
    return (
      pump && {
        title: say("provenance.pumpPlace.title"),
        value: f.perCent(pump.placeOnCurve),
        formula: say("provenance.pumpPlace.formula"),
        inputs: [[say("provenance.flow"), f(pump.flow, "flow")]],
        source: say("provenance.pumpPlace.source"),
      }
    );
  },
  efficiency: (a, f, index, say) => {
    const pump = pumpOf(a, index);
    return (
      pump && {
        title: say("provenance.efficiency.title"),
        value: f.perCent(pump.efficiency),
        formula: say("provenance.efficiency.formula"),
        inputs: [
          [say("provenance.efficiency.hydraulic"), f(pump.hydraulicPower, "power")],
          [say("provenance.efficiency.electrical"), f(pump.electricalPower, "power")],
        ],
        source: say("provenance.efficiency.source"),
      }
    );
  },
  npsh: (a, f, index, say) => {
    const pump = pumpOf(a, index);
    return (
      pump && {
        title: say("provenance.npsh.title"),
        value: f(pump.npshAvailable, "head"),
        formula: say("provenance.npsh.formula"),
        inputs: [[say("provenance.density"), f(a.water.density, "density")]],
        source: say("provenance.npsh.source"),
      }
    );
  },
  partLoss: (a, f, index, say, known) => {
    const part = a.parts[index];
    return (
      part && {
        title: say("provenance.partLoss.title", { part: known(part.label) }),
        value: f(part.headLoss, "head"),
        formula: part.darcyFrictionFactor === undefined ? "h = K V²/2g" : "h = f (L/D) V²/2g",
        inputs: [
          [say("provenance.speedV"), f(part.velocity, "velocity")],
          [say("provenance.boreD"), f(part.diameter, "length")],
          ...(part.length === undefined ? [] : ([[say("provenance.lengthL"), f(part.length, "length")]] as const)),
          ...(part.darcyFrictionFactor === undefined
            ? []
            : ([[say("provenance.frictionFactor"), f.plain(part.darcyFrictionFactor, 4)]] as const)),
          ...(part.lossCoefficient === undefined
            ? []
            : ([[say("provenance.lossCoefficient"), f.plain(part.lossCoefficient)]] as const)),
          [say("provenance.reynoldsNumber"), f.plain(part.reynolds)],
        ],
        ...(part.kind === "fitting" ? { range: say("provenance.partLoss.range") } : {}),
        source:
          part.darcyFrictionFactor === undefined
            ? say("provenance.partLoss.fittings")
            : say("provenance.partLoss.friction"),
      }
    );
  },
  partSpeed: (a, f, index, say, known) => {
    const part = a.parts[index];
    return (
      part && {
        title: say("provenance.partSpeed.title", { part: known(part.label) }),
        value: f(part.velocity, "velocity"),
        formula: "V = Q / (π D²/4)",
        inputs: [
          [say("provenance.partSpeed.flow"), f(part.flow, "flow")],
          [say("provenance.boreD"), f(part.diameter, "length")],
        ],
        source: say("provenance.partSpeed.source"),
      }
    );
  },
  reynolds: (a, f, index, say, known) => {
    const part = a.parts[index];
    return (
      part && {
        title: say("provenance.reynolds.title", { part: known(part.label) }),
        value: f.plain(part.reynolds),
        formula: "Re = V D / ν",
        inputs: [
          [say("provenance.speedV"), f(part.velocity, "velocity")],
          [say("provenance.boreD"), f(part.diameter, "length")],
          [say("provenance.reynolds.viscosity"), f(a.water.kinematicViscosity, "kinematicViscosity")],
        ],
        source: say("provenance.reynolds.source"),
      }
    );
  },
};

/** Returns where a number comes from: value, formula, inputs, source; undefined where the number is not there. */
export function provenance(
  id: ProvenanceId,
  assessment: Assessment,
  format: ScreenFormat,
  index = 0,
  words: Words = englishWords,
): Provenance | undefined {
  return tellers[id](assessment, format, index, words.say, words.known);
}
