import {
  drainDownTime,
  kindsvaterCarterWeirFlow,
  orificeFlow,
  overflowWeirHead,
  rehbockWeirFlow,
  vNotchWeirFlow,
} from "@tidewright/engine";
import { checksOf } from "./check.ts";

/** Weirs and orifices. */
export const iso1438 = [
  ...checksOf(
    {
      source: "ISO 1438, full-width thin plate after Th. Rehbock 1929, evaluated by fluids 1.0.22",
      tag: "other program",
      tolerance: 0.002,
      why: "fluids rounds Rehbock's constants otherwise (0.0832 and 1.25 mm)",
    },
    [["full-width weir, h 50 mm, p 0.30 m, b 0.40 m, m3/s", 8.439e-3, () => rehbockWeirFlow(0.05, 0.4, 0.3)]],
  ),
  ...checksOf(
    {
      source: "C. E. Kindsvater and R. W. Carter 1957 (ISO 1438), evaluated apart from the project",
      tag: "other program",
      tolerance: 0.001,
      why: "four printed figures",
    },
    [
      ["full width, h 50 mm, p 0.30 m, b 0.40 m, m3/s", 8.34e-3, () => kindsvaterCarterWeirFlow(0.05, 0.4, 0.4, 0.3)],
      [
        "contracted, h 30 mm, p 0.15 m, b 0.30 of 0.60 m, m3/s",
        2.9e-3,
        () => kindsvaterCarterWeirFlow(0.03, 0.3, 0.6, 0.15),
      ],
    ],
  ),
  ...checksOf(
    {
      source: "V. M. Cone 1916, 90 degree notch, Q = 1.343 h^2.48",
      tag: "published",
      tolerance: 0.02,
      why: "two laboratories' fits to a notch differ by up to 2 %",
    },
    [["90 degree notch, h 100 mm, m3/s", 4.447e-3, () => vNotchWeirFlow(0.1, Math.PI / 2)]],
  ),
  ...checksOf(
    {
      source: "Q = Cd (2/3) sqrt(2 g) b h^1.5, Cd 0.602, solved for h, 4 m3/h",
      tag: "analytic",
      tolerance: 0.005,
      why: "three printed figures",
    },
    [
      [
        "head over 0.30 m of open crest, m",
        0.0163,
        () => overflowWeirHead({ length: 0.3, toothOpenShare: 1, toothHeight: 0, crestHeight: Infinity }, 4 / 3600),
      ],
      [
        "head over 0.30 m of crest half closed by teeth, m",
        0.0259,
        () => overflowWeirHead({ length: 0.3, toothOpenShare: 0.5, toothHeight: 1, crestHeight: Infinity }, 4 / 3600),
      ],
    ],
  ),
  ...checksOf(
    {
      source: "E. Torricelli: Q = Cd A sqrt(2 g h) and its integral",
      tag: "analytic",
      tolerance: 5e-4,
      why: "four figures",
    },
    [
      ["orifice of 12 mm under 0.30 m, Cd 0.62, m3/s", 1.701e-4, () => orificeFlow(0.62, Math.PI * 0.006 ** 2, 0.3)],
      ["time to fall from 0.40 to 0.10 m, s", 201.2, () => drainDownTime({ ...tank, endHead: 0.1 })],
      ["time to run empty, s", 402.4, () => drainDownTime({ ...tank, endHead: 0 })],
    ],
  ),
];

const tank = { surfaceArea: 0.27, orificeArea: Math.PI * 0.01 ** 2, dischargeCoefficient: 0.61, startHead: 0.4 };
