export * from "./addSoundLevels.ts";
export * from "./annualEnergy.ts";
export * from "./atmosphericPressure.ts";
export * from "./circuitCurrent.ts";
export * from "./evaporation.ts";
export * from "./hydraulicPower.ts";
export * from "./npshAvailable.ts";
export * from "./pumpHeatToWater.ts";
