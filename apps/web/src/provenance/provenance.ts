import type { Assessment, DrainState, LoopState, PumpState } from "@tidewright/advice";
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

type Tell = (assessment: Assessment, format: ScreenFormat, index: number) => Provenance | undefined;

const loopOf = (a: Assessment, index: number): LoopState | undefined => a.loops[index] ?? a.loops[0];
const pumpOf = (a: Assessment, index: number): PumpState | undefined => a.pumps[index] ?? a.pumps[0];
const between = (range: readonly [number, number], words: (si: number) => string) =>
  `${words(range[0])} to ${words(range[1])}`;
const plain = (value: number, digits = 3) => String(Number(value.toPrecision(digits)));
const perCent = (share: number) => `${Math.round(share * 100)} %`;

/** The text of every origin, in one place. `index` is the place of the loop, pump, drain, part or circuit in its list. */
const tellers: Readonly<Record<ProvenanceId, Tell>> = {
  pump: (a, f, index) => {
    const pump = pumpOf(a, index);
    return (
      pump && {
        title: "The pump and its speed",
        value: `${pump.label}, ${perCent(pump.speed)}`,
        formula:
          "Flow scales with speed n, head with n², power with n³, unless the maker prints a curve for the speed.",
        inputs: [
          ["Shut-off head at this speed", f(pump.shutoffHead, "head")],
          ["Flow", f(pump.flow, "flow")],
          ["Head", f(pump.head, "head")],
        ],
        source:
          "The maker's curve in the catalogue, through every point, monotone (Fritsch and Butland 1984); affinity laws: ISO 9906.",
      }
    );
  },
  flow: (a, f, index) => {
    const loop = loopOf(a, index);
    return (
      loop && {
        title: "Flow through the pumps",
        value: f(loop.flow, "flow"),
        formula:
          "The flow at which the pump's head equals static head plus all losses: H(Q) = H_static + Σ (f L/D + K) V²/2g.",
        inputs: [
          ["Static head", f(loop.staticHead, "head")],
          ["Total head", f(loop.totalHead, "head")],
          ["Reaches the display", f(loop.flowToDisplay, "flow")],
          ["Solver", a.solve.converged ? "converged" : "did not converge"],
        ],
        range: `${between(loop.flowRange, (q) => f(q, "flow"))}, from the spread between published fitting losses`,
        source:
          "Global gradient method: E. Todini and S. Pilati 1988. Friction: Darcy-Weisbach with Colebrook-White 1939. Fittings: Crane TP-410 unless the job says otherwise.",
      }
    );
  },
  head: (a, f, index) => {
    const loop = loopOf(a, index);
    return (
      loop && {
        title: "Total head",
        value: f(loop.totalHead, "head"),
        formula: "H = H_static + Σ h_friction + Σ h_fittings, along the way of the water",
        inputs: [
          ["Static head, from the levels", f(loop.staticHead, "head")],
          ["Losses on the way", f(loop.totalHead - loop.staticHead, "head")],
          ["Density of the water", f(a.water.density, "density")],
        ],
        source: "Energy equation; levels come from the geometry and the running water, nobody types a head.",
      }
    );
  },
  turnover: (a, f) => ({
    title: "Turnover through the sump",
    value: f(a.turnover.return.value, "turnover"),
    formula: "Flow over the weir divided by the water volume of the display",
    inputs: [
      ["Flow over the weir", f(a.overflow.flow, "flow")],
      ["Display water, less rock", f(a.volumes.display, "volume")],
      ...(a.turnover.return.wish
        ? ([["Wished", between(a.turnover.return.wish, (t) => f(t, "turnover"))]] as const)
        : []),
    ],
    source: "Definition. The wished range is yours; what is usual is common practice, no source.",
  }),
  totalTurnover: (a, f) => ({
    title: "All water movement",
    value: f(a.turnover.total.value, "turnover"),
    formula: "(return + closed loops + pumps in the display) divided by the water volume of the display",
    inputs: [
      ["Display water, less rock", f(a.volumes.display, "volume")],
      ...a.turnover.animals.map(
        (target) => [`${target.zone}: usual`, between(target.practiceTurnover, (t) => f(t, "turnover"))] as const,
      ),
    ],
    source:
      "Definition. Ranges by animals are common practice, no source; turnover says nothing about the speed at a coral.",
  }),
  drain: (a, f, index) => {
    const drain: DrainState | undefined = a.drains[index] ?? a.drains[0];
    return (
      drain && {
        title: `What the ${drain.name} carries`,
        value: f(drain.flow, "flow"),
        formula:
          "Quiet: the smaller of Froude number V/√(gD) = 0.3 and a vented stack 7/24 full. Siphon: Q at which Σ (f L/D + K) V²/2g equals the drop.",
        inputs: [
          ["Quiet up to", f(drain.capacity.quiet, "flow")],
          ["As the trade reckons", f(drain.capacity.practice, "flow")],
          ["As a full siphon", f(drain.capacity.siphon, "flow")],
          ["With the box at its rim", f(drain.capacityAtRim, "flow")],
          ["Froude number", plain(drain.froude)],
          ["Smallest bore", f(drain.bore, "length")],
        ],
        range: "Vented flow is good to about 20 %: swirl and the shape of the rim decide",
        source:
          "Stack: Wyly and Eaton, NBS Monograph 31 (1961). Self-venting: Simpson 1978. Siphon: energy equation. The trade's figure: common practice, no source.",
      }
    );
  },
  weirHead: (a, f) => ({
    title: "Head over the weir",
    value: f(a.overflow.weirHead, "length"),
    formula: "The h at which Q = C (2/3) √(2g) b h^1.5, less where teeth close the crest",
    inputs: [
      ["Flow", f(a.overflow.flow, "flow")],
      ["Display below its rim", f(a.overflow.displayFreeboard, "length")],
      ["Box below its rim", f(a.overflow.boxFreeboard, "length")],
    ],
    range: between(a.overflow.weirHeadRange, (h) => f(h, "length")),
    source: "Th. Rehbock 1929 in ISO 1438:2017; below 30 mm of head the standard no longer holds and 15 % is stated.",
  }),
  watts: (a, f) => ({
    title: "Electrical power",
    value: f(a.power.watts, "power"),
    formula: "Sum over all pumps and devices of the power at their operating points, speed included",
    inputs: a.pumps.map((pump) => [pump.label, f(pump.electricalPower, "power")] as const),
    source: "The maker's power curve at this flow and speed; where only a rated power is printed, scaled with n³.",
  }),
  annualCost: (a, f) => ({
    title: "Cost of running a year",
    value: f(a.power.annualCost, "money"),
    formula: "watts × 8760 h × price of a kilowatt-hour",
    inputs: [
      ["Power", f(a.power.watts, "power")],
      ["Energy a year", f(a.power.annualEnergy, "energy")],
    ],
    source: "Definition; a year of 365 days, running all the time.",
  }),
  sound: (a, f) => ({
    title: "Sound of all pumps together",
    value: f(a.sound.level, "soundLevel"),
    formula: "L = 10 log₁₀ Σ 10^(Li/10)",
    inputs: a.pumps.map((pump) => [pump.label, f(pump.soundLevel, "soundLevel")] as const),
    source: "Levels add as powers: ISO 1683. Each level is the maker's at 1 m; a cabinet is not reckoned.",
  }),
  dangers: (a) => ({
    title: "Findings",
    value: String(a.findings.length),
    formula: "Every rule is checked on the solved system; nothing is hidden by another finding.",
    inputs: (["danger", "warning", "notice"] as const).map(
      (severity) => [severity, String(a.findings.filter((finding) => finding.severity === severity).length)] as const,
    ),
    source: "Each finding names the source of its limit.",
  }),
  volume: (a, f) => ({
    title: "Water in the system",
    value: f(a.volumes.system, "volume"),
    formula: "display less rock + sump chambers + pipes, at the running levels",
    inputs: [
      ["Display", f(a.volumes.display, "volume")],
      ["Sump", f(a.volumes.sump, "volume")],
      ["Pipes", f(a.volumes.pipes, "volume")],
    ],
    source: "Geometry.",
  }),
  powerCut: (a, f) => ({
    title: "Room left for a power cut",
    value: f(a.sump.margin, "volume"),
    formula: "room in the sump − (display down to crest or siphon break + box + pipes)",
    inputs: [
      ["Room up to the sump's rim", f(a.sump.room, "volume")],
      ["Falls back from the display", f(a.sump.drainDown.display, "volume")],
      ["From the overflow box", f(a.sump.drainDown.box, "volume")],
      ["From the pipes", f(a.sump.drainDown.pipes, "volume")],
    ],
    range: "A static estimate: check valves are not relied upon",
    source: "Geometry of the levels.",
  }),
  operatingLevel: (a, f) => ({
    title: "Highest safe running depth",
    value: f(a.sump.safeOperatingLevel, "length"),
    formula: "The depth in the return chamber at which a power cut just fills the sump to its rim",
    inputs: [
      ["Falls back", f(a.sump.drainDown.total, "volume")],
      ["Level after a power cut, above the room's floor", f(a.sump.powerCutLevel, "length")],
    ],
    source: "Geometry of the levels.",
  }),
  heat: (a, f) => ({
    title: "Heat into the water",
    value: f(a.heat.intoWater, "power"),
    formula: "All power of pumps under water; of dry pumps the hydraulic part and a share of their losses",
    inputs: [
      ["Chillers take out", f(a.heat.chillerCapacity, "power")],
      ["Warming with nothing taking it away", `${plain(a.heat.riseRate * 3600, 2)} K an hour`],
    ],
    source: "Energy balance; losses to the room are not reckoned.",
  }),
  circuit: (a, f, index) => {
    const circuit = a.power.circuits[index];
    return (
      circuit && {
        title: `Load on circuit ${circuit.name}`,
        value: f(circuit.current, "current"),
        formula: "I = P / (U cos φ), all loads added",
        inputs: [
          ["Breaker", f(circuit.rating, "current")],
          ["Limit for a load that never rests, 80 %", f(circuit.limit, "current")],
        ],
        source:
          "Continuous loads: US National Electrical Code 210.20(A); elsewhere common practice. Local code and an electrician decide.",
      }
    );
  },
  price: (a, f) => ({
    title: "To buy",
    value: f(a.cost.purchase, "money"),
    formula: "Pumps, the extras they need, devices",
    inputs: a.cost.items.map((item) => [item.label, f(item.price, "money")] as const),
    source: "Prices of the catalogue.",
  }),
  horizonCost: (a, f) => ({
    title: "To buy and run",
    value: f(a.cost.total, "money"),
    formula: "purchase + years × cost of running a year",
    inputs: [
      ["Purchase", f(a.cost.purchase, "money")],
      ["Running, a year", f(a.power.annualCost, "money")],
      ["Over", f(a.cost.horizon, "time")],
    ],
    source: "No interest and no change of the tariff.",
  }),
  pumpPlace: (a, f, index) => {
    const pump = pumpOf(a, index);
    return (
      pump && {
        title: "Place on the pump's curve",
        value: perCent(pump.placeOnCurve),
        formula: "flow / largest flow of the curve at this speed: 0 % is shut-off, 100 % run-out",
        inputs: [["Flow", f(pump.flow, "flow")]],
        source: "Definition; the band to stay in is common practice, no source.",
      }
    );
  },
  efficiency: (a, f, index) => {
    const pump = pumpOf(a, index);
    return (
      pump && {
        title: "Wire to water",
        value: perCent(pump.efficiency),
        formula: "ρ g Q H / electrical power",
        inputs: [
          ["Hydraulic power", f(pump.hydraulicPower, "power")],
          ["Electrical power", f(pump.electricalPower, "power")],
        ],
        source: "ISO 9906:2012, section 3.2.",
      }
    );
  },
  npsh: (a, f, index) => {
    const pump = pumpOf(a, index);
    return (
      pump && {
        title: "Suction head available",
        value: f(pump.npshAvailable, "head"),
        formula: "NPSH = (p_air − p_vapour)/(ρ g) + z_surface − z_impeller − h_suction",
        inputs: [["Density", f(a.water.density, "density")]],
        source: "ISO 9906:2012, section 3.2; vapour pressure after Wagner and Pruss 2002, lowered by the salt.",
      }
    );
  },
  partLoss: (a, f, index) => {
    const part = a.parts[index];
    return (
      part && {
        title: `Head lost: ${part.label}`,
        value: f(part.headLoss, "head"),
        formula: part.darcyFrictionFactor === undefined ? "h = K V²/2g" : "h = f (L/D) V²/2g",
        inputs: [
          ["Speed V", f(part.velocity, "velocity")],
          ["Bore D", f(part.diameter, "length")],
          ...(part.length === undefined ? [] : ([["Length L", f(part.length, "length")]] as const)),
          ...(part.darcyFrictionFactor === undefined
            ? []
            : ([["Darcy friction factor f", plain(part.darcyFrictionFactor, 4)]] as const)),
          ...(part.lossCoefficient === undefined
            ? []
            : ([["Loss coefficient K", plain(part.lossCoefficient)]] as const)),
          ["Reynolds number", plain(part.reynolds)],
        ],
        ...(part.kind === "fitting"
          ? { range: "Published methods differ by 10 to 30 % on elbows, more on tee runs" }
          : {}),
        source:
          part.darcyFrictionFactor === undefined
            ? "Crane TP-410; Hooper 1981; Darby 1999, by the job's choice."
            : "Darcy-Weisbach; Colebrook-White 1939.",
      }
    );
  },
  partSpeed: (a, f, index) => {
    const part = a.parts[index];
    return (
      part && {
        title: `Speed: ${part.label}`,
        value: f(part.velocity, "velocity"),
        formula: "V = Q / (π D²/4)",
        inputs: [
          ["Flow Q", f(part.flow, "flow")],
          ["Bore D", f(part.diameter, "length")],
        ],
        source: "Continuity. Bores: ASTM D1785 average bore; EN ISO 1452-2 for metric pipe.",
      }
    );
  },
  reynolds: (a, f, index) => {
    const part = a.parts[index];
    return (
      part && {
        title: `Reynolds number: ${part.label}`,
        value: plain(part.reynolds),
        formula: "Re = V D / ν",
        inputs: [
          ["Speed V", f(part.velocity, "velocity")],
          ["Bore D", f(part.diameter, "length")],
          ["Kinematic viscosity ν", f(a.water.kinematicViscosity, "kinematicViscosity")],
        ],
        source: "Viscosity: Sharqawy, Lienhard, Zubair 2010, eq. 22-23; between 2000 and 4000 no curve is right.",
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
): Provenance | undefined {
  return tellers[id](assessment, format, index);
}
