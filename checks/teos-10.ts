import { seaWaterDensity, seaWaterSpecificHeat } from "@tidewright/engine";
import { checksOf } from "./check.ts";

const source = "TEOS-10 (IOC, SCOR and IAPSO 2010), as computed by gsw 3.6.16";

/** The later standard of sea water. Its absolute salinity 35.16504 g/kg is a practical salinity of 35. */
export const teos10 = [
  ...checksOf(
    {
      source: `${source}, rho_t_exact`,
      tag: "other program",
      tolerance: 1e-5,
      why: "0.01 kg/m3 between two standards",
    },
    [
      ["density at 15 C, kg/m3", 1025.976, () => seaWaterDensity(35, 15)],
      ["density at 25 C, kg/m3", 1023.3436, () => seaWaterDensity(35, 25)],
      ["density at 30 C, kg/m3", 1021.7261, () => seaWaterDensity(35, 30)],
      ["density of pure water at 25 C, kg/m3", 997.0476, () => seaWaterDensity(0, 25)],
    ],
  ),
  ...checksOf(
    {
      source: `${source}, cp_t_exact`,
      tag: "other program",
      tolerance: 0.003,
      why: "two published fits differ by this much",
    },
    [
      ["specific heat at 15 C, J/(kg K)", 3993.1, () => seaWaterSpecificHeat(35, 15)],
      ["specific heat at 25 C, J/(kg K)", 3999.0, () => seaWaterSpecificHeat(35, 25)],
      ["specific heat at 30 C, J/(kg K)", 4001.5, () => seaWaterSpecificHeat(35, 30)],
      ["specific heat of pure water at 25 C, J/(kg K)", 4181.3, () => seaWaterSpecificHeat(0, 25)],
    ],
  ),
];
