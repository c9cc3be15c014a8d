import type { Finding } from "../finding.ts";
import type { Scenario } from "./scenario.ts";
import type { Verdict } from "./whatIfResult.ts";

/** One scenario of the sweep in one line. */
export interface SafetyRow {
  readonly scenario: Scenario;
  readonly verdict: Verdict;
  /** Vessel that came nearest to its rim: place, path and margin [m]; negative is over. */
  readonly worst?: { readonly place: string; readonly path: string; readonly margin: number };
  /** Margin of the display, the box and the worst sump chamber [m]; absent where a vessel has no rim. */
  readonly margins: { readonly display?: number; readonly overflowBox?: number; readonly sump?: number };
  readonly timeToTrouble?: number;
  /** What the trouble is: a place that spills or a loop whose pump draws air, by path. */
  readonly troubleAt?: string;
  /** The vessel in question, where the trouble is a rim. */
  readonly troublePlace?: string;
  readonly spilled: number;
  /** Water that came back into the sump [m3]: greatest rise of what it holds. */
  readonly sumpGain: number;
}

/** What the sweep tells beyond its rows. Lengths [m], volumes [m3], flows [m3/s]. */
export interface SafetyAnswers {
  /** Highest depth in the return chamber with which a power cut, check valves counting for nothing, stays `margin` below the rim:
   *  found by solving; absent where none is low enough. */
  readonly highestSafeOperatingLevel?: number;
  /** Margin kept to rims in these answers. */
  readonly margin: number;
  /** Water that comes back into the sump on a power cut. */
  readonly powerCutVolume: number;
  /** Highest level in the sump on a power cut [m above room floor], were its glass high enough. */
  readonly powerCutLevel: number;
  /** Smallest sump with this plan and level: volume and height of glass, margin included. */
  readonly minimumSumpVolume: number;
  readonly minimumSumpHeight: number;
  /** For each outlet in the display that can siphon back: depth below the running level at which air gets in today. */
  readonly siphonBreaks: readonly { readonly path: string; readonly depth: number }[];
  /** Depth below the running level at which all of them must have broken for the sump to hold what falls back, by solving; absent
   *  where even a break at the surface is too deep, Infinity in words where no depth is (then `anySiphonBreak`). */
  readonly deepestSiphonBreak?: number;
  readonly anySiphonBreak: boolean;
  /** Fresh water lost to the air in a day, and what the return chamber must hold above the intake to last `days`. */
  readonly evaporationPerDay: number;
  readonly days: number;
  readonly minimumReturnVolume: number;
  /** Days until the pump draws air with the top-off failed; absent where it never does. */
  readonly daysUntilDry?: number;
  /** What the emergency drain must carry: the whole flow when all others are blocked; and what it can carry with the box full. */
  readonly emergencyFlow: number;
  readonly emergencyCapacity: number;
  /** Smallest distance of the box's level to its rim over all scenarios in which no drain is blocked. */
  readonly boxFreeboard: number;
}

/** Every way to wet a floor that the tool knows, played on a design. */
export interface SafetySweep {
  /** Worst first. */
  readonly rows: readonly SafetyRow[];
  readonly answers: SafetyAnswers;
  readonly findings: readonly Finding[];
}
