import { type Job, type JobStage, jobStages } from "@tidewright/protocol";

/** Returns jobs as the desk shows them: those to review first, then the latest change first.
 *  jobs   -> the same jobs in that order */
export function jobOrder(jobs: readonly Job[]): Job[] {
  return [...jobs].sort(
    (a, b) =>
      Number(b.stage === "intake") - Number(a.stage === "intake") ||
      (a.updatedAt < b.updatedAt ? 1 : a.updatedAt > b.updatedAt ? -1 : a.id < b.id ? -1 : 1),
  );
}

/** Returns how many jobs stand in each stage.
 *  jobs   -> a count for every stage, 0 included */
export function stageCounts(jobs: readonly Job[]): Readonly<Record<JobStage, number>> {
  const counts = Object.fromEntries(jobStages.map((stage) => [stage, 0])) as Record<JobStage, number>;
  for (const { stage } of jobs) counts[stage] += 1;
  return counts;
}
