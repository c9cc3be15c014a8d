import { evaluateMonotoneCubic, slopeOfMonotoneCubic } from "../pumps/monotoneCubic.ts";
import type { NormalisedCurve } from "../pumps/pumpAtSpeed.ts";
import type { PumpLink } from "./model.ts";

/** A pump link at its speed as the inner loop reads it. Where one power law describes it (`single`), its terms are brought to the
 *  speed once: H = shutoff - coefficient Q^exponent up to lastFlow, straight on from there. SI throughout. */
export interface CompiledPump {
  /** The link it was made from: another object in `net.pumps` means that the pump was changed. */
  readonly link: PumpLink;
  readonly stopped: boolean;
  readonly single: boolean;
  /** Head at no flow [m]. */
  readonly shutoff: number;
  readonly coefficient: number;
  readonly exponent: number;
  readonly lastFlow: number;
  readonly lastHead: number;
  readonly lastSlope: number;
  /** Backward h = -shutoff + backQuadratic Q|Q| + backLinear Q; forward, a stopped pump loses stoppedCoefficient Q^2. */
  readonly backQuadratic: number;
  readonly backLinear: number;
  readonly stoppedCoefficient: number;
}

/** Below this speed ratio a pump stands still: the affinity laws would divide a flow by nothing. */
const leastSpeed = 1e-6;

/** The terms of a pump link at its speed. */
export function compilePump(link: PumpLink): CompiledPump {
  const { speedRatio, upper, lower, weight } = link.pump;
  const { curve } = upper;
  const stopped = !(speedRatio > leastSpeed);
  const s = stopped ? 0 : speedRatio / upper.speedRatio;
  const single = weight === 1 && curve.cubic === undefined;
  const c = curve.exponent;
  const lastTerm = single ? curve.coefficient * c * curve.lastFlow ** (c - 1) : 0;
  const forward = weight * stoppedTerm(upper, link) + (weight === 1 ? 0 : (1 - weight) * stoppedTerm(lower, link));
  const mixed = (of: (entry: NormalisedCurve) => number) =>
    weight === 1 ? of(upper) : (1 - weight) * of(lower) + weight * of(upper);
  const back = link.reverseCoefficient;
  return {
    link,
    stopped,
    single,
    shutoff: stopped ? 0 : mixed((entry) => entry.curve.shutoffHead * (speedRatio / entry.speedRatio) ** 2),
    coefficient: single && !stopped ? curve.coefficient * s ** (2 - c) : 0,
    exponent: c,
    lastFlow: s * curve.lastFlow,
    lastHead: s * s * curve.lastHead,
    lastSlope: s * lastTerm,
    backQuadratic: back ?? (stopped ? forward : mixed(({ curve: one }) => one.shutoffHead / one.lastFlow ** 2)),
    backLinear:
      back !== undefined || stopped
        ? 0
        : mixed((entry) => ((speedRatio / entry.speedRatio) * entry.curve.shutoffHead) / entry.curve.lastFlow / 10),
    stoppedCoefficient: forward,
  };
}

/** What a stopped pump loses forward [s2/m5]. H = n^2 H0 - k Q^2 leaves -k Q^2 at n = 0, whatever speed it was measured at; other
 *  laws have no such limit, so the coefficient given for backward flow serves, or the square through the ends of the curve. */
function stoppedTerm({ curve }: NormalisedCurve, link: PumpLink): number {
  if (curve.cubic === undefined && curve.exponent === 2) return curve.coefficient;
  return link.reverseCoefficient ?? (curve.shutoffHead - curve.lastHead) / curve.lastFlow ** 2;
}

/** Writes head loss h(Q) = -H(Q) [m] and dh/dQ [s/m2] of a pump at flow q [m3/s] into entry i; falling heads make h rise. */
export function pumpLoss(pump: CompiledPump, q: number, i: number, loss: Float64Array, slope: Float64Array): void {
  if (q < 0) {
    loss[i] = -pump.shutoff + (pump.backLinear - pump.backQuadratic * q) * q;
    slope[i] = pump.backLinear - 2 * pump.backQuadratic * q;
  } else if (pump.stopped) {
    loss[i] = pump.stoppedCoefficient * q * q;
    slope[i] = 2 * pump.stoppedCoefficient * q;
  } else if (!pump.single) blendedLoss(pump, q, i, loss, slope);
  else if (q > pump.lastFlow) {
    loss[i] = pump.lastSlope * (q - pump.lastFlow) - pump.lastHead;
    slope[i] = pump.lastSlope;
  } else {
    const c = pump.exponent;
    // Math.pow costs several times a product, so the common square is spelled out and others take it once.
    const term = pump.coefficient * (c === 2 ? q : q === 0 && c > 1 ? 0 : q ** (c - 1));
    loss[i] = (q === 0 ? 0 : term * q) - pump.shutoff;
    slope[i] = c * term;
  }
}

function blendedLoss(pump: CompiledPump, q: number, i: number, loss: Float64Array, slope: Float64Array): void {
  const { speedRatio, lower, upper, weight } = pump.link.pump;
  loss[i] = 0;
  slope[i] = 0;
  addCurve(upper, speedRatio, weight, q, i, loss, slope);
  if (weight !== 1) addCurve(lower, speedRatio, 1 - weight, q, i, loss, slope);
}

/** Adds a share of one curve's loss, H = s^2 h(Q/s) with s the speed over that of the curve. */
function addCurve(
  { curve, speedRatio: measuredAt }: NormalisedCurve,
  speedRatio: number,
  share: number,
  q: number,
  i: number,
  loss: Float64Array,
  slope: Float64Array,
): void {
  const s = speedRatio / measuredAt;
  const at = q / s;
  let head: number;
  let fall: number;
  if (curve.cubic !== undefined) {
    head = evaluateMonotoneCubic(curve.cubic, at);
    fall = -slopeOfMonotoneCubic(curve.cubic, at);
  } else {
    const c = curve.exponent;
    const inside = at <= curve.lastFlow;
    const flow = inside ? at : curve.lastFlow;
    fall = flow === 0 && c > 1 ? 0 : curve.coefficient * c * (c === 2 ? flow : flow ** (c - 1));
    if (inside) head = curve.shutoffHead - (flow === 0 ? 0 : (fall * flow) / c);
    else head = curve.lastHead - fall * (at - curve.lastFlow);
  }
  loss[i] -= share * s * s * head;
  slope[i] += share * s * fall;
}
