import { seaWater, seaWaterDynamicViscosity } from "@tidewright/engine";
import { checksOf } from "./check.ts";

/** Viscosity, whose coefficients come from M. H. Sharqawy et al. 2010, against tables that are not of its making. */
export const sharqawy2010 = [
  ...checksOf(
    {
      source: "Introduction to Naval Architecture, table 5.1 (sea water)",
      tag: "published",
      tolerance: 0.008,
      why: "Sharqawy et al. give 1.5 %; older tables differ by up to 0.8 %",
    },
    [
      ["kinematic viscosity at 10 C, m2/s", 1.354e-6, () => seaWater(35, 10).kinematicViscosity],
      ["kinematic viscosity at 20 C, m2/s", 1.054e-6, () => seaWater(35, 20).kinematicViscosity],
      ["kinematic viscosity at 30 C, m2/s", 0.849e-6, () => seaWater(35, 30).kinematicViscosity],
    ],
  ),
  ...checksOf(
    {
      source: "ITTC Recommended Procedures 7.5-02-01-03 (2011), sea water; value from memory",
      tag: "published",
      tolerance: 0.005,
      why: "well within the 1.5 % of Sharqawy et al.",
    },
    [["kinematic viscosity at 15 C, m2/s", 1.1892e-6, () => seaWater(35.16504, 15).kinematicViscosity]],
  ),
  ...checksOf(
    {
      source: "Landolt-Bornstein V/3a, viscosity of sea water, evaluated apart from the project",
      tag: "other program",
      tolerance: 0.008,
      why: "the older fit lies 0.3 to 0.6 % lower",
    },
    [
      ["dynamic viscosity, 35 g/kg, 15 C, Pa s", 1.2125e-3, () => seaWaterDynamicViscosity(35, 15)],
      ["dynamic viscosity, 35 g/kg, 25 C, Pa s", 9.5615e-4, () => seaWaterDynamicViscosity(35, 25)],
    ],
  ),
  ...checksOf(
    {
      source: "ISO/TR 3666:1998, viscosity of water, 1.0016 mPa s at 20 C; value from memory",
      tag: "published",
      tolerance: 0.001,
      why: "the standard itself gives 0.17 %",
    },
    [["dynamic viscosity of pure water at 20 C, Pa s", 1.0016e-3, () => seaWaterDynamicViscosity(0, 20)]],
  ),
];
