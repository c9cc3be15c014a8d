export * from "./seaWater.ts";
export * from "./seaWaterDensity.ts";
export * from "./seaWaterDynamicViscosity.ts";
export * from "./seaWaterSpecificHeat.ts";
export * from "./seaWaterVapourPressure.ts";
export * from "./standardGravity.ts";
