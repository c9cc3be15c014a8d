import type { ConvergenceRecord, DrainRegime, Water } from "@tidewright/engine";
import type { Finding } from "./finding.ts";

/** Every `path` is an RFC 6901 JSON Pointer into the design, so an answer can be laid on the part it belongs to.
 *  All numbers are SI: m, m2, m3, m3/s, m/s, Pa, W, J, s, A; temperatures in C; turnover in display volumes an hour; shares and ratios without unit;
 *  money in the catalogue's currency; elevations above the room's floor. */
export interface Assessment {
  readonly name: string;
  readonly water: Water;
  readonly volumes: Volumes;
  readonly solve: SolveSummary;
  readonly overflow: OverflowState;
  readonly drains: readonly DrainState[];
  readonly sump: SumpState;
  readonly loops: readonly LoopState[];
  readonly parts: readonly PartState[];
  readonly pumps: readonly PumpState[];
  readonly tankPumps: readonly TankPumpState[];
  readonly outlets: readonly OutletState[];
  readonly devices: readonly DeviceState[];
  readonly turnover: TurnoverState;
  readonly power: PowerState;
  readonly heat: HeatState;
  readonly cost: CostState;
  readonly sound: SoundState;
  /** Worst first. */
  readonly findings: readonly Finding[];
}

/** Water volumes [m3]: display as running less rock, all sump chambers, pipes, and their sum. */
export interface Volumes {
  readonly display: number;
  readonly sump: number;
  readonly pipes: number;
  readonly system: number;
}

/** How the numbers came about: one convergence record a loop, and the level iterations around them. */
export interface SolveSummary {
  readonly converged: boolean;
  readonly levelIterations: number;
  readonly loops: readonly ConvergenceRecord[];
}

/** The weir and the box: flow over the crest, head on it, elevations of both surfaces, distances to the rims. */
export interface OverflowState {
  readonly flow: number;
  readonly weirHead: number;
  /** Honest interval of the weir head [m, m]: the weir formula below 30 mm is good to about 15 % of flow. */
  readonly weirHeadRange: readonly [number, number];
  readonly displayLevel: number;
  readonly boxLevel: number;
  /** Display rim minus display level; box rim minus box level [m]; negative is over the rim. */
  readonly displayFreeboard: number;
  readonly boxFreeboard: number;
  /** Weir crest minus the level behind it: a positive fall keeps the weir free. */
  readonly fall: number;
  /** The siphon of an overflow that hangs on the glass; absent for every other. */
  readonly siphon?: OverflowSiphonState;
}

/** A hang-on overflow's siphon as it runs. */
export interface OverflowSiphonState {
  readonly tubes: number;
  readonly bore: number;
  /** Level of the box inside [m above room floor], and what it stands above the box outside [m]: the head that the tubes ask for. */
  readonly innerLevel: number;
  readonly head: number;
  readonly velocity: number;
  /** V / sqrt(g D). */
  readonly froude: number;
  /** Water that the lower ends have over them when everything has drained down [m]; negative is air in the tubes. */
  readonly standingCover: number;
  /** Suction at the crest as a column of this water, and what is left of it to vapour pressure [m]. */
  readonly crestVacuum: number;
  readonly vacuumMargin: number;
  /** Share of the dissolved air that the water lets go at the crest [-]. */
  readonly airReleased: number;
  /** Siphon lost: time until the display runs over, or until the return pump draws air if that comes first [s]. */
  readonly timeToTrouble: number;
  readonly overflows: boolean;
  /** Water that the display takes up to its rim, and what the return pumps can lift [m3]. */
  readonly freeVolume: number;
  readonly pumpable: number;
}

export interface DrainState {
  readonly path: string;
  readonly name: string;
  readonly role: "main" | "secondary" | "emergency";
  readonly kind: "ventedStandpipe" | "throttledSiphon" | "openChannel" | "dryStandpipe";
  readonly flow: number;
  readonly regime: DrainRegime;
  /** V / sqrt(g D), full bore. */
  readonly froude: number;
  readonly velocity: number;
  /** Smallest bore of the line [m]. */
  readonly bore: number;
  /** Elevation of the rim of the inlet, and of the water over it. */
  readonly inletElevation: number;
  readonly submergence: number;
  /** The bracket: quiet and vented, the trade's rule of thumb, full siphon [m3/s]. */
  readonly capacity: { readonly quiet: number; readonly practice: number; readonly siphon: number };
  /** What it could carry with the box full to its rim [m3/s]. */
  readonly capacityAtRim: number;
  /** Opening of its valve, where it has one: as found for the wished share, or as given. */
  readonly valveOpening?: number;
  /** True where the opening was found by solving for the share. */
  readonly valveSolved?: boolean;
}

export interface ChamberState {
  readonly id: string;
  readonly path: string;
  readonly level: number;
  readonly depth: number;
  readonly area: number;
  readonly volume: number;
}

export interface SumpState {
  readonly chambers: readonly ChamberState[];
  readonly rim: number;
  /** Water that falls back on a power cut [m3], by where it comes from; a static estimate. */
  readonly drainDown: {
    readonly display: number;
    readonly box: number;
    readonly pipes: number;
    readonly total: number;
  };
  /** Room between the running levels and the rim [m3]; none where a chamber runs over as it is, whatever the others could hold. */
  readonly room: number;
  /** room - drainDown.total [m3]; negative is a wet floor. */
  readonly margin: number;
  /** Level after the power cut [m above room floor], if the rim were no limit. */
  readonly powerCutLevel: number;
  /** Highest depth in the return chamber that still takes the drain-down [m above sump floor]; 0 where a chamber before it runs over. */
  readonly safeOperatingLevel: number;
}

/** One pressurised circuit seen from its pumps. */
export interface LoopState {
  readonly path: string;
  readonly name: string;
  readonly purpose: "return" | "closed" | "side";
  /** Flow through the pumps, and what of it reaches the display [m3/s]. */
  readonly flow: number;
  readonly flowToDisplay: number;
  readonly staticHead: number;
  readonly totalHead: number;
  /** Head the system asks for at each pump flow; the operating point lies on it. */
  readonly systemCurve: SystemCurveSamples;
  /** Honest interval of the flow from the spread between fitting-loss methods [m3/s, m3/s]. */
  readonly flowRange: readonly [number, number];
}

export interface Curve {
  readonly flow: readonly number[];
  readonly head: readonly number[];
}

/** A system curve with what of each pump flow reaches the display [m3/s]; both rise together. */
export interface SystemCurveSamples extends Curve {
  readonly toDisplay: readonly number[];
}

/** One part of a run as it works: where, how fast, what it costs in head. */
export interface PartState {
  readonly path: string;
  readonly kind: "pipe" | "fitting" | "valve" | "device" | "outlet" | "tee" | "areaChange";
  readonly label: string;
  readonly flow: number;
  readonly velocity: number;
  readonly reynolds: number;
  readonly diameter: number;
  readonly headLoss: number;
  /** Length and darcyFrictionFactor for pipes, K for the rest. */
  readonly length?: number;
  readonly darcyFrictionFactor?: number;
  readonly lossCoefficient?: number;
  /** Which side: pressure line, suction line or gravity drain. */
  readonly side: "pressure" | "suction" | "drain";
}

export interface PumpState {
  readonly path: string;
  readonly loop: number;
  readonly ref?: string;
  readonly label: string;
  readonly speed: number;
  readonly flow: number;
  readonly head: number;
  readonly shutoffHead: number;
  /** flow / largest flow of its curve at this speed: 0 shut-off, 1 run-out. */
  readonly placeOnCurve: number;
  readonly beyondLastPoint: boolean;
  readonly electricalPower: number;
  readonly hydraulicPower: number;
  /** Hydraulic over electrical power, wire to water. */
  readonly efficiency: number;
  readonly npshAvailable: number;
  readonly soundLevel: number;
  readonly current: number;
  readonly heatToWater: number;
  /** Pump curve at full speed and at this speed, for the curve picture. */
  readonly curves: readonly { readonly speedRatio: number; readonly curve: Curve }[];
  readonly price: number;
}

export interface TankPumpState {
  readonly path: string;
  readonly ref: string;
  readonly label: string;
  readonly flow: number;
  readonly electricalPower: number;
  readonly soundLevel: number;
  readonly price: number;
}

export interface OutletState {
  readonly path: string;
  readonly place: string;
  readonly flow: number;
  readonly jetVelocity: number;
  readonly jetDiameter: number;
  readonly elevation: number;
  readonly submerged: boolean;
}

export interface DeviceState {
  readonly path: string;
  readonly ref: string;
  readonly label: string;
  readonly flow: number;
  readonly headLoss: number;
  readonly flowRange: readonly [number, number];
}

export interface TurnoverState {
  /** Flow over the weir from the sump, [display volumes an hour], with the wished range. */
  readonly return: { readonly value: number; readonly wish?: readonly [number, number] };
  readonly total: { readonly value: number; readonly wish?: readonly [number, number] };
  /** The flow the wishes ask of the return: lowest, aim, highest [m3/s]. */
  readonly returnFlowWish?: { readonly low: number; readonly aim: number; readonly high: number };
  /** Trade ranges and published speed windows for each animal group present. */
  readonly animals: readonly AnimalTarget[];
}

export interface AnimalTarget {
  readonly zone: string;
  readonly animals: string;
  /** Total turnover as the trade has it [display volumes an hour], common practice. */
  readonly practiceTurnover: readonly [number, number];
  /** Speed window [m/s] and where it is published. */
  readonly speed?: readonly [number, number];
  readonly source: string;
}

export interface PowerState {
  readonly watts: number;
  readonly annualEnergy: number;
  readonly annualCost: number;
  readonly tariffCurrency: string;
  readonly circuits: readonly {
    readonly path: string;
    readonly name: string;
    readonly current: number;
    readonly limit: number;
    readonly rating: number;
  }[];
}

export interface HeatState {
  readonly intoWater: number;
  readonly chillerCapacity: number;
  /** Warming of the whole system with nothing taking the heat away [K/s]. */
  readonly riseRate: number;
}

export interface CostState {
  readonly currency: string;
  readonly items: readonly { readonly path: string; readonly label: string; readonly price: number }[];
  /** Pumps and the extras they need. */
  readonly pumps: number;
  readonly purchase: number;
  readonly horizon: number;
  /** Purchase plus running cost over the horizon; absent where the two are in different currencies. */
  readonly total?: number;
}

export interface SoundState {
  readonly level: number;
  readonly wish?: number;
}
