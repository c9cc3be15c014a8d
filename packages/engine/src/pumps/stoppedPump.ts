import { type PumpCurve, type PumpPoint, pumpHead } from "./pumpCurve.ts";

/** Head over flow squared of a standing centrifugal pump against backward flow, both relative to the best-efficiency point [-].
 *  Source: Suter's curve WH = h/(a^2 + v^2) of a pump of specific speed 25 (rpm, m3/s, m), measured by R. T. Knapp 1937 and
 *  R. M. Donsky 1961, tabulated at 89 angles in E. B. Wylie, V. L. Streeter, Fluid Transients in Systems (1993), and M. H.
 *  Chaudhry, Applied Hydraulic Transients: the 23rd value, at a = 0, v = -1. Books from memory, the table read as the
 *  model library ThermoSysPro (EDF) reprints it.
 *  Example: standingPumpHead  ->  0.692 */
export const standingPumpHead = 0.692;

/** Returns the point of a head curve where the water gains the most power, greatest Q H: a stand-in for the best-efficiency point,
 *  which a head-flow chart does not show. For H = H0 - k Q^2 it is Q = 0.577 of the flow at no head, H = 2/3 H0.
 *  curve PumpCurve   -> flow [m3/s] and head [m]
 *  Findings: none. Throws: never.
 *  Valid: curves given down to low heads; where the last point still lies left of the greatest power, that point is taken. The true
 *  best-efficiency point lies mostly within 20 % in flow, to the left of it, since shaft power still rises there.
 *  Source: own rule; greatest Q H of the power law is Q^c = H0/((c + 1) k).
 *  Example: greatestPowerPoint(pumpCurve([{ flow: 0, head: 3 }, { flow: 0.002, head: 0 }]))  ->  { "flow": 0.0011547, "head": 2 } */
export function greatestPowerPoint(curve: PumpCurve): PumpPoint {
  const power = (flow: number): number => flow * pumpHead(curve, flow);
  // A cubic may have several humps: look everywhere first, then close in on the highest.
  const looks = 64;
  let best = 1;
  for (let i = 2; i <= looks; i++) {
    if (power((i / looks) * curve.lastFlow) > power((best / looks) * curve.lastFlow)) best = i;
  }
  let low = ((best - 1) / looks) * curve.lastFlow;
  let high = (Math.min(best + 1, looks) / looks) * curve.lastFlow;
  const golden = (Math.sqrt(5) - 1) / 2;
  for (let i = 0; i < 60; i++) {
    const a = high - golden * (high - low);
    const b = low + golden * (high - low);
    if (power(a) < power(b)) low = a;
    else high = b;
  }
  const flow = 0.5 * (low + high);
  return { flow, head: pumpHead(curve, flow) };
}

/** Returns the resistance of a standing pump to water that flows back through it: c = 0.692 H / Q^2 at its best-efficiency point, to
 *  be used as head = c Q |Q|.
 *  curve PumpCurve at the speed it was measured   -> c [s2/m5]
 *  Findings: none. Throws: never.
 *  Valid: an estimate for centrifugal pumps whose wheel is held; nothing else is known from a head curve. Published pumps of the higher
 *  specific speeds 147 and 261 stand at about 3 and 1.6 times this value (from memory), of the small pumps of the trade nothing is
 *  published: reckon with half to three times, that is 1.4 to 0.6 times the flow, and take half where too little backward flow would
 *  be the dangerous guess. A wheel free to turn backwards resists more, 2.3 H/Q^2 by the same table at no torque, so a held wheel is
 *  the safe side. Inlet strainers and outlet fittings come on top.
 *  Source: standingPumpHead; best-efficiency point by greatestPowerPoint.
 *  Example: stoppedPumpCoefficient(pumpCurve([{ flow: 0, head: 3 }, { flow: 0.002, head: 0 }]))  ->  1038000 */
export function stoppedPumpCoefficient(curve: PumpCurve): number {
  const { flow, head } = greatestPowerPoint(curve);
  return (standingPumpHead * head) / (flow * flow);
}
