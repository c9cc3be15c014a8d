export * from "./combinedPumps.ts";
export * from "./monotoneCubic.ts";
export * from "./pumpAtSpeed.ts";
export * from "./pumpCurve.ts";
export * from "./pumpPower.ts";
export * from "./stoppedPump.ts";
