import { seaWaterDensity, seaWaterSpecificHeat } from "@tidewright/engine";
import { checksOf } from "./check.ts";

/** Sea water at one atmosphere against the check values printed with the international equation of state of 1980. */
export const unesco44 = [
  ...checksOf(
    {
      source:
        "N. P. Fofonoff and R. C. Millard, UNESCO Technical Papers in Marine Science 44 (1983), density check values",
      tag: "published",
      tolerance: 1e-7,
      why: "the printed values have five decimals of about 1000",
    },
    [
      ["density of pure water at 5 C, kg/m3", 999.96675, () => seaWaterDensity(0, 5)],
      ["density of pure water at 25 C, kg/m3", 997.04796, () => seaWaterDensity(0, 25)],
      ["density of sea water, 35 g/kg, at 5 C, kg/m3", 1027.67547, () => seaWaterDensity(35, 5)],
      ["density of sea water, 35 g/kg, at 25 C, kg/m3", 1023.34306, () => seaWaterDensity(35, 25)],
    ],
  ),
  ...checksOf(
    {
      source: "D. T. Jamieson et al., Desalination 7 (1969), specific heat of sea water",
      tag: "other program",
      tolerance: 0.003,
      why: "two published fits differ by this much",
    },
    [["specific heat, 35 g/kg, 25 C, J/(kg K)", 4000.8, () => seaWaterSpecificHeat(35, 25)]],
  ),
];
