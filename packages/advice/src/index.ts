/** Assess, rank, improve: documents in, answers out. */
export * from "./animalTargets.ts";
export * from "./assess.ts";
export * from "./assessment.ts";
export * from "./finding.ts";
export * from "./levers.ts";
export { levers } from "./leversOf.ts";
export { rank } from "./rank.ts";
export * from "./ranking.ts";
export { describeFinding } from "./wording/describeFinding.ts";
export { describeReason } from "./wording/describeReason.ts";
export type { Description, Format } from "./wording/format.ts";
