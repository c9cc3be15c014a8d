/** Assess, rank, improve: documents in, answers out. */
export * from "./animalTargets.ts";
export * from "./assess.ts";
export * from "./assessment.ts";
export * from "./finding.ts";
export * from "./levers.ts";
export { rank } from "./rank.ts";
export * from "./ranking.ts";
