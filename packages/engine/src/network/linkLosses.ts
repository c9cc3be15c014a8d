import { evaluateMonotoneCubic, slopeOfMonotoneCubic } from "../pumps/monotoneCubic.ts";
import { type CompiledNetwork, linkType } from "./compile.ts";
import { pumpLoss } from "./pumpLinks.ts";
import type { NetworkState } from "./state.ts";

/** Resistance [s/m2] of a one-way link against backward flow while the solver still looks for its way, and of a shut valve. */
const shutResistance = 1e9;
/** Weight of the energy error of a link that leaks, until it is shut. */
const leakWeight = 1e-4;
/** Conductance left to a shut link [m2/s], so that water behind it still has a head. */
const shutConductance = 1e-13;
/** Smallest slope used as a resistance [s/m2]: at rest a square law has none. It only shortens a step, never moves the answer. */
const leastSlope = 1e-9;

/** Largest last step of 1/sqrt(f) that leaves friction exact to rounding, one for steps on the way, and one for the first. */
export const exactRoots = 3e-4;
/** The same, near enough on the way to the answer. */
export const closeRoots = 0.03;
/** The same, for the first steps. */
export const roughRoots = 0.5;

const halfLog = 2 / Math.LN10;

/** One pass over all links at the present flows and heads: losses h(Q) [m] and slopes dh/dQ [s/m2], the energy left over
 *  r = dH - h [m], the largest of these, and the nodal equations of the next Newton step, A dh = B (Q + r/g) - demand. Losses rise
 *  with flow in every link, which is what makes the whole network have one solution.
 *
 *  Friction follows Colebrook-White above Re 4000. x = 1/sqrt(f) solves x = -2 log10(b + a x), a = 2.51/Re; with
 *  w = (2/ln 10) a / (b + a x) one Halley step from a near x leaves an error of third order, and `x` keeps its value between calls,
 *  so a solver that converges pays one logarithm a pipe. Then dh/dQ = 2 h / (Q (1 + w)). The step is repeated until it is below
 *  `rootStep`.
 *  `teeLoss` and `teeSlope` are those of the legs of tees and zero elsewhere. */
export function assemble(net: CompiledNetwork, state: NetworkState, rootStep: number): void {
  const { from, to, type, friction, quadratic, linear, reynolds, roughnessTerm, oneWay, junctionCount, demand } = net;
  const { flow, head, x, loss, slope, conductance, left, change, shut, values, rhs, curvature, teeLoss, teeSlope } =
    state;
  const { linkTarget } = net.plan;
  const tees = net.tees.count > 0;
  for (let i = 0; i < values.length; i++) values[i] = 0;
  for (let j = 0; j < junctionCount; j++) rhs[j] = -demand[j];
  let worst = 0;
  let worstLink = -1;
  let scale = state.headScale;
  let contentSlope = 0;
  for (let i = 0; i < net.linkCount; i++) {
    if (shut[i] !== 0) {
      loss[i] = 0;
      slope[i] = 0;
      conductance[i] = 0;
      left[i] = 0;
      values[linkTarget[i]] += shutConductance;
      continue;
    }
    const q = flow[i];
    const kind = type[i];
    const aq = Math.abs(q);
    let h: number;
    let g: number;
    let bend: number;
    if (kind === linkType.pipe) {
      const k = quadratic[i];
      const re = reynolds[i] * aq;
      const minor = k * aq;
      bend = k;
      h = (minor + linear[i]) * q;
      g = 2 * minor + linear[i];
      if (re > 4000) {
        const a = 2.51 / re;
        const b = roughnessTerm[i];
        let root = x[i];
        let t = 1;
        for (let step = 0; step < 12; step++) {
          const inner = b + a * root;
          const lead = halfLog * a;
          const v = 1 / (inner + lead);
          const z = lead * v;
          t = 1 - z;
          const newton = (root + halfLog * Math.log(inner)) * t;
          // Half of F F''/F'^2, with w = z/(1 - z) as a series: as good as Halley to third order.
          const move = newton * (1 - 0.5 * newton * lead * a * v * v * (1 + z + z * z));
          root -= move;
          // 1/(1 + w) at the new x.
          t -= z * v * a * move;
          if (Math.abs(move) < rootStep) break;
        }
        x[i] = root;
        const f = friction[i] / (root * root);
        const wall = 2 * t * f;
        h += f * aq * q;
        g += wall * aq;
        bend += (t - 0.5) * wall;
      } else if (re > 2000) {
        const { transition } = net;
        const s = (re - 2000) / 2000;
        const c = 4 * i;
        const f = transition[c] + s * (transition[c + 1] + s * (transition[c + 2] + s * transition[c + 3]));
        const df = transition[c + 1] + s * (2 * transition[c + 2] + s * 3 * transition[c + 3]);
        h += friction[i] * f * aq * q;
        const u = re / 2000;
        g += friction[i] * aq * (2 * f + df * u);
        bend += friction[i] * (f + u * (2 * df + u * (transition[c + 2] + s * 3 * transition[c + 3])));
      } else {
        const laminar = (friction[i] * 64) / reynolds[i];
        h += laminar * q;
        g += laminar;
      }
    } else if (kind === linkType.local) {
      bend = quadratic[i];
      const minor = bend * aq;
      h = (minor + linear[i]) * q;
      g = 2 * minor + linear[i];
    } else if (kind === linkType.pump) {
      const pump = net.pumpTerms[i];
      if (pump !== undefined) pumpLoss(pump, q, i, loss, slope);
      h = loss[i];
      g = slope[i];
      bend = pump?.single ? 0.5 * (pump.exponent - 1) * (g / aq) : 0;
    } else if (kind === linkType.device) {
      const curve = net.devices[i]?.curve;
      h = curve === undefined ? 0 : evaluateMonotoneCubic(curve, aq);
      g = curve === undefined ? 0 : slopeOfMonotoneCubic(curve, aq);
      // Beyond its last point a device goes on as a square law on top of the slope there, as in `deviceHeadLoss`.
      const beyond = curve === undefined ? 0 : aq - curve.x[curve.x.length - 1];
      if (beyond > 0) {
        h += net.quadratic[i] * beyond * beyond;
        g += 2 * net.quadratic[i] * beyond;
      }
      if (q < 0) h = -h;
      bend = 0;
    } else {
      h = shutResistance * q;
      g = shutResistance;
      bend = 0;
    }
    let weight = kind === linkType.closed ? leakWeight : 1;
    if (q < 0 && oneWay[i] !== 0) {
      h += shutResistance * q;
      g += shutResistance;
      bend = 0;
      // A leak only finds out which links to shut: the rounding of a flow, times its resistance, says nothing.
      weight = leakWeight;
    }
    if (tees) {
      h += teeLoss[i];
      g += teeSlope[i];
    }
    if (!(g > leastSlope)) g = leastSlope;
    const a = from[i];
    const b = to[i];
    const p = 1 / g;
    const r = head[a] - head[b] - h;
    loss[i] = h;
    slope[i] = g;
    conductance[i] = p;
    left[i] = r;
    curvature[i] = q < 0 ? -bend : bend;
    contentSlope -= r * change[i];
    const through = q + p * r;
    values[linkTarget[i]] += p;
    rhs[a] -= through;
    rhs[b] += through;
    const error = Math.abs(r) * weight;
    if (!(error <= worst)) {
      worst = error;
      worstLink = i;
    }
    const size = Math.abs(h);
    if (size > scale) scale = size;
  }
  state.lossScale = scale;
  // A maximum forgets what is no number; the sum does not.
  state.energyResidual = Number.isNaN(contentSlope) ? Number.NaN : worst / scale;
  state.worstLink = worstLink;
  state.contentSlope = contentSlope;
}
