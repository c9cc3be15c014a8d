import { standardGravity } from "../water/index.ts";
import { boreVelocityHead } from "./boreVelocityHead.ts";
import { type DrainLine, type DrainWater, drainLineHeadLoss } from "./drainLine.ts";

/** Returns the flow of a drain that runs full from the water above it to its outlet: the Q at which
 *  level - outletElevation = sum (f L/D + K + K1/Re) V^2/(2 g), entrance and exit included in K.
 *  line DrainLine   level [m] of the water above the inlet   water DrainWater   guess [m3/s] a flow near by to start from, if known
 *  -> flow [m3/s]; 0 without a fall
 *  Findings: none. Throws: never.
 *  Valid: pipe full of water, air cleared (Froude number above 1 at the start); the energy balance is met to 1e-12 relative,
 *  reality to about 10 %, the spread of fitting losses.
 *  Source: energy equation with Darcy-Weisbach friction; Colebrook-White as in darcyFrictionFactor.
 *  Example: siphonFlow({ bore: 0.05, inletDiameter: 0.05, segments: [{ length: 0, diameter: 0.05, roughness: 0, lossCoefficient: 1.5, laminarLoss: 0 }], valveLoss: 0, inletElevation: 0.8, outletElevation: 0 }, 0.9, { kinematicViscosity: 1e-6 })  ->  0.0067357 */
export function siphonFlow(line: DrainLine, level: number, water: DrainWater, guess = 0): number {
  const drop = level - line.outletElevation;
  // A fall of 1e-30 m moves 1e-17 m3/s at most: nothing, and its logarithms stay clear of underflow.
  if (!(drop > 1e-30)) return 0;
  // Loss against flow is nearly a straight line in logarithms (slope 1 to 2), so the secant rule there needs three or four steps.
  const target = Math.log(drop);
  let x = Math.log(guess > 1e-30 ? guess : firstGuess(line, drop));
  let slope = 1.9;
  let low = Number.NEGATIVE_INFINITY;
  let high = Number.POSITIVE_INFINITY;
  let previousX = x;
  let previousError = 0;
  for (let i = 0; i < 200; i++) {
    const error = Math.log(drainLineHeadLoss(line, Math.exp(x), water)) - target;
    if (error === 0) break;
    if (error > 0) high = Math.min(high, x);
    else low = Math.max(low, x);
    // Differences of errors this small are rounding.
    if (i > 0 && x !== previousX && Math.abs(error) >= 1e-13) slope = (error - previousError) / (x - previousX);
    if (!(slope > 0.5)) slope = 1.9;
    const settled =
      Math.abs(error) < 1e-13 || (i > 0 && Math.abs(error) < 1e-9 && Math.abs(error * previousError) < 1e-17);
    previousX = x;
    previousError = error;
    x -= error / slope;
    // What a secant step leaves is of the order of the product of the last two errors.
    if (settled) break;
    // Late or straying steps give way to halving, which cannot fail: the loss rises with the flow.
    if (!(x > low && x < high) || (i > 12 && high < Infinity && low > -Infinity)) {
      x = high === Infinity ? low + 1 : low === -Infinity ? high - 1 : 0.5 * (low + high);
    }
    if (Math.abs(x - previousX) <= 2e-14) break;
  }
  return Math.exp(x);
}

/** Flow [m3/s] with f = 0.022 throughout; free outfall of the bore where a line has next to no losses. */
function firstGuess(line: DrainLine, drop: number): number {
  let headPerSquare = line.valveLoss > 0 ? line.valveLoss * boreVelocityHead(1, line.bore) : 0;
  for (const segment of line.segments) {
    const k = (0.022 * segment.length) / segment.diameter + segment.lossCoefficient;
    headPerSquare += Math.max(0, k) * boreVelocityHead(1, segment.diameter);
  }
  return Math.sqrt(drop / Math.max(headPerSquare, boreVelocityHead(1, line.bore)));
}

/** Returns the valve loss that makes a full siphon carry exactly a flow: K = (drop - loss without valve) / (V^2/(2 g)), V in the bore.
 *  line DrainLine (its own valveLoss is not counted)   targetFlow [m3/s]   level [m]   water DrainWater
 *  -> K [-] to put in valveLoss, or undefined where even an open valve cannot pass the flow, or none is asked for
 *  Findings: none. Throws: never.
 *  Valid: as siphonFlow, of which it is the exact inverse.
 *  Source: energy equation, solved for K.
 *  Example: siphonValveLossFor({ bore: 0.05, inletDiameter: 0.05, segments: [{ length: 0, diameter: 0.05, roughness: 0, lossCoefficient: 1.5, laminarLoss: 0 }], valveLoss: 0, inletElevation: 0.8, outletElevation: 0 }, 0.002, 0.9, { kinematicViscosity: 1e-6 })  ->  15.513 */
export function siphonValveLossFor(
  line: DrainLine,
  targetFlow: number,
  level: number,
  water: DrainWater,
): number | undefined {
  const drop = level - line.outletElevation;
  if (!(drop > 0) || !(targetFlow > 0)) return undefined;
  const open = { ...line, valveLoss: 0 };
  const spare = drop - drainLineHeadLoss(open, targetFlow, water);
  return spare >= 0 ? spare / boreVelocityHead(targetFlow, line.bore) : undefined;
}

/** What decides the pressure at the top of a siphon. */
export interface SiphonCrest {
  /** Absolute pressure on the water above the inlet [Pa]. */
  readonly surfacePressure: number;
  /** Density [kg/m3]. */
  readonly density: number;
  /** Level of the water above the inlet [m]. */
  readonly level: number;
  /** Highest point of the water in the pipe [m]. */
  readonly crestElevation: number;
  /** Mean speed there [m/s]. */
  readonly velocity: number;
  /** Head lost from the inlet up to there, entrance included [m]. */
  readonly headLoss: number;
}

/** Returns the absolute pressure at the highest point of a running siphon:
 *  p = p_surface - rho g (z_crest - level + V^2/(2 g) + h_loss). Compare it with the vapour pressure: near it the siphon breaks.
 *  crest SiphonCrest   -> absolute pressure [Pa]; a value below the vapour pressure cannot exist and says the siphon breaks
 *  Findings: none. Throws: never.
 *  Valid: steady flow, pipe full; dissolved air comes out well before the vapour pressure, so keep several metres in hand.
 *  Source: Bernoulli's equation with losses.
 *  Example: siphonCrestPressure({ surfacePressure: 101325, density: 1000, level: 0, crestElevation: 1, velocity: 2, headLoss: 0.5 })  ->  84615 */
export function siphonCrestPressure(crest: SiphonCrest): number {
  const lift = crest.crestElevation - crest.level + crest.headLoss;
  return crest.surfacePressure - crest.density * (standardGravity * lift + 0.5 * crest.velocity ** 2);
}
