import {
  evaluateMonotoneCubic,
  type MonotoneCubic,
  monotoneCubic,
  slopeOfMonotoneCubic,
} from "../pumps/monotoneCubic.ts";

/** One point of a maker's pressure-drop curve: flow [m3/s] and head loss [m]. */
export interface DevicePoint {
  readonly flow: number;
  readonly headLoss: number;
}

/** A device's loss curve, ready to be evaluated. */
export interface DeviceLoss {
  /** Square law h = coefficient Q|Q| [s2/m5]: through the only point, or through the last of several. */
  readonly coefficient: number;
  /** Head loss [m] over flow [m3/s] from (0, 0) to the last point; undefined with one point or none. */
  readonly curve: MonotoneCubic | undefined;
  /** Last flow that the maker gives [m3/s]. */
  readonly lastFlow: number;
}

/** Head loss of a device at a flow. */
export interface DeviceHeadLoss {
  /** Head loss [m], with the sign of the flow. */
  readonly headLoss: number;
  /** dh/dQ [s/m2]. */
  readonly slope: number;
  /** True beyond the last point given. */
  readonly extrapolated: boolean;
}

/** Loss curve of a device: a monotone cubic through (0, 0) and the points, or a square law through a single point.
 *  points DevicePoint[], any order   -> DeviceLoss
 *  Findings: none. Throws: RangeError naming the point where flows do not rise above 0 or the loss falls.
 *  Valid: points of one clean device.
 *  Source: F. N. Fritsch and J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304.
 *  Example: deviceLoss([{ flow: 0.001, headLoss: 0.5 }]).coefficient  ->  500000 */
export function deviceLoss(points: readonly DevicePoint[]): DeviceLoss {
  const sorted = [...points].sort((one, other) => one.flow - other.flow);
  let before: DevicePoint = { flow: 0, headLoss: 0 };
  const kept: DevicePoint[] = [before];
  for (const point of sorted) {
    if (point.flow === 0 && point.headLoss === 0) continue;
    if (!(point.flow > before.flow) || !(point.headLoss >= before.headLoss)) {
      throw new RangeError(
        `device loss at flow ${point.flow} m3/s is ${point.headLoss} m after ${before.headLoss} m at ${before.flow} m3/s: give rising flows above 0 with losses that do not fall`,
      );
    }
    kept.push(point);
    before = point;
  }
  if (kept.length === 1) return { coefficient: 0, curve: undefined, lastFlow: 0 };
  const coefficient = before.headLoss / (before.flow * before.flow);
  const curve =
    kept.length === 2
      ? undefined
      : monotoneCubic(
          kept.map((point) => point.flow),
          kept.map((point) => point.headLoss),
        );
  return { coefficient, curve, lastFlow: before.flow };
}

/** Head loss of a device at a flow, mirrored for backward flow: the curve up to its last point (Qn, hn), beyond it
 *  h = hn + s (Q - Qn) + (hn/Qn^2)(Q - Qn)^2 with s the slope there; a single point gives h = hn (Q/Qn)^2 throughout.
 *  device DeviceLoss or its points   flow Q [m3/s]   -> DeviceHeadLoss
 *  Findings: none (`extrapolated` tells). Throws: as `deviceLoss` when given points.
 *  Valid: between the points as good as they are; beyond them a square law.
 *  Source: as `deviceLoss`; square law of turbulent flow beyond.
 *  Example: deviceHeadLoss([{ flow: 0.001, headLoss: 0.5 }], 0.0005).headLoss  ->  0.125
 *  Example: deviceHeadLoss([{ flow: 0.001, headLoss: 0.5 }], -0.002)  ->  {"headLoss": -2, "slope": 2000, "extrapolated": true} */
export function deviceHeadLoss(device: DeviceLoss | readonly DevicePoint[], flow: number): DeviceHeadLoss {
  const { coefficient, curve, lastFlow } = isLoss(device) ? device : deviceLoss(device);
  const q = Math.abs(flow);
  const extrapolated = q > lastFlow;
  let headLoss = coefficient * q * q;
  let slope = 2 * coefficient * q;
  if (curve !== undefined) {
    const inside = Math.min(q, lastFlow);
    const beyond = q - inside;
    const end = slopeOfMonotoneCubic(curve, inside);
    headLoss = evaluateMonotoneCubic(curve, inside) + beyond * (end + coefficient * beyond);
    slope = end + 2 * coefficient * beyond;
  }
  return { headLoss: flow < 0 ? -headLoss : headLoss, slope, extrapolated };
}

function isLoss(device: DeviceLoss | readonly DevicePoint[]): device is DeviceLoss {
  return !Array.isArray(device);
}
