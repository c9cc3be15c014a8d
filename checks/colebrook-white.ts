import { churchill, colebrook, darcyFrictionFactor, pipeHeadLoss, swameeJain } from "@tidewright/engine";
import { checksOf } from "./check.ts";

const pairs = [
  [4e3, 0, 0.039907],
  [1e4, 0, 0.030883],
  [1e5, 0, 0.01799],
  [1e5, 1e-4, 0.018514],
  [1e5, 1e-3, 0.022175],
  [1e6, 1e-4, 0.013441],
  [1e7, 1e-2, 0.03791],
  [3e4, 6e-5, 0.023646],
] as const;

/** Pipe friction: exact Colebrook-White, laminar flow, and the explicit approximations. */
export const colebrookWhite = [
  ...checksOf(
    {
      source: "C. F. Colebrook 1939, solved exactly by the Lambert W function and by fluids 1.0.22 (Colebrook)",
      tag: "other program",
      tolerance: 4e-5,
      why: "five printed figures of the expected value",
    },
    pairs.map(([re, e, f]) => [`friction factor at Re ${re}, e/D ${e}`, f, () => colebrook(re, e)] as const),
  ),
  ...checksOf(
    {
      source: "L. F. Moody 1944, chart, read at Re 1e5 and e/D 0.001; from memory",
      tag: "published",
      tolerance: 0.02,
      why: "a chart is read to about 2 %",
    },
    [["friction factor from the chart", 0.022, () => darcyFrictionFactor(1e5, 1e-3)]],
  ),
  ...checksOf(
    { source: "Hagen-Poiseuille, f = 64/Re", tag: "analytic", tolerance: 1e-12, why: "exact but for rounding" },
    [
      ["friction factor at Re 1000", 0.064, () => darcyFrictionFactor(1000, 1e-3)],
      [
        "laminar head loss 32 nu L V/(g D^2) of 3 m, 30 mm bore, 10 mm/s, m",
        (32 * 1e-6 * 3 * 0.01) / (9.80665 * 0.03 ** 2),
        () =>
          pipeHeadLoss({
            length: 3,
            diameter: 0.03,
            roughness: 0,
            flow: (Math.PI / 4) * 0.03 ** 2 * 0.01,
            kinematicViscosity: 1e-6,
          }).headLoss,
      ],
    ],
  ),
  ...checksOf(
    {
      source: "S. W. Churchill, Chemical Engineering 84(24) (1977), evaluated by fluids 1.0.22",
      tag: "other program",
      tolerance: 3e-4,
      why: "four printed figures of the expected value",
    },
    (
      [
        [1000, 0.064],
        [2000, 0.03204],
        [2300, 0.03084],
        [3000, 0.04297],
        [4000, 0.04059],
        [1e5, 0.01787],
      ] as const
    ).map(([re, f]) => [`Churchill's factor at Re ${re}, smooth`, f, () => churchill(re, 0)] as const),
  ),
  ...checksOf(
    {
      source: "L. A. Rossman, EPANET 2.2, transition cubic of E. J. Dunlop 1991, evaluated apart from the project",
      tag: "other program",
      tolerance: 0.02,
      why: "EPANET joins the cubic to Swamee and Jain's factor, 1.6 % above the exact one at Re 4000 in a smooth pipe",
    },
    (
      [
        [2300, 0.02917],
        [3000, 0.03307],
        [3500, 0.03861],
        [4000, 0.04055],
      ] as const
    ).map(([re, f]) => [`transition factor at Re ${re}, smooth`, f, () => darcyFrictionFactor(re, 0)] as const),
  ),
  ...checksOf(
    {
      source: "P. K. Swamee and A. K. Jain 1976: its own distance from Colebrook, +0.8 % at Re 1e5 and e/D 0.001",
      tag: "other program",
      tolerance: 0.001,
      why: "the distance is given to 0.1 %",
    },
    [["Swamee-Jain over Colebrook", 1.008, () => swameeJain(1e5, 1e-3) / colebrook(1e5, 1e-3)]],
  ),
];
