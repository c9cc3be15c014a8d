import {
  hydraulicPower,
  npshAvailable,
  parallelFlow,
  pumpAtSpeed,
  pumpCurve,
  pumpHeadAtSpeed,
  seriesHead,
} from "@tidewright/engine";
import { checksOf } from "./check.ts";

/** H = 4 - 1e6 Q^2. */
const parabola = [
  {
    speedRatio: 1,
    curve: pumpCurve([
      { flow: 0, head: 4 },
      { flow: 0.002, head: 0 },
    ]),
  },
];
const full = pumpAtSpeed(parabola, 1);
const slowed = pumpAtSpeed(parabola, 0.7);

/** Pumps: affinity, parallel, series, power and suction. */
export const iso9906 = [
  ...checksOf(
    {
      source: "ISO 9906:2012, section 6.1.2, affinity: Q ~ n, H ~ n^2, worked on H = 4 - 1e6 Q^2",
      tag: "analytic",
      tolerance: 1e-12,
      why: "exact but for rounding",
    },
    [
      ["shut-off head at 0.7 of full speed, m", 1.96, () => pumpHeadAtSpeed(slowed, 0)],
      ["head at half of the new range, m", 1.47, () => pumpHeadAtSpeed(slowed, 0.0007)],
    ],
  ),
  ...checksOf(
    {
      source: "flows add at equal head, heads add at equal flow, worked on H = 4 - 1e6 Q^2",
      tag: "analytic",
      tolerance: 1e-12,
      why: "exact but for rounding",
    },
    [
      ["two in parallel, 4 - 2.5e5 Q^2, flow at 3 m, m3/s", 0.002, () => parallelFlow([full, full], 3)],
      ["two in series, 8 - 2e6 Q^2, head at 1 L/s, m", 6, () => seriesHead([full, full], 0.001)],
    ],
  ),
  ...checksOf(
    { source: "rho g Q H, 3 m3/h to 2.5 m at 1023.34 kg/m3", tag: "analytic", tolerance: 3e-4, why: "four figures" },
    [["hydraulic power, W", 20.91, () => hydraulicPower(1023.34, 3 / 3600, 2.5)]],
  ),
  ...checksOf(
    {
      source: "NPSH of an open sump at 101325 Pa and 25 C, 0.30 m flooded, 0.20 m lost",
      tag: "analytic",
      tolerance: 0.001,
      why: "three figures",
    },
    [
      [
        "NPSH available, m",
        9.89,
        () =>
          npshAvailable({
            surfacePressure: 101325,
            vapourPressure: 3105.2,
            density: 1023.34,
            surfaceElevation: 0.3,
            pumpElevation: 0,
            headLoss: 0.2,
          }),
      ],
    ],
  ),
];
