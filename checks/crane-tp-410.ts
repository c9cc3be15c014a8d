import {
  combiningTeeLoss,
  craneFullyTurbulentFactor,
  darcyFrictionFactor,
  entranceLoss,
  exitLoss,
  fittingLoss,
  hydraulicPower,
  suddenContractionLoss,
  suddenExpansionLoss,
} from "@tidewright/engine";
import { checksOf } from "./check.ts";

const crane = "Crane TP-410 (2009)";
const oneInch = 0.02664;

/** Crane's handbook: fully turbulent factors, fittings and worked examples. */
export const craneTp410 = [
  ...checksOf(
    {
      source: `${crane}, fully turbulent factor of clean steel, nominal schedule 40 bores, as in fluids 1.0.22 (ft_Crane)`,
      tag: "published",
      tolerance: 0.025,
      why: "the handbook prints three decimals: half a unit is 2 to 3 %",
    },
    (
      [
        ["1/2", 0.0158, 0.026],
        ["3/4", 0.02093, 0.024],
        ["1", 0.02664, 0.022],
        ["1 1/4", 0.03505, 0.021],
        ["1 1/2", 0.04089, 0.02],
        ["2", 0.0525, 0.019],
        ["3", 0.07793, 0.017],
        ["4", 0.10226, 0.016],
      ] as const
    ).map(([size, bore, f]) => [`fT of ${size} in pipe`, f, () => craneFullyTurbulentFactor(bore)] as const),
  ),
  ...checksOf(
    {
      source: `${crane}, K = n fT at 1 in, evaluated by fluids 1.0.22`,
      tag: "other program",
      tolerance: 0.008,
      why: "the expected K has three figures",
    },
    (
      [
        ["elbow90", 0.668],
        ["elbow90Bend", 0.445],
        ["elbow90Sweep", 0.313],
        ["elbow45", 0.356],
        ["teeRun", 0.445],
        ["teeBranch", 1.335],
        ["ballValve", 0.067],
        ["gateValve", 0.178],
        ["globeValve", 7.57],
        ["footValve", 9.35],
        ["footValveHinged", 1.67],
      ] as const
    ).map(([kind, k]) => [`K of ${kind}`, k, () => fittingLoss(kind, "crane", oneInch).turbulent] as const),
  ),
  ...checksOf(
    {
      source: `${crane}, example 7-1: 200 L/min of water at 30 C in smooth 50 mm tube, Re 1.006e5`,
      tag: "published",
      tolerance: 0.015,
      why: "the example reads f from a chart",
    },
    [["friction factor of example 7-1", 0.0179, () => darcyFrictionFactor(1.006e5, 0)]],
  ),
  ...checksOf(
    {
      source: `${crane}, example 7-35: 300 and 100 US gal/min joining in a 4 in tee`,
      tag: "published",
      tolerance: 0.006,
      why: "K of the branch is printed with two figures",
    },
    [
      ["K of the branch where streams join", -0.042, () => combiningTeeLoss(0.25, 1).branch],
      ["K of the run where streams join", 0.325, () => combiningTeeLoss(0.25, 1).run],
    ],
  ),
  ...checksOf(
    {
      source: `${crane}, example 7-15: 100 US gal/min of water at 60 F to 421 ft, 70 % efficient`,
      tag: "published",
      tolerance: 0.005,
      why: "the power is printed with three figures",
    },
    [
      [
        "power at the shaft, hp",
        15.2,
        () => hydraulicPower(999.0, (100 * 3.785411784e-3) / 60, 421 * 0.3048) / 0.7 / 745.69987,
      ],
    ],
  ),
  ...checksOf({ source: `${crane}, appendix A, page A-30`, tag: "published", tolerance: 1e-12, why: "a table entry" }, [
    ["K of a sharp entrance", 0.5, () => entranceLoss("sharp")],
    ["K of an inward projecting entrance", 0.78, () => entranceLoss("projecting")],
    ["K of an entrance rounded to r/d 0.04", 0.24, () => entranceLoss("rounded", 0.04)],
    ["K of an entrance rounded to r/d 0.10", 0.09, () => entranceLoss("rounded", 0.1)],
    ["K of an exit", 1, () => exitLoss],
  ]),
  ...checksOf(
    {
      source: "J.-C. Borda and L. Carnot, (1 - b^2)^2; Crane's contraction 0.5 (1 - b^2)",
      tag: "analytic",
      tolerance: 0.002,
      why: "three printed figures",
    },
    [
      ["K of a sudden expansion, 26.6 to 40.9 mm", 0.333, () => suddenExpansionLoss(0.0266, 0.0409)],
      ["K of a sudden contraction, 40.9 to 26.6 mm", 0.289, () => suddenContractionLoss(0.0409, 0.0266)],
    ],
  ),
  ...checksOf(
    {
      source: "D. C. Rennels and H. M. Hudson, Pipe Flow (2012), chapter 10, evaluated by fluids 1.0.22",
      tag: "other program",
      tolerance: 0.002,
      why: "three printed figures",
    },
    [["K of the same contraction", 0.399, () => suddenContractionLoss(0.0409, 0.0266, "rennels")]],
  ),
];
