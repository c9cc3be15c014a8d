export type * from "./model.ts";
export * from "./ode/index.ts";
export * from "./simulate.ts";
export type * from "./transientRun.ts";
export type { TransientEvent, TransientEventCode } from "./transitions.ts";
