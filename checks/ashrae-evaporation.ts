import { evaporationRate, seaWaterDensity, stillAirSpeed } from "@tidewright/engine";
import { checksOf } from "./check.ts";

/** The example's pool: 1100 m2 of fresh water at 27 C under air at 26 C. */
const pool = { area: 1100, waterTemperature: 27, salinity: 0, airTemperature: 26 };
const mass = (relativeHumidity: number, airSpeed: number): number =>
  evaporationRate({ ...pool, relativeHumidity, airSpeed }) * seaWaterDensity(0, 27);

/** Evaporation from open water. */
export const ashraeEvaporation = [
  ...checksOf(
    {
      source:
        "calculation sheet Swimming Pool Cal (Scribd 409371911), ASHRAE Handbook HVAC Applications, 1100 m2, 27 C, air 26 C",
      tag: "published",
      tolerance: 0.004,
      why: "the sheet has 0.0887 + 0.07815 V, the handbook 0.089 + 0.0782 V",
    },
    [
      ["evaporation at 0.2 m/s and 50 %, kg/s", 0.088806, () => mass(0.5, 0.2)],
      ["evaporation at 0.15 m/s and 55 %, kg/s", 0.077858, () => mass(0.55, 0.15)],
    ],
  ),
  ...checksOf(
    {
      source: "ASHRAE Handbook HVAC Applications, short form 4.0e-5 A (pw - pa), kPa, on the same sheet",
      tag: "published",
      tolerance: 0.015,
      why: "the short form rounds Y to 2400 kJ/kg and the factor to two figures",
    },
    [
      ["evaporation in still air at 50 %, kg/s", 0.082973, () => mass(0.5, stillAirSpeed)],
      ["evaporation in still air at 55 %, kg/s", 0.075574, () => mass(0.55, stillAirSpeed)],
    ],
  ),
];
