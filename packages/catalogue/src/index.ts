/** Pipes, fittings, valves, devices and pumps as rows with their sources. */
export * from "./catalogue.ts";
export type { CatalogueProblem } from "./catalogueProblem.ts";
export * from "./check/checkCatalogue.ts";
export { checkPump } from "./check/checkPump.ts";
export { readPumpCsv } from "./csv/readPumpCsv.ts";
export { writePumpCsv } from "./csv/writePumpCsv.ts";
export * from "./demo/demoCatalogue.ts";
export { demoPumpTable } from "./demo/demoPumpTable.ts";
export * from "./parts/devices.ts";
export * from "./parts/fittings.ts";
export * from "./parts/valves.ts";
export * from "./pipes/allPipeSeries.ts";
export * from "./pipes/averageBore.ts";
export type { PipeFamily, PipeSeries } from "./pipes/pipeSeries.ts";
export * from "./pipes/pipeTables.ts";
export * from "./pumps/pump.ts";
export type { Source } from "./source.ts";
