import { craneFullyTurbulentFactor } from "./craneFullyTurbulentFactor.ts";
import { type FittingKind, type FittingMethod, type FittingTableRow, fittingTable } from "./fittingTable.ts";
import { nominalPipeSize } from "./nominalPipeSize.ts";

/** A local loss on the velocity head of its own bore: K = laminar / Re + turbulent. */
export interface LossCoefficients {
  /** K1 [-], which counts at low Reynolds number. */
  readonly laminar: number;
  /** The part of K [-] that stays at high Reynolds number. */
  readonly turbulent: number;
}

/** A fitting's loss and the method that gave it. */
export interface FittingLoss extends LossCoefficients {
  /** The method asked for, or the one that has a row where it has none; "handbook" is a bare K. */
  readonly methodUsed: FittingMethod | "handbook";
}

const inch = 0.0254;
const allMethods = ["crane", "hooper", "darby"] as const;

function byMethod(row: FittingTableRow, method: FittingMethod, diameter: number): FittingLoss | undefined {
  if (method === "crane" && row.crane !== undefined) {
    return { laminar: 0, turbulent: row.crane * craneFullyTurbulentFactor(diameter), methodUsed: method };
  }
  if (method === "hooper" && row.hooper !== undefined) {
    const [laminar, atLargeSize] = row.hooper;
    return { laminar, turbulent: atLargeSize * (1 + inch / diameter), methodUsed: method };
  }
  if (method === "darby" && row.darby !== undefined) {
    const [laminar, ki, kd] = row.darby;
    return { laminar, turbulent: ki * (1 + kd / nominalPipeSize(diameter) ** 0.3), methodUsed: method };
  }
  if (row.fixed !== undefined && row.fixedFrom === method) {
    return { laminar: 0, turbulent: row.fixed.value, methodUsed: method };
  }
  return undefined;
}

/** Loss of a fitting at a bore. Crane: K = n fT. Hooper: K = K1/Re + Kinf (1 + 1 in/D). Darby: K = K1/Re + Ki (1 + Kd/Dn^0.3),
 *  Dn the nominal size in inches.
 *  kind FittingKind   method FittingMethod   diameter D inner [m]   -> FittingLoss on the velocity head of that bore
 *  Findings: none (methodUsed tells where another method had to stand in). Throws: never.
 *  Valid: 10 to 300 mm, any Re for Hooper and Darby, turbulent for Crane. The methods differ by 10 to 30 % on elbows and by a
 *  factor of 2 to 3 on ball valves and tee runs: see `fittingLossSpread`.
 *  Source: as `fittingTable`.
 *  Example: fittingLoss("elbow90", "crane", 0.02664).turbulent  ->  0.66756
 *  Example: fittingLoss("elbow90", "hooper", 0.02664)  ->  {"laminar": 800, "turbulent": 0.78138, "methodUsed": "hooper"} */
export function fittingLoss(kind: FittingKind, method: FittingMethod, diameter: number): FittingLoss {
  const row = fittingTable[kind];
  const asked = byMethod(row, method, diameter);
  if (asked !== undefined) return asked;
  for (const other of allMethods) {
    const found = byMethod(row, other, diameter);
    if (found !== undefined) return found;
  }
  return { laminar: 0, turbulent: row.fixed?.value ?? 0, methodUsed: "handbook" };
}

/** What the methods say of one fitting at one flow. */
export interface FittingLossSpread {
  /** Least K [-] of all methods and of the handbooks' range. */
  readonly low: number;
  /** Greatest K [-]. */
  readonly high: number;
  /** K [-] of each method that has a row. */
  readonly byMethod: Readonly<Partial<Record<FittingMethod, number>>>;
}

/** Range of K that the published methods give for a fitting: K = K1/Re + turbulent part, for each.
 *  kind FittingKind   diameter inner [m]   reynolds [-], above 0   -> FittingLossSpread, K [-]
 *  Findings: none. Throws: never.
 *  Valid: as `fittingLoss`. A spread of methods, not a statistical interval.
 *  Source: as `fittingTable`.
 *  Example: fittingLossSpread("elbow90", 0.02664, 3e4).high  ->  0.8080
 *  Example: fittingLossSpread("union", 0.02664, 3e4)  ->  {"low": 0.04, "high": 0.08, "byMethod": {}} */
export function fittingLossSpread(kind: FittingKind, diameter: number, reynolds: number): FittingLossSpread {
  const row = fittingTable[kind];
  let low = row.fixed?.low ?? Number.POSITIVE_INFINITY;
  let high = row.fixed?.high ?? 0;
  const values: Partial<Record<FittingMethod, number>> = {};
  for (const method of allMethods) {
    const loss = byMethod(row, method, diameter);
    if (loss === undefined) continue;
    const k = loss.laminar / reynolds + loss.turbulent;
    values[method] = k;
    low = Math.min(low, k);
    high = Math.max(high, k);
  }
  return { low, high, byMethod: values };
}
