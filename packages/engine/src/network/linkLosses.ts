import { evaluateMonotoneCubic, slopeOfMonotoneCubic } from "../pumps/monotoneCubic.ts";
import { type CompiledNetwork, linkType } from "./compile.ts";
import { pumpLoss } from "./pumpLinks.ts";

/** Resistance [s/m2] of a one-way link against backward flow while the solver still looks for its way, and of a shut valve. */
const shutResistance = 1e9;

const halfLog = 2 / Math.LN10;

/** Head loss h(Q) [m] and slope dh/dQ [s/m2] of every link at its flow, into `loss` and `slope`. Losses rise with flow in
 *  every link, which is what makes the whole network have one solution.
 *
 *  Friction follows Colebrook-White exactly above Re 4000. x = 1/sqrt(f) solves x = -2 log10(b + a x), a = 2.51/Re; with
 *  w = (2/ln 10) a / (b + a x) one Halley step from a near x leaves an error of third order, and `x` keeps its value between calls,
 *  so a solver that converges pays one logarithm a pipe. Then dh/dQ = 2 h / (Q (1 + w)). */
export function evaluateLosses(
  net: CompiledNetwork,
  shut: Uint8Array,
  flow: Float64Array,
  x: Float64Array,
  loss: Float64Array,
  slope: Float64Array,
): void {
  const { type, friction, quadratic, linear, reynolds, roughnessTerm, transition, oneWay } = net;
  for (let i = 0; i < net.linkCount; i++) {
    const q = flow[i];
    if (shut[i] !== 0) {
      loss[i] = 0;
      slope[i] = Number.POSITIVE_INFINITY;
      continue;
    }
    const kind = type[i];
    const aq = q < 0 ? -q : q;
    let h: number;
    let g: number;
    if (kind === linkType.pipe) {
      const re = reynolds[i] * aq;
      if (re > 4000) {
        const a = 2.51 / re;
        const b = roughnessTerm[i];
        let root = x[i];
        let inner = b + a * root;
        let w = (halfLog * a) / inner;
        for (let step = 0; step < 12; step++) {
          const residual = root + halfLog * Math.log(inner);
          // Halley: F' = 1 + w, F'' = -w a / inner.
          const newton = residual / (1 + w);
          const change = newton / (1 + (0.5 * newton * w * a) / (inner * (1 + w)));
          root -= change;
          inner = b + a * root;
          w = (halfLog * a) / inner;
          if (change < 1e-4 && change > -1e-4) break;
        }
        x[i] = root;
        const turbulent = (friction[i] / (root * root)) * aq;
        h = turbulent * q;
        g = (2 * turbulent) / (1 + w);
      } else if (re > 2000) {
        const t = (re - 2000) / 2000;
        const k = 4 * i;
        const f = transition[k] + t * (transition[k + 1] + t * (transition[k + 2] + t * transition[k + 3]));
        const df = transition[k + 1] + t * (2 * transition[k + 2] + t * 3 * transition[k + 3]);
        h = friction[i] * f * aq * q;
        g = friction[i] * aq * (2 * f + (df * re) / 2000);
      } else {
        g = (friction[i] * 64) / reynolds[i];
        h = g * q;
      }
      const minor = quadratic[i] * aq;
      h += (minor + linear[i]) * q;
      g += 2 * minor + linear[i];
    } else if (kind === linkType.local) {
      const minor = quadratic[i] * aq;
      h = (minor + linear[i]) * q;
      g = 2 * minor + linear[i];
    } else if (kind === linkType.pump) {
      const pump = net.pumpTerms[i];
      if (pump !== undefined) pumpLoss(pump, q, i, loss, slope);
      h = loss[i];
      g = slope[i];
    } else if (kind === linkType.device) {
      const curve = net.devices[i]?.curve;
      h = curve === undefined ? 0 : evaluateMonotoneCubic(curve, aq);
      g = curve === undefined ? 0 : slopeOfMonotoneCubic(curve, aq);
      if (q < 0) h = -h;
    } else {
      h = shutResistance * q;
      g = shutResistance;
    }
    if (q < 0 && oneWay[i] !== 0) {
      h += shutResistance * q;
      g += shutResistance;
    }
    loss[i] = h;
    slope[i] = g;
  }
}
