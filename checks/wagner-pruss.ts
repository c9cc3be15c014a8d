import { seaWaterVapourPressure } from "@tidewright/engine";
import { checksOf } from "./check.ts";

/** Vapour pressure of water and of sea water. */
export const wagnerPruss = [
  ...checksOf(
    {
      source: "W. Wagner and A. Pruss 1993, saturation pressure of water (IAPWS)",
      tag: "published",
      tolerance: 1e-4,
      why: "five printed figures",
    },
    [["vapour pressure of pure water at 25 C, Pa", 3169.8, () => seaWaterVapourPressure(0, 25)]],
  ),
  ...checksOf(
    {
      source: "R. F. Weiss and B. A. Price 1980, Marine Chemistry 8, eq. 10, evaluated apart from the project",
      tag: "other program",
      tolerance: 0.002,
      why: "Raoult's rule against a fit to sea water",
    },
    [["vapour pressure of sea water, 35 g/kg, 25 C, Pa", 3106.2, () => seaWaterVapourPressure(35, 25)]],
  ),
];
