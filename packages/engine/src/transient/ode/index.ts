export * from "./createOde.ts";
export * from "./keptStepAt.ts";
export type * from "./odeTypes.ts";
