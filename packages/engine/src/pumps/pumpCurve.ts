import { evaluateMonotoneCubic, type MonotoneCubic, monotoneCubic, slopeOfMonotoneCubic } from "./monotoneCubic.ts";

/** One point of a maker's table or chart: flow [m3/s] and head [m]. */
export interface PumpPoint {
  readonly flow: number;
  readonly head: number;
}

/** A head curve at one speed, ready to evaluate. `law` says which form it has:
 *  "power" H = shutoffHead - coefficient Q^exponent, "cubic" a monotone cubic through every point. */
export interface PumpCurve {
  readonly law: "power" | "cubic";
  /** Head at no flow [m]; where the first point is not at zero flow it is extended, see `shutoffExtended`. */
  readonly shutoffHead: number;
  readonly coefficient: number;
  readonly exponent: number;
  readonly cubic: MonotoneCubic | undefined;
  /** Flow and head of the last point given: beyond it the curve is a continuation. */
  readonly lastFlow: number;
  readonly lastHead: number;
  readonly shutoffExtended: boolean;
}

/** Returns a pump's head curve from 2 to 50 points of falling head.
 *  Two points: H = H0 - k Q^2 through both. Three points from zero flow: H = H0 - k Q^c through all three, where c comes
 *  out between 0.5 and 8. Otherwise (or with method "interpolated" and three or more points) a monotone cubic through every point.
 *  Method "fitted" with more than three points: H = H0 - k Q^c by least squares in k for the best c.
 *  points flow [m3/s, rising], head [m, falling]   method "auto" | "interpolated" | "fitted"   -> PumpCurve
 *  Findings: none. Throws: RangeError when points are fewer than 2, more than 50, not rising in flow or rising in head; `pumpPointProblems` lists them without throwing.
 *  Valid: centrifugal and axial pumps with falling curves; as good as the points.
 *  Source: two- and three-term forms: L. A. Rossman, EPANET 2 Users Manual (EPA/600/R-00/057), section 3.1 Pump Curve;
 *  cubic: Fritsch and Butland 1984.
 *  Example: pumpHead(pumpCurve([{ flow: 0, head: 4 }, { flow: 0.002, head: 0 }]), 0.001)  ->  3 */
export function pumpCurve(
  points: readonly PumpPoint[],
  method: "auto" | "interpolated" | "fitted" = "auto",
): PumpCurve {
  const problems = pumpPointProblems(points);
  if (problems.length > 0) throw new RangeError(problems.map((problem) => problem.message).join("; "));
  if (points.length === 2) return twoPointCurve(points[0], points[1]);
  if (method === "fitted" && points.length > 3) return fittedCurve(points);
  if (points.length === 3 && points[0].flow === 0 && method !== "interpolated") {
    const curve = threePointCurve(points[0], points[1], points[2]);
    if (curve) return curve;
  }
  return cubicCurve(points);
}

/** Something wrong with a pump's points: which point (index from 0) and what, in plain words. */
export interface PumpPointProblem {
  readonly index: number;
  readonly kind: "too-few" | "too-many" | "not-finite" | "negative" | "flow-not-rising" | "head-rising";
  readonly message: string;
}

/** Returns everything that is wrong with a pump's points, in order; empty when they make a curve.
 *  points flow [m3/s] and head [m]   -> PumpPointProblem[]
 *  Findings: none. Throws: never.
 *  Valid: any input, NaN included.
 *  Source: a head curve that rises with flow is unstable on a flat system (ISO 9906 curves fall); own rule.
 *  Example: pumpPointProblems([{ flow: 0, head: 1 }, { flow: 1, head: 2 }])[0].kind  ->  "head-rising" */
export function pumpPointProblems(points: readonly PumpPoint[]): PumpPointProblem[] {
  const problems: PumpPointProblem[] = [];
  const add = (index: number, kind: PumpPointProblem["kind"], message: string) =>
    problems.push({ index, kind, message });
  if (points.length < 2) add(0, "too-few", `a pump curve needs at least 2 points; there are ${points.length}`);
  if (points.length > 50) add(50, "too-many", `a pump curve takes at most 50 points; there are ${points.length}`);
  points.forEach((point, i) => {
    if (!Number.isFinite(point.flow) || !Number.isFinite(point.head))
      add(i, "not-finite", `point ${i + 1} is not a number`);
    else if (point.flow < 0 || point.head < 0) add(i, "negative", `point ${i + 1} has a negative flow or head`);
    const before = points[i - 1];
    if (!before) return;
    if (point.flow <= before.flow) add(i, "flow-not-rising", `point ${i + 1}: flow must be greater than at point ${i}`);
    if (point.head > before.head) add(i, "head-rising", `point ${i + 1}: head rises with flow; it must fall`);
  });
  // A flat table would leave the operating point open.
  const last = points.at(-1);
  if (problems.length === 0 && last && points[0].head <= last.head)
    add(points.length - 1, "head-rising", "head does not fall from the first point to the last");
  return problems;
}

function twoPointCurve(first: PumpPoint, last: PumpPoint): PumpCurve {
  const coefficient = (first.head - last.head) / (last.flow ** 2 - first.flow ** 2);
  return powerCurve(first.head + coefficient * first.flow ** 2, coefficient, 2, last, first.flow > 0);
}

function threePointCurve(shutoff: PumpPoint, design: PumpPoint, last: PumpPoint): PumpCurve | undefined {
  const exponent =
    Math.log((shutoff.head - last.head) / (shutoff.head - design.head)) / Math.log(last.flow / design.flow);
  // A nearly square or nearly linear table would give an exponent no impeller has; the cubic then serves better.
  if (!(exponent >= 0.5 && exponent <= 8)) return undefined;
  const coefficient = (shutoff.head - last.head) / last.flow ** exponent;
  return powerCurve(shutoff.head, coefficient, exponent, last, false);
}

function powerCurve(
  shutoffHead: number,
  coefficient: number,
  exponent: number,
  last: PumpPoint,
  extended: boolean,
): PumpCurve {
  return {
    law: "power",
    shutoffHead,
    coefficient,
    exponent,
    cubic: undefined,
    lastFlow: last.flow,
    lastHead: last.head,
    shutoffExtended: extended,
  };
}

/** Least squares of H0 - k Q^c: for each exponent the best (H0, k) is a straight-line fit in Q^c; golden section finds c. */
function fittedCurve(points: readonly PumpPoint[]): PumpCurve {
  const line = (exponent: number) => {
    const u = points.map((point) => point.flow ** exponent);
    const meanU = u.reduce((sum, value) => sum + value, 0) / u.length;
    const meanH = points.reduce((sum, point) => sum + point.head, 0) / points.length;
    let uu = 0;
    let uh = 0;
    points.forEach((point, i) => {
      uu += (u[i] - meanU) ** 2;
      uh += (u[i] - meanU) * (point.head - meanH);
    });
    const coefficient = -uh / uu;
    const shutoffHead = meanH + coefficient * meanU;
    const error = points.reduce((sum, point, i) => sum + (shutoffHead - coefficient * u[i] - point.head) ** 2, 0);
    return { coefficient, shutoffHead, error };
  };
  let low = 1;
  let high = 4;
  const golden = (Math.sqrt(5) - 1) / 2;
  for (let step = 0; step < 60; step++) {
    const a = high - golden * (high - low);
    const b = low + golden * (high - low);
    if (line(a).error < line(b).error) high = b;
    else low = a;
  }
  const exponent = (low + high) / 2;
  const { coefficient, shutoffHead } = line(exponent);
  // The fitted head, not the maker's, so that the continuation beyond the last point does not jump.
  const { flow } = points[points.length - 1];
  const last = { flow, head: shutoffHead - coefficient * flow ** exponent };
  return powerCurve(shutoffHead, coefficient, exponent, last, points[0].flow > 0);
}

function cubicCurve(points: readonly PumpPoint[]): PumpCurve {
  const first = points[0];
  const last = points[points.length - 1];
  let flows = points.map((point) => point.flow);
  let heads = points.map((point) => point.head);
  if (first.flow > 0) {
    // Extend to no flow by the parabola H0 - k Q^2 with the value and slope of the first point: flat at shut-off.
    const slope = Math.min(0, monotoneCubic(flows, heads).b[0]);
    flows = [0, ...flows];
    heads = [first.head - (slope * first.flow) / 2, ...heads];
  }
  return {
    law: "cubic",
    shutoffHead: heads[0],
    coefficient: 0,
    exponent: 0,
    cubic: monotoneCubic(flows, heads),
    lastFlow: last.flow,
    lastHead: last.head,
    shutoffExtended: first.flow > 0,
  };
}

/** Returns the head of a pump at a flow: the curve up to its last point, then straight on with its last slope;
 *  for flow below zero, shut-off head plus the same quadratic rise mirrored (water pushed back through a running pump).
 *  curve PumpCurve   flow [m3/s]   -> head [m]
 *  Findings: none. Throws: never.
 *  Valid: flow from zero to curve.lastFlow; outside, a continuation that callers flag.
 *  Source: as `pumpCurve`; the continuation is our own and only keeps the solver's Newton steps finite.
 *  Example: pumpHead(pumpCurve([{ flow: 0, head: 4 }, { flow: 0.002, head: 0 }]), 0.0005)  ->  3.75 */
export function pumpHead(curve: PumpCurve, flow: number): number {
  if (flow < 0) return curve.shutoffHead + backflowCoefficient(curve) * flow * flow - backflowSlope(curve) * flow;
  if (curve.cubic) return evaluateMonotoneCubic(curve.cubic, flow);
  if (flow > curve.lastFlow) return curve.lastHead + lastSlope(curve) * (flow - curve.lastFlow);
  return curve.shutoffHead - curve.coefficient * power(flow, curve.exponent);
}

/** Returns the slope dH/dQ of a pump's head curve, zero or negative.
 *  curve PumpCurve   flow [m3/s]   -> slope [m per m3/s]
 *  Findings: none. Throws: never.
 *  Valid: as `pumpHead`.
 *  Source: derivative of `pumpHead`.
 *  Example: pumpHeadSlope(pumpCurve([{ flow: 0, head: 4 }, { flow: 0.002, head: 0 }]), 0.001)  ->  -2000 */
export function pumpHeadSlope(curve: PumpCurve, flow: number): number {
  if (flow < 0) return 2 * backflowCoefficient(curve) * flow - backflowSlope(curve);
  if (curve.cubic) return slopeOfMonotoneCubic(curve.cubic, flow);
  if (flow > curve.lastFlow) return lastSlope(curve);
  return flow === 0 && curve.exponent > 1 ? 0 : -curve.coefficient * curve.exponent * power(flow, curve.exponent - 1);
}

function lastSlope(curve: PumpCurve): number {
  return -curve.coefficient * curve.exponent * power(curve.lastFlow, curve.exponent - 1);
}

/** Back through a running pump the head rises at least as steeply as it falls forward. */
function backflowCoefficient(curve: PumpCurve): number {
  return curve.shutoffHead / (curve.lastFlow * curve.lastFlow);
}

function backflowSlope(curve: PumpCurve): number {
  return curve.shutoffHead / curve.lastFlow / 10;
}

/** x^n with the common square and cube spelled out: Math.pow costs several times as much. */
function power(x: number, n: number): number {
  if (n === 2) return x * x;
  if (n === 1) return x;
  return x ** n;
}

/** Returns the flow at which a pump curve gives a head: the inverse of `pumpHead` by bracketed Newton.
 *  curve PumpCurve   head [m]   -> flow [m3/s], negative where head is above shut-off
 *  Findings: none. Throws: never.
 *  Valid: any finite head; to 1e-13 of the last flow.
 *  Source: own inversion of `pumpHead`.
 *  Example: pumpFlow(pumpCurve([{ flow: 0, head: 4 }, { flow: 0.002, head: 0 }]), 3)  ->  0.001 */
export function pumpFlow(curve: PumpCurve, head: number): number {
  if (head >= curve.shutoffHead && curve.shutoffHead <= 0) return 0;
  let low = head > curve.shutoffHead ? -curve.lastFlow : 0;
  let high = curve.lastFlow;
  while (pumpHead(curve, low) < head && low < 0) low *= 2;
  while (pumpHead(curve, high) > head && high < 1e3 * curve.lastFlow) high *= 2;
  let flow = (low + high) / 2;
  for (let step = 0; step < 100; step++) {
    const error = pumpHead(curve, flow) - head;
    if (error > 0) low = flow;
    else high = flow;
    const slope = pumpHeadSlope(curve, flow);
    let next = slope < 0 ? flow - error / slope : Number.NaN;
    if (!(next > low && next < high)) next = (low + high) / 2;
    if (Math.abs(next - flow) <= 1e-13 * curve.lastFlow) return next;
    flow = next;
  }
  return flow;
}
