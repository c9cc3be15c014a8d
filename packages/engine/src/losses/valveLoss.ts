import {
  evaluateMonotoneCubic,
  type MonotoneCubic,
  monotoneCubic,
  slopeOfMonotoneCubic,
} from "../pumps/monotoneCubic.ts";
import { type FittingLoss, fittingLoss } from "./fittingLoss.ts";
import type { FittingKind, FittingMethod } from "./fittingTable.ts";
import { type ValveKind, valveTable } from "./valveTable.ts";

const openFitting: Readonly<Record<ValveKind, FittingKind>> = {
  ball: "ballValve",
  gate: "gateValve",
  globe: "globeValve",
  butterfly: "butterflyValve",
  diaphragm: "diaphragmValve",
};

/** The last curve of each kind: a drag or a search turns one valve many times. */
const lastCurve = new Map<ValveKind, { readonly openLoss: number; readonly curve: MonotoneCubic }>();

/** ln K over ln opening: monotone between the table's points; its straight ends make K a power of the opening, so that it
 *  goes to Infinity as the valve shuts. */
function logarithmicCurve(kind: ValveKind, openLoss: number): MonotoneCubic {
  const last = lastCurve.get(kind);
  if (last !== undefined && last.openLoss === openLoss) return last.curve;
  const { means, opening, loss } = valveTable[kind];
  const x = opening.map(Math.log);
  const y = loss.map((k) => Math.log(means === "added" ? openLoss + k : openLoss * k));
  const curve = monotoneCubic([...x, 0], [...y, Math.log(openLoss)]);
  lastCurve.set(kind, { openLoss, curve });
  return curve;
}

/** Loss of a hand valve by its opening: a monotone cubic of ln K over ln opening through a published table, which ends in
 *  the loss of the open valve at 1 and in Infinity at 0.
 *  kind ValveKind   opening share of travel [-], 0 shut to 1 open (angle for ball and butterfly, lift for the others)
 *  diameter inner [m]   method for the open valve, "darby" if left out   -> FittingLoss on the velocity head of that bore
 *  Findings: none. Throws: never. An opening above 1 counts as 1, at or below 0 as shut.
 *  Valid: turbulent flow, within the table (ball from 0.28, butterfly from 0.22, gate from 0.125, others from 0.25); below
 *  that K is a power law. Makes differ by a factor of 2. K1 is that of the open valve.
 *  Source: as `valveTable`; open valve as `fittingTable`.
 *  Example: valveLoss("gate", 1, 0.02664, "crane").turbulent  ->  0.178017
 *  Example: valveLoss("gate", 0.5, 0.02664, "crane").turbulent  ->  2.23802 */
export function valveLoss(
  kind: ValveKind,
  opening: number,
  diameter: number,
  method: FittingMethod = "darby",
): FittingLoss {
  const open = fittingLoss(openFitting[kind], method, diameter);
  if (opening >= 1) return open;
  if (!(opening > 0)) return { ...open, turbulent: Number.POSITIVE_INFINITY };
  const curve = logarithmicCurve(kind, open.turbulent);
  return { ...open, turbulent: Math.exp(evaluateMonotoneCubic(curve, Math.log(opening))) };
}

/** Opening at which a valve has a loss: the inverse of `valveLoss`, by Newton's method inside a bracket.
 *  kind ValveKind   diameter inner [m]   targetK turbulent K [-] on the velocity head of that bore   method as in `valveLoss`
 *  -> opening [-]; 1 where even the open valve loses more than the target, 0 for Infinity
 *  Findings: none. Throws: never.
 *  Valid: as `valveLoss`; exact to rounding.
 *  Source: as `valveLoss`.
 *  Example: valveOpeningFor("gate", 0.02664, 2.23802, "crane")  ->  0.5000 */
export function valveOpeningFor(
  kind: ValveKind,
  diameter: number,
  targetK: number,
  method: FittingMethod = "darby",
): number {
  const open = fittingLoss(openFitting[kind], method, diameter).turbulent;
  if (!(targetK > open)) return 1;
  if (targetK === Number.POSITIVE_INFINITY) return 0;
  const curve = logarithmicCurve(kind, open);
  const target = Math.log(targetK);
  if (target >= curve.y[0]) return Math.exp(curve.x[0] + (target - curve.y[0]) / curve.b[0]);
  let i = 1;
  while (curve.y[i] > target) i++;
  let low = curve.x[i - 1];
  let high = curve.x[i];
  let x = (low + high) / 2;
  for (let step = 0; step < 100; step++) {
    const excess = evaluateMonotoneCubic(curve, x) - target;
    if (excess > 0) low = x;
    else high = x;
    let next = x - excess / slopeOfMonotoneCubic(curve, x);
    if (!(next > low && next < high)) next = (low + high) / 2;
    if (Math.abs(next - x) < 1e-15) break;
    x = next;
  }
  return Math.exp(x);
}
