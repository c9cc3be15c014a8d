export { type CompiledNetwork, compileNetwork, setLink } from "./compile.ts";
export * from "./model.ts";
export * from "./networkProblems.ts";
export * from "./record.ts";
export * from "./solution.ts";
export { type SolveOptions, solveCompiled } from "./solve.ts";
export { type NetworkState, newNetworkState } from "./state.ts";
